#include "import/proposed_sections.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "import/bar_of_element.h"
#include "import/yaml_quoted.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

enum class Strength { new_meter, new_key, source_of_return, written, named };

constexpr std::size_t kLongestSectionName = 40;

class SectionProposal {
 public:
  SectionProposal(const Score& score, const std::vector<ScoreReturn>& returns)
      : score_(score), count_(static_cast<int>(score.bars.size())) {
    choose_returns(returns);
    find_marks();
  }

  std::vector<ProposedSection> sections() {
    std::set<int> starts = {0, count_};
    for (const ScoreReturn& one : returns_) {
      starts.insert(one.first);
      starts.insert(one.last + 1);
    }
    for (const auto& [bar, mark] : marks_)
      if (mark == Strength::named && 0 < bar && bar < count_ && !inside_return(bar))
        starts.insert(bar);
    for (const Strength strength :
         {Strength::written, Strength::source_of_return, Strength::new_key, Strength::new_meter})
      for (const auto& [bar, mark] : marks_)
        if (mark == strength && has_room(starts, bar)) starts.insert(bar);
    std::vector<ProposedSection> all;
    for (auto start = starts.begin(); std::next(start) != starts.end(); ++start)
      all.push_back(section(*start, *std::next(start) - 1, all));
    add_phrases(all);
    if (all.size() == 1 &&
        (all.front().phrases.empty() || bars_of(all.front()) > numbers::kSectionBars))
      all.clear();
    return all;
  }

 private:
  void choose_returns(const std::vector<ScoreReturn>& all) {
    std::vector<ScoreReturn> longest;
    for (ScoreReturn one : all) {
      if (one.hands.size() != score_.hands.size()) continue;
      // The pickup is never a part of a return.
      if (one.source == 0 && score_.bars.front().pickup) ++one.source, ++one.first;
      if (one.last - one.first + 1 >= kLeastReturnBars) longest.push_back(one);
    }
    std::ranges::stable_sort(longest, [](const ScoreReturn& one, const ScoreReturn& other) {
      return one.last - one.first > other.last - other.first;
    });
    for (const ScoreReturn& one : longest)
      if (std::ranges::none_of(returns_, [&](const ScoreReturn& other) {
            return one.first <= other.last && other.first <= one.last;
          }))
        returns_.push_back(one);
  }

  void find_marks() {
    for (std::size_t at = 0; at < score_.signs.size(); ++at) {
      const MeasureSigns& signs = score_.signs[at];
      const int element = static_cast<int>(at) + 1;
      if (const std::string name = plain_line(signs.rehearsal, kLongestSectionName);
          !name.empty()) {
        const int at_bar = bar_from(score_, element);
        const int begin = at_bar == 1 && score_.bars.front().pickup ? 0 : at_bar;
        mark(begin, Strength::named);
        names_.emplace(begin, name);
      }
      if (signs.forward) mark(bar_from(score_, element), Strength::written);
      if (signs.double_bar || signs.backward) mark(bar_of(score_, element) + 1, Strength::written);
    }
    for (int bar = 1; bar < count_; ++bar) {
      const ScoreMeasure& here = first_measure(bar);
      const ScoreMeasure& before = first_measure(bar - 1);
      if (here.key != before.key) mark(bar, Strength::new_key);
      if (here.meter != before.meter) mark(bar, Strength::new_meter);
    }
    for (const ScoreReturn& one : returns_) {
      mark(one.source, Strength::source_of_return);
      mark(one.source + one.last - one.first + 1, Strength::source_of_return);
    }
  }

  const ScoreMeasure& first_measure(int bar) const {
    const ScoreBar& at = score_.bars[static_cast<std::size_t>(bar)];
    return score_.measures[static_cast<std::size_t>(at.first) - 1];
  }

  void mark(int bar, Strength strength) {
    Strength& there = marks_.emplace(bar, strength).first->second;
    there = std::max(there, strength);
  }

  bool inside_return(int bar) const {
    return std::ranges::any_of(
        returns_, [&](const ScoreReturn& one) { return one.first < bar && bar <= one.last; });
  }

  bool has_room(const std::set<int>& starts, int bar) const {
    if (bar <= 0 || bar >= count_) return false;
    const auto after = starts.lower_bound(bar);
    if (*after == bar) return false;
    if (inside_return(bar)) return false;
    const int begin = *std::prev(after);
    const int whole_bars = bar - begin - (begin == 0 && score_.bars.front().pickup ? 1 : 0);
    return whole_bars >= kLeastSectionBars && *after - bar >= kLeastSectionBars;
  }

  ProposedSection section(int first, int last, const std::vector<ProposedSection>& before) {
    ProposedSection found{first, last, "", std::nullopt, {}};
    for (const ScoreReturn& one : returns_)
      if (one.first == first && one.last == last) found.source = one.source;
    std::string name;
    if (const auto marked = names_.find(first); marked != names_.end()) name = marked->second;
    if (found.source)
      if (const ProposedSection* original = returned_by(found, before)) {
        if (name.empty()) name = original->name + " again";
        // Bars of it that do not come back as they were.
        still_of_it_ = bars_of(*original) - bars_of(found);
      }
    if (name.empty() && !before.empty() && before.back().source && bars_of(found) <= still_of_it_)
      name = before.back().name + ", end";
    while (name.empty() || std::ranges::find(before, name, &ProposedSection::name) != before.end())
      name = next_name();
    found.name = std::move(name);
    return found;
  }

  void add_phrases(std::vector<ProposedSection>& sections) const {
    const std::vector<PhraseEnd> ends = phrase_ends(score_);
    for (ProposedSection& one : sections)
      if (!one.source) one.phrases = propose_phrases(score_, ends, one.first, one.last);
  }

  int pickup_in(const ProposedSection& section) const {
    return section.first == 0 && score_.bars.front().pickup ? 1 : 0;
  }
  int bars_of(const ProposedSection& section) const {
    return section.last - section.first + 1 - pickup_in(section);
  }

  // The section that returns from its beginning to more than its half; nullptr for none.
  const ProposedSection* returned_by(const ProposedSection& found,
                                     const std::vector<ProposedSection>& before) const {
    for (const ProposedSection& one : before)
      if (one.first + pickup_in(one) == *found.source && !one.source &&
          2 * bars_of(found) > bars_of(one) && bars_of(found) <= bars_of(one))
        return &one;
    return nullptr;
  }

  // A to Z, then by number.
  std::string next_name() {
    const int number = next_++;
    return number < 26 ? std::string(1, static_cast<char>('A' + number))
                       : fmt::format("Section {}", number + 1);
  }

  const Score& score_;
  const int count_;
  std::vector<ScoreReturn> returns_;
  std::map<int, Strength> marks_;
  std::map<int, std::string> names_;
  int next_ = 0;
  int still_of_it_ = 0;
};

}  // namespace

std::vector<ProposedSection> propose_sections(const Score& score,
                                              const std::vector<ScoreReturn>& returns) {
  return SectionProposal(score, returns).sections();
}

}  // namespace cahier
