#include "score/notation/navigation.h"

#include <fmt/format.h>

#include <algorithm>

#include "score/notation/navigation_words.h"
#include "score/xml/score_limits.h"

namespace cahier {
namespace {

constexpr std::size_t kMostWords = 500;  // bytes of a direction that are looked at

// "1, 2, 3", "1,2", "1-3", "1."; empty where it says no number.
std::vector<int> passes_of(const XmlElement& ending) {
  std::vector<int> passes;
  int number = 0;
  int range_from = 0;
  const auto end_number = [&] {
    if (number == 0) return;
    if (number > kMostPasses)
      ending.refuse(fmt::format("an ending for a pass beyond {}", kMostPasses),
                    "correct the numbers of the ending");
    for (int one = range_from > 0 && range_from < number ? range_from + 1 : number; one <= number;
         ++one)
      if (std::ranges::find(passes, one) == passes.end()) passes.push_back(one);
    range_from = 0;
  };
  for (const char letter : ending.attribute("number") + " ") {
    if (letter >= '0' && letter <= '9') {
      number = std::min(number * 10 + (letter - '0'), 1000);
      continue;
    }
    end_number();
    if (letter == '-') range_from = number;
    number = 0;
  }
  std::ranges::sort(passes);
  return passes;
}

void add_name(std::vector<std::string>& names, const std::string& name) {
  constexpr std::size_t kMostNames = 16;  // of one measure; more are left out
  if (names.size() < kMostNames && std::ranges::find(names, name) == names.end())
    names.push_back(name);
}

// The signs of one measure of one part.
class MeasureSignsReader {
 public:
  MeasureSignsReader(MeasureSigns& signs, MeasureSigns* before, MeasureSigns* after, int element,
                     ScoreWarnings& warnings)
      : signs_(signs), before_(before), after_(after), element_(element), warnings_(warnings) {}

  void read(const XmlElement& measure) {
    for (const XmlElement& child : measure.children()) {
      if (child.is("barline"))
        barline(child);
      else if (child.is("sound"))
        sound(child, "");
      else if (child.is("direction"))
        direction(child);
    }
  }

 private:
  void barline(const XmlElement& line) {
    const std::string at = line.attribute("location");
    const std::string style = line.child("bar-style").text();
    if (style == "light-light" || style == "heavy-heavy" || style == "light-heavy")
      (at == "left" && before_ ? *before_ : signs_).double_bar = true;
    for (const XmlElement& repeat : line.children("repeat")) {
      if (repeat.attribute("direction") == "forward") {
        (at == "right" && after_ ? *after_ : signs_).forward = true;
      } else {
        backward(at == "left" && before_ ? *before_ : signs_, repeat);
      }
    }
    for (const XmlElement& ending : line.children("ending")) {
      if (ending.attribute("type") != "start")
        signs_.ending_stops = true;
      else
        ending_start(at == "right" && after_ ? *after_ : signs_, ending);
    }
    if (line.has_attribute("segno")) add_name(signs_.segnos, line.attribute("segno"));
    if (line.has_attribute("coda")) add_name(signs_.codas, line.attribute("coda"));
  }

  void backward(MeasureSigns& signs, const XmlElement& repeat) {
    int times = 0;
    if (repeat.has_attribute("times")) {
      times = xml_whole(repeat.attribute("times")).value_or(0);
      if (times < 1 || times > kMostPasses)
        repeat.refuse(
            fmt::format("a repeat cannot be played \"{}\" times", repeat.attribute("times")),
            fmt::format("a number from 1 to {} was expected", kMostPasses));
    }
    if (signs.backward && times > 0 && signs.times > 0 && times != signs.times)
      warnings_.add(element_, fmt::format("the parts repeat a different number of times; the most, "
                                          "{}, is taken",
                                          std::max(times, signs.times)));
    signs.backward = true;
    signs.times = std::max(signs.times, times);
  }

  void ending_start(MeasureSigns& signs, const XmlElement& ending) {
    std::vector<int> passes = passes_of(ending);
    if (signs.ending_starts && *signs.ending_starts != passes)
      warnings_.add(element_, "the parts number this ending differently; the first is taken");
    if (!signs.ending_starts) signs.ending_starts = std::move(passes);
  }

  void direction(const XmlElement& direction) {
    std::string words;
    bool segno = false;
    bool coda = false;
    for (const XmlElement& type : direction.children("direction-type")) {
      segno = segno || type.has("segno");
      coda = coda || type.has("coda");
      if (type.has("rehearsal") && signs_.rehearsal.empty())
        signs_.rehearsal = plain_words(type.child("rehearsal").text());
      for (const XmlElement& one : type.children("words"))
        if (words.size() < kMostWords) words += (words.empty() ? "" : " ") + one.text();
    }
    const std::vector<XmlElement> sounds = direction.children("sound");
    bool is_told = false;
    for (const XmlElement& one : sounds) is_told = sound(one, plain_words(words)) || is_told;
    if (is_told) return;
    const NavigationWord word = navigation_word(words);
    if (word != NavigationWord::none)
      by_words(word, plain_words(words));
    else if (segno)
      add_name(signs_.segnos, "");
    else if (coda)
      add_name(signs_.codas, "");
  }

  // Whether it says anything about where to go on.
  bool sound(const XmlElement& sound, const std::string& words) {
    bool is_told = false;
    const auto told = [&](const char* name) {
      const bool is = sound.has_attribute(name) && sound.attribute(name) != "no";
      is_told = is_told || is;
      return is;
    };
    if (told("segno")) add_name(signs_.segnos, sound.attribute("segno"));
    if (told("coda")) add_name(signs_.codas, sound.attribute("coda"));
    if (told("tocoda")) signs_.to_coda = sound.attribute("tocoda");
    if (told("fine")) signs_.fine = true;
    if (told("forward-repeat")) signs_.forward = true;
    if (told("dacapo")) jump({true, "", words});
    if (told("dalsegno")) jump({false, sound.attribute("dalsegno"), words});
    return is_told;
  }

  void jump(ScoreJump jump) {
    if (signs_.jump && signs_.jump->to_start != jump.to_start)
      warnings_.add(element_, "both a D.C. and a D.S. stand here; the first is taken");
    if (!signs_.jump) signs_.jump = std::move(jump);
  }

  void by_words(NavigationWord word, const std::string& words) {
    warnings_.add(element_, fmt::format("\"{}\" is taken from the words alone", words));
    switch (word) {
      case NavigationWord::dacapo:
        return jump({true, "", words});
      case NavigationWord::dalsegno:
        return jump({false, "", words});
      case NavigationWord::fine:
        signs_.fine = true;
        return;
      case NavigationWord::to_coda:
        signs_.to_coda = "";
        return;
      case NavigationWord::none:
        return;
    }
  }

  MeasureSigns& signs_;
  MeasureSigns* before_;
  MeasureSigns* after_;
  int element_;
  ScoreWarnings& warnings_;
};

}  // namespace

std::vector<MeasureSigns> read_navigation(const std::vector<WrittenPart>& parts,
                                          ScoreWarnings& warnings) {
  const std::size_t count = parts.front().measures.size();
  std::vector<MeasureSigns> all(count);
  for (const WrittenPart& part : parts)
    for (std::size_t at = 0; at < count; ++at)
      MeasureSignsReader(all[at], at > 0 ? &all[at - 1] : nullptr,
                         at + 1 < count ? &all[at + 1] : nullptr, static_cast<int>(at) + 1,
                         warnings)
          .read(part.measures[at].content);
  return all;
}

}  // namespace cahier
