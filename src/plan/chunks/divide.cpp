#include "plan/chunks/divide.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <limits>
#include <set>
#include <string>

#include "practice/numbers.h"

namespace cahier {
namespace {

std::string bars_name(BarRange bars) {
  return bars.size() == 1 ? fmt::format("{}", bars.first)
                          : fmt::format("{}–{}", bars.first, bars.last);
}

// "A" … "Z", "AA" …
std::string letters(int index) {
  std::string name;
  for (++index; index > 0; index = (index - 1) / 26)
    name.insert(name.begin(), static_cast<char>('A' + (index - 1) % 26));
  return name;
}

// Short, unique beginnings of chunk names: the section's name when it is one or two letters, else
// its first letter, else the first free letters of the alphabet.
std::vector<std::string> labels(const std::vector<Section>& sections) {
  const auto short_name = [](const std::string& name) {
    return name.size() <= 2 && std::all_of(name.begin(), name.end(), [](unsigned char c) {
             return std::isalpha(c) && c < 128;
           });
  };
  std::set<std::string> taken;
  for (const Section& section : sections)
    if (!section.same_as && short_name(section.name)) taken.insert(section.name);
  std::vector<std::string> result;
  int next = 0;
  for (const Section& section : sections) {
    std::string label = section.name;
    if (section.same_as) {
      label.clear();  // a return has no chunks of its own
    } else if (!short_name(label)) {
      const auto initial = static_cast<unsigned char>(section.name.empty() ? '?' : section.name[0]);
      label = std::isalpha(initial) && initial < 128
                  ? std::string(1, static_cast<char>(std::toupper(initial)))
                  : letters(next);
      while (taken.contains(label)) label = letters(next++);
      taken.insert(label);
    }
    result.push_back(label);
  }
  return result;
}

// The bars at which key or meter change.
std::set<int> double_bars(const Piece& piece) {
  std::set<int> bars;
  for (const Change& change : piece.changes)
    if (change.key || change.meter) bars.insert(change.bar);
  return bars;
}

// Cuts one phrase; returns the first bar of every chunk.
class PhraseCutter {
 public:
  PhraseCutter(const Piece& piece, const Method& method, const TimeModel& time, double load)
      : piece_(piece),
        method_(method),
        time_(time),
        load_(load),
        double_bars_(double_bars(piece)) {}

  std::vector<BarRange> cut(BarRange phrase) const {
    const int pickup = phrase.first == 0 ? 1 : 0;
    const BarRange counted{phrase.first + pickup, phrase.last};
    const int bars = counted.size();
    if (bars <= method_.chunk_least) return {phrase};
    std::vector<double> best(bars + 1, std::numeric_limits<double>::infinity());
    std::vector<int> from(bars + 1, 0);
    best[0] = 0;
    for (int end = 1; end <= bars; ++end) {
      for (int size = method_.chunk_least; size <= std::min(method_.chunk_most, end); ++size) {
        const BarRange chunk{counted.first + end - size, counted.first + end - 1};
        const double total = best[end - size] + cost(chunk, chunk.first - counted.first);
        if (total < best[end]) {
          best[end] = total;
          from[end] = end - size;
        }
      }
    }
    std::vector<BarRange> chunks;
    for (int end = bars; end > 0; end = from[end])
      chunks.push_back({counted.first + from[end], counted.first + end - 1});
    std::reverse(chunks.begin(), chunks.end());
    chunks.front().first = phrase.first;
    return chunks;
  }

 private:
  double cost(BarRange chunk, int offset) const {
    const double off_load = time_.learn(chunk, piece_.hardest_level(chunk)) / load_ - 1;
    // Too much for a session is worse than too little.
    double points = off_load > 0 ? 2 * off_load * off_load : off_load * off_load;
    if (offset % 4 != 0) points += 0.15;
    if (const auto inside = double_bars_.upper_bound(chunk.first);
        inside != double_bars_.end() && *inside <= chunk.last)
      points += 0.5;
    return points + 0.05;  // fewer chunks, all else alike
  }

  const Piece& piece_;
  const Method& method_;
  const TimeModel& time_;
  double load_;
  std::set<int> double_bars_;
};

}  // namespace

std::vector<Section> divide_into_sections(const Piece& piece) {
  if (!piece.sections.empty()) return piece.sections;
  std::vector<int> starts = {1};
  for (const int bar : double_bars(piece))
    if (bar - starts.back() >= 4 && piece.bars - bar >= 3) starts.push_back(bar);
  starts.push_back(piece.bars + 1);
  std::vector<Section> sections;
  for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
    const int bars = starts[i + 1] - starts[i];
    const int parts = (bars + numbers::kSectionBars - 1) / numbers::kSectionBars;
    int first = starts[i];
    for (int part = 0; part < parts; ++part) {
      int end = starts[i] + bars * (part + 1) / parts;
      if (part + 1 < parts) {
        const int to_four = starts[i] + (end - starts[i] + 3) / 4 * 4;
        end = std::min(to_four, first + numbers::kSectionBars);
      }
      Section section;
      section.bars = {first == 1 ? piece.first_bar() : first, end - 1};
      section.name = bars_name(section.bars);
      sections.push_back(section);
      first = end;
    }
  }
  return sections;
}

std::vector<BarRange> phrases_of(const Section& section) {
  return section.phrases.empty() ? std::vector<BarRange>{section.bars} : section.phrases;
}

std::vector<Uncut> uncut_bars(const Section& section, const std::vector<BarRange>& learned,
                              const Method& method) {
  std::vector<Uncut> result;
  for (const BarRange& phrase : phrases_of(section)) {
    int next = phrase.first;
    for (const BarRange& bars : learned) {
      const BarRange here{std::max(bars.first, phrase.first), std::min(bars.last, phrase.last)};
      if (here.first > here.last) continue;
      if (here.first > next) result.push_back({{next, here.first - 1}});
      const int counted = here.size() - (here.first == 0 ? 1 : 0);
      result.push_back({here, counted <= method.chunk_most});
      next = here.last + 1;
    }
    if (next <= phrase.last) result.push_back({{next, phrase.last}});
  }
  return result;
}

std::vector<Chunk> cut_into_chunks(const Piece& piece, const std::vector<Section>& sections,
                                   const std::vector<BarRange>& learned, const Method& method,
                                   const CutPhrase& cut) {
  const std::vector<std::string> label = labels(sections);
  std::vector<Chunk> chunks;
  for (int index = 0; index < static_cast<int>(sections.size()); ++index) {
    if (sections[index].same_as) continue;
    int number = 0;
    for (const Uncut& uncut : uncut_bars(sections[index], learned, method))
      for (const BarRange& bars : uncut.whole ? std::vector{uncut.bars} : cut(uncut.bars))
        chunks.push_back(
            {fmt::format("{}{}", label[index], ++number), bars, index, piece.hardest_level(bars)});
  }
  return chunks;
}

std::vector<Chunk> divide_into_chunks(const Piece& piece, const std::vector<Section>& sections,
                                      const std::vector<BarRange>& learned, const Method& method,
                                      const TimeModel& time, double load) {
  const PhraseCutter cutter(piece, method, time, load);
  return cut_into_chunks(piece, sections, learned, method,
                         [&](BarRange phrase) { return cutter.cut(phrase); });
}

}  // namespace cahier
