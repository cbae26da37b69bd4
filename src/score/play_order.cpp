#include "score/play_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

#include "score/ending_groups.h"
#include "score/xml/score_limits.h"

namespace cahier {
namespace {

class Unfolding {
 public:
  Unfolding(const std::vector<MeasureSigns>& signs, const std::function<std::string(int)>& bar_of,
            const std::function<void(int)>& refuse_length, ScoreWarnings& warnings)
      : signs_(signs),
        bar_of_(bar_of),
        refuse_length_(refuse_length),
        warnings_(warnings),
        endings_(find_endings(signs, warnings)) {}

  PlayOrder run() {
    while (at_ < count() && !is_over_) {
      if (!jumped_ && signs_[at_].forward && !(group_is_marked_ && group_start_ == at_))
        open_repeat();
      if (passes_over_ending()) continue;
      play();
      if (go_back() || finish() || to_coda() || jump()) continue;
      end_ending_group();
      ++at_;
    }
    end_run();
    warn_of_unplayed();
    warn_of_the_rest();
    return {std::move(runs_), std::move(repeats_)};
  }

 private:
  int count() const { return static_cast<int>(signs_.size()); }

  void play() {
    if (run_first_ < 0) run_first_ = at_;
    run_last_ = at_;
    if (++played_ > kMostUnfoldedBars) refuse_length_(at_ + 1);
  }

  void end_run() {
    if (run_first_ >= 0) runs_.push_back({run_first_ + 1, run_last_ + 1});
    run_first_ = -1;
  }

  void go_to(int element) {
    end_run();
    at_ = element;
  }

  void start_group(int element) {
    group_start_ = element;
    group_is_marked_ = false;
    pass_ = 1;
  }

  void open_repeat() {
    if (group_is_marked_ && !is_closed_)
      warnings_.add(group_start_ + 1,
                    "no repeat sign ends the repeat that begins here; it is "
                    "played once");
    start_group(at_);
    group_is_marked_ = true;
    is_closed_ = false;
  }

  // After a jump the last pass is played.
  bool passes_over_ending() {
    const ScoreEnding* ending = endings_.beginning_at(at_);
    if (!ending) return false;
    if (!endings_.groups[ending->group].is_repeated) return false;
    const int pass = jumped_ ? endings_.groups[ending->group].passes : pass_;
    if (ending->is_for(pass)) return false;
    const int end = endings_.end_of_group(*ending);
    go_to(ending->last + 1);
    if (!jumped_ && ending->last == end) start_group(at_);
    if (ending->goes_back) is_closed_ = true;
    return true;
  }

  bool go_back() {
    if (jumped_ || !signs_[at_].backward) return false;
    is_closed_ = true;
    const ScoreEnding* ending = endings_.around(at_);
    const int most = ending                  ? endings_.groups[ending->group].passes
                     : signs_[at_].times > 0 ? signs_[at_].times
                                             : 2;
    if (pass_ < most) {
      if (pass_ == 1 && !group_is_marked_ && group_start_ > 0)
        warnings_.add(at_ + 1, fmt::format("nothing says where this repeat begins; it is taken to "
                                           "begin at bar {}, after what was repeated before",
                                           bar_of_(group_start_ + 1)));
      note_repeat(ending, most);
      ++pass_;
      go_to(group_start_);
      return true;
    }
    end_run();
    if (!ending || at_ == endings_.end_of_group(*ending)) start_group(at_ + 1);
    return false;
  }

  void note_repeat(const ScoreEnding* ending, int times) {
    if (!repeats_.empty() && repeats_.back().first == group_start_ + 1) {
      repeats_.back().last = std::max(repeats_.back().last, at_ + 1);
      return;
    }
    PlayedRepeat repeat{group_start_ + 1, at_ + 1, times, {}};
    if (ending) {
      const EndingGroup& group = endings_.groups[ending->group];
      for (int one = group.first_ending; one <= group.last_ending; ++one)
        repeat.endings.push_back({endings_.endings[one].first + 1, endings_.endings[one].last + 1,
                                  endings_.endings[one].passes});
    }
    repeats_.push_back(std::move(repeat));
  }

  void end_ending_group() {
    const ScoreEnding* ending = endings_.around(at_);
    if (!jumped_ && ending && at_ == endings_.end_of_group(*ending)) start_group(at_ + 1);
  }

  bool finish() {
    is_over_ = jumped_ && signs_[at_].fine;
    ended_on_purpose_ = ended_on_purpose_ || is_over_;
    return is_over_;
  }

