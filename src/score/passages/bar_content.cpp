#include "score/passages/bar_content.h"

#include <functional>
#include <map>
#include <set>
#include <tuple>

namespace cahier {
namespace {

using NoteContent = std::tuple<int, Quarters, Quarters, SpelledPitch, bool, bool>;

struct MeasureContent {
  Quarters length;
  std::set<NoteContent> notes;
  auto operator<=>(const MeasureContent&) const = default;
};

MeasureContent content_of(const ScoreMeasure& measure, const std::function<bool(int)>& of_staff) {
  MeasureContent content{measure.length, {}};
  for (const ScoreNote& note : measure.notes)
    if (note.sounds() && of_staff(note.staff))
      content.notes.emplace(note.staff, note.onset, note.duration, note.pitch, note.grace,
                            note.tie_stop);
  return content;
}

class FirstOfContent {
 public:
  explicit FirstOfContent(std::function<bool(int)> of_staff) : of_staff_(std::move(of_staff)) {}

  std::optional<int> earlier(const ScoreMeasure& measure, int element) {
    MeasureContent content = content_of(measure, of_staff_);
    if (content.notes.empty()) return std::nullopt;
    const auto [found, is_new] = first_.emplace(std::move(content), element);
    if (is_new) return std::nullopt;
    return found->second;
  }

 private:
  std::function<bool(int)> of_staff_;
  std::map<MeasureContent, int> first_;
};

}  // namespace

std::vector<IdenticalMeasure> identical_measures(const std::vector<ScoreMeasure>& measures) {
  FirstOfContent top([](int staff) { return staff == 1; });
  FirstOfContent lower([](int staff) { return staff > 1; });
  FirstOfContent both([](int) { return true; });
  std::vector<IdenticalMeasure> all;
  int element = 0;
  for (const ScoreMeasure& measure : measures) {
    ++element;
    all.push_back({top.earlier(measure, element), lower.earlier(measure, element),
                   both.earlier(measure, element)});
  }
  return all;
}

}  // namespace cahier
