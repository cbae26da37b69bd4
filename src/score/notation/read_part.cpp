#include "score/notation/read_part.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "score/notation/read_note.h"

namespace cahier {
namespace {

constexpr int kMostDivisions = 100000;  // of a quarter note

class PartReader {
 public:
  PartReader(const WrittenPart& part, ScoreWarnings& warnings) : part_(part), warnings_(warnings) {}

  std::vector<PartMeasure> read() {
    std::vector<PartMeasure> all;
    for (const WrittenMeasure& written : part_.measures) {
      ++element_;
      where_ = fmt::format("in bar {} of part {}", written.number, part_.called());
      measure_ = std::exchange(next_, {});
      now_ = last_onset_ = Quarters();
      has_note_ = false;
      for (const XmlElement& child : written.content.children()) take(child);
      all.push_back(std::move(measure_));
    }
    return all;
  }

 private:
  void take(const XmlElement& child) try {
    if (child.is("note"))
      note(child);
    else if (child.is("backup"))
      back(child);
    else if (child.is("forward"))
      go_to(now_ + duration(child));
    else if (child.is("attributes"))
      attributes(child);
  } catch (const OutOfQuarters&) {
    child.refuse("the lengths up to here are too long or too finely divided",
                 "look at this bar in the notation program", where_);
  }

  void note(const XmlElement& element) {
    ScoreNote note = read_note(element, where_);
    const bool in_chord = element.has("chord");
    if (in_chord && !has_note_)
      element.refuse("the bar begins with a chord's second note", "the first one is missing",
                     where_);
    if (!note.grace) note.duration = duration(element);
    note.onset = in_chord ? last_onset_ : now_;
    last_onset_ = note.onset;
    has_note_ = true;
    if (!in_chord) go_to(now_ + note.duration);
    measure_.notes.push_back(std::move(note));
  }

  void back(const XmlElement& element) {
    const Quarters by = duration(element);
    if (by > now_) {
      warnings_.add(element_, fmt::format("a voice of part {} goes back to before the bar; it is "
                                          "taken to begin with the bar",
                                          part_.called()));
      now_ = Quarters();
      return;
    }
    now_ = now_ - by;
  }

  void go_to(Quarters when) {
    now_ = when;
    measure_.length = std::max(measure_.length, now_);
  }

  Quarters duration(const XmlElement& element) {
    const XmlElement written = element.child("duration");
    if (!written) element.refuse("this has no duration", "write its duration", where_);
    // Scores with decimal lengths are rare; thousandths are exact enough for them.
    const std::optional<double> number = xml_number(written.text());
    if (!number || *number < 0 || *number > 1e9)
      written.refuse(fmt::format("\"{}\" is no duration", written.text()),
                     "a duration is a number of divisions, not below nothing", where_);
    const bool is_whole = *number == std::floor(*number);
    return is_whole ? Quarters(static_cast<std::int64_t>(*number), divisions_)
                    : Quarters(std::llround(*number * 1000), 1000 * divisions_);
  }

  // What changes inside a bar holds from the next one on.
  void attributes(const XmlElement& element) {
    if (const XmlElement divisions = element.child("divisions")) {
      const int number = xml_whole(divisions.text()).value_or(0);
      if (number < 1 || number > kMostDivisions)
        divisions.refuse(
            fmt::format("a quarter note cannot have \"{}\" divisions", divisions.text()),
            fmt::format("a number from 1 to {} was expected", kMostDivisions), where_);
      divisions_ = number;
    }
    for (const XmlElement& style : element.children("measure-style"))
      if (style.child("measure-repeat").attribute("type") == "start")
        warnings_.add(
            element_,
            "a sign stands for the bars before, here or from here on; what it stands for is "
            "not read as notes");
    PartMeasure& from = now_ == Quarters() ? measure_ : next_;
    if (const XmlElement time = element.child("time")) {
      from.has_meter = true;
      from.meter = read_score_meter(time, where_);
    }
    std::optional<ScoreKey> first;
    for (const XmlElement& key : element.children("key")) {
      const auto read = read_score_key(key, element_, where_, warnings_);
      if (!read) continue;
      if (first && first->fifths != read->fifths)
        warnings_.add(element_, "the staves have different keys; that of the top staff is taken");
      if (!first) first = read;
    }
    if (first) from.key = first;
  }

  const WrittenPart& part_;
  ScoreWarnings& warnings_;
  int element_ = 0;
  std::string where_;
  int divisions_ = 1;
  PartMeasure measure_;
  PartMeasure next_;
  Quarters now_;
  Quarters last_onset_;
  bool has_note_ = false;
};

}  // namespace

std::vector<PartMeasure> read_part(const WrittenPart& part, ScoreWarnings& warnings) {
  return PartReader(part, warnings).read();
}

}  // namespace cahier