  bool to_coda() {
    if (!jumped_ || !signs_[at_].to_coda || coda_taken_) return false;
    coda_taken_ = true;
    const int target = find_sign(*signs_[at_].to_coda, &MeasureSigns::codas);
    if (target < 0) {
      warnings_.add(at_ + 1, "To Coda, and no coda is marked; it is taken to play on");
      return false;
    }
    ended_on_purpose_ = true;
    go_to(target);
    return true;
  }

  bool jump() {
    const std::optional<ScoreJump>& jump = signs_[at_].jump;
    if (!jump || !taken_.insert(at_).second) return false;
    const int target = jump->to_start ? 0 : find_sign(jump->segno, &MeasureSigns::segnos);
    if (target < 0) {
      warnings_.add(at_ + 1, "D.S., and no segno is marked; it is taken to play on");
      return false;
    }
    last_jump_ = at_;
    jumped_ = true;
    go_to(target);
    return true;
  }

  // The element of the sign of that name; where no sign has it, of any. -1 where there is none. A
  // segno is the nearest before here, a coda the nearest after.
  int find_sign(const std::string& name, std::vector<std::string> MeasureSigns::*names) {
    std::vector<int> of_name;
    std::vector<int> any;
    for (int at = 0; at < count(); ++at) {
      const std::vector<std::string>& here = signs_[at].*names;
      if (here.empty()) continue;
      any.push_back(at);
      if (std::ranges::find(here, name) != here.end()) of_name.push_back(at);
    }
    const std::vector<int>& found = of_name.empty() ? any : of_name;
    if (found.empty()) return -1;
    const auto later = std::ranges::find_if(found, [&](int at) { return at > at_; });
    int chosen = later == found.end() ? found.back() : *later;
    if (names == &MeasureSigns::segnos)
      chosen = later == found.begin() ? found.front() : *std::prev(later);
    if (found.size() > 1)
      warnings_.add(at_ + 1,
                    fmt::format("several signs could be meant here; that of bar {} is taken",
                                bar_of_(chosen + 1)));
    return chosen;
  }

  void warn_of_unplayed() {
    std::vector<bool> is_played(static_cast<std::size_t>(count()), false);
    for (const ElementRun& run : runs_)
      for (int element = run.first; element <= run.last; ++element)
        is_played[static_cast<std::size_t>(element) - 1] = true;
    const auto first = std::ranges::find(is_played, false);
    if (first == is_played.end()) return;
    warnings_.add(static_cast<int>(first - is_played.begin()) + 1,
                  fmt::format("by the signs this bar is never played ({} in all are not)",
                              std::ranges::count(is_played, false)));
  }

  void warn_of_the_rest() {
    if (group_is_marked_ && !is_closed_)
      warnings_.add(group_start_ + 1,
                    "no repeat sign ends the repeat that begins here; it is "
                    "played once");
    if (jumped_ && !ended_on_purpose_)
      warnings_.add(last_jump_ + 1,
                    "no Fine and no coda comes after this jump; it is taken to play "
                    "on to the last bar");
    if (jumped_) return;
    for (int at = 0; at < count(); ++at) {
      if (signs_[at].fine)
        warnings_.add(at + 1, "Fine, and no D.C. or D.S. before it; it is passed over");
      if (signs_[at].to_coda)
        warnings_.add(at + 1, "To Coda, and no D.C. or D.S. before it; it is passed over");
    }
  }

  const std::vector<MeasureSigns>& signs_;
  const std::function<std::string(int)>& bar_of_;
  const std::function<void(int)>& refuse_length_;
  ScoreWarnings& warnings_;
  const ScoreEndings endings_;
  std::vector<ElementRun> runs_;
  std::vector<PlayedRepeat> repeats_;
  std::set<int> taken_;  // jumps, each once
  int at_ = 0;
  int run_first_ = -1;  // none
  int run_last_ = 0;
  std::size_t played_ = 0;
  int group_start_ = 0;  // where the repeat sign that comes next goes back to
  bool group_is_marked_ = false;
  bool is_closed_ = true;  // the repeat that was opened has its end
  int pass_ = 1;
  bool jumped_ = false;
  int last_jump_ = 0;
  bool coda_taken_ = false;
  bool ended_on_purpose_ = false;
  bool is_over_ = false;
};

}  // namespace

PlayOrder play_order(const std::vector<MeasureSigns>& signs,
                     const std::function<std::string(int)>& bar_of,
                     const std::function<void(int)>& refuse_length, ScoreWarnings& warnings) {
  return Unfolding(signs, bar_of, refuse_length, warnings).run();
}

}  // namespace cahier
