#include "score/phrase_ends.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "score/hand_notes.h"

namespace cahier {
namespace {

constexpr double kSliver = 1e-6;         // of a quarter note, in sums
constexpr double kLeastSlurBars = 0.75;  // shorter ones say how a figure is played
constexpr double kLeastLongBars = 0.25;
constexpr double kLeastSilenceBars = 0.25;
constexpr double kLeastSungRestBars = 0.125;
constexpr double kLeastSungLongBars = 0.5;
constexpr double kLongestUpbeatBars = 0.5;
constexpr double kLatestBeginningBars = 0.25;
constexpr std::size_t kNotesBeside = 32;  // that a note is long beside
constexpr double kLongTimes = 2;          // as long as half of the slur's notes at least

// What is struck at one moment by one voice; in quarters from the beginning of the score.
struct Stroke {
  double begin = 0;
  double end = 0;
  double slur_begin = -1;  // of the slur that ends here; -1 for none
  bool begins_slur = false;
};

class PhraseEndFinder {
 public:
  explicit PhraseEndFinder(const Score& score) : score_(score) {
    double begin = 0;
    for (const ScoreBar& bar : score.bars) {
      starts_.push_back(begin);
      for (int element = bar.first; element <= bar.last; ++element) {
        const ScoreMeasure& measure = score.measures[static_cast<std::size_t>(element) - 1];
        for (const ScoreNote& note : measure.notes) take(note, begin + note.onset.value());
        if (!score.sung.empty())
          for (const ScoreNote& note : score.sung[static_cast<std::size_t>(element) - 1])
            take_sung(note, begin + note.onset.value());
        begin += measure.length.value();
      }
    }
    starts_.push_back(begin);
    std::ranges::sort(sounds_);
  }

  std::vector<PhraseEnd> find() {
    if (score_.sung.empty()) find_silences();
    find_drawn();
    for (const auto& [begin, end] : holds_) add_between(begin, next_sound(end), PhraseSign::held);
    for (const auto& [voice, strokes] : voices_)
      is_sung_ ? find_sung_ends(strokes) : find_slur_ends(strokes);
    std::vector<PhraseEnd> ends;
    for (const auto& [bar, sign] : signs_) ends.push_back({bar, sign});
    return ends;
  }

 private:
  void take(const ScoreNote& note, double begin) {
    const double end = begin + note.duration.value();
    if (!note.cue && (note.fermata || note.breath)) holds_.emplace_back(begin, end);
    if (!note.sounds() || note.grace) return;
    sounds_.emplace_back(begin, end);
    if (!score_.sung.empty() || hand_of_staff(score_.hands, note.staff) != 0) return;
    is_sung_ = is_sung_ || !note.sung.empty();
    add_stroke(note, begin, end);
  }

  void take_sung(const ScoreNote& note, double begin) {
    is_sung_ = true;
    if (note.sounds() && !note.grace) add_stroke(note, begin, begin + note.duration.value());
  }

  void add_stroke(const ScoreNote& note, double begin, double end) {
    std::vector<Stroke>& strokes = voices_[note.voice];
    const bool goes_on = !strokes.empty() && note.tie_stop && begin > strokes.back().begin;
    const bool is_chord = !strokes.empty() && begin <= strokes.back().begin + kSliver;
    if (!goes_on && !is_chord) strokes.push_back({begin, end});
    Stroke& last = strokes.back();
    last.end = std::max(last.end, end);
    for (std::size_t slur = 0; slur < open_.size(); ++slur) {
      const auto has = [&](std::uint16_t slurs) { return (slurs >> slur & 1u) != 0; };
      if (has(note.slurs_ended)) last.slur_begin = std::exchange(open_[slur], -1);
      if (has(note.slurs_begun)) open_[slur] = last.begin;
      last.begins_slur = last.begins_slur || has(note.slurs_begun);
    }
  }

  double bar_length(std::size_t bar) const { return starts_[bar + 1] - starts_[bar]; }

  // The index of the bar; the last one's from its end on.
  std::size_t bar_at(double when) const {
    const auto after = std::upper_bound(starts_.begin(), starts_.end() - 1, when + kSliver);
    return static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - starts_.begin() - 1, 0));
  }

  std::optional<double> next_sound(double when) const {
    const auto next = std::ranges::lower_bound(sounds_, std::pair(when - kSliver, 0.0));
    return next == sounds_.end() ? std::nullopt : std::optional(next->first);
  }

  // A phrase whose last note begins at `last` ends before what begins at `next`.
  void add_between(double last, std::optional<double> next, PhraseSign sign) {
    if (!next) return;
    std::size_t bar = bar_at(*next);  // that the next phrase begins with
    const double into = *next - starts_[bar];
    if (into > kLatestBeginningBars * bar_length(bar) + kSliver) {
      if (bar_length(bar) - into > kLongestUpbeatBars * bar_length(bar) + kSliver) return;
      ++bar;
    }
    if (last < starts_[bar] - kSliver) add(bar, sign);
  }

  // A phrase begins with that bar.
  void add(std::size_t bar, PhraseSign sign) {
    if (bar == 0 || bar >= score_.bars.size()) return;
    PhraseSign& there = signs_.emplace(static_cast<int>(bar) - 1, sign).first->second;
    there = std::max(there, sign);
  }

  void find_silences() {
    double sounded = 0;
    double last = 0;
    for (const auto& [begin, end] : sounds_) {
      if (begin - sounded > kLeastSilenceBars * bar_length(bar_at(sounded)) - kSliver &&
          begin > sounded + kSliver)
        add_between(last, begin, PhraseSign::silence);
      sounded = std::max(sounded, end);
      last = begin;
    }
  }

  // Where the page itself shows that something new begins.
  void find_drawn() {
    for (std::size_t bar = 1; bar < score_.bars.size(); ++bar) {
      const auto before = static_cast<std::size_t>(score_.bars[bar - 1].last) - 1;
      const std::size_t here = before + 1;
      if (score_.measures[here].key != score_.measures[before].key ||
          score_.measures[here].meter != score_.measures[before].meter ||
          score_.signs[before].double_bar || score_.signs[before].backward ||
          score_.signs[here].forward)
        add(bar, PhraseSign::new_key);
    }
  }

  void find_sung_ends(const std::vector<Stroke>& strokes) {
    std::size_t first = 0;  // since the last rest
    for (std::size_t at = 0; at + 1 < strokes.size(); ++at) {
      const Stroke& stroke = strokes[at];
      const double bar = bar_length(bar_at(stroke.begin));
      const double next = strokes[at + 1].begin;
      const double length = next - stroke.begin;
      if (next - stroke.end > kLeastSungRestBars * bar - kSliver) {
        add_between(stroke.begin, next, PhraseSign::rest);
        first = at + 1;
      } else if (length > kLeastSungLongBars * bar - kSliver &&
                 length > kLongTimes * usual_length(strokes, first, at) - kSliver) {
        add_between(stroke.begin, next, PhraseSign::long_note);
      }
    }
  }

  void find_slur_ends(const std::vector<Stroke>& strokes) {
    for (std::size_t at = 0; at + 1 < strokes.size(); ++at) {
      const Stroke& stroke = strokes[at];
      if (stroke.slur_begin < 0 || stroke.begins_slur) continue;
      const double bar = bar_length(bar_at(stroke.slur_begin));
      if (stroke.end - stroke.slur_begin < kLeastSlurBars * bar - kSliver) continue;
      const double next = strokes[at + 1].begin;
      if (next > stroke.end + kSliver)
        add_between(stroke.begin, next, PhraseSign::rest);
      else if (const double length = next - stroke.begin;
               length > kLeastLongBars * bar - kSliver &&
               length > kLongTimes * usual_length(strokes, slur_first(strokes, at), at) - kSliver)
        add_between(stroke.begin, next, PhraseSign::long_note);
    }
  }

  static std::size_t slur_first(const std::vector<Stroke>& strokes, std::size_t end) {
    std::size_t first = end;
    while (first > 0 && strokes[first - 1].begin > strokes[end].slur_begin - kSliver) --first;
    return first;
  }

  // That half of the notes from first to before end do not exceed; the bar's where there are none,
  // so that no note is long beside it.
  double usual_length(const std::vector<Stroke>& strokes, std::size_t first,
                      std::size_t end) const {
    std::vector<double> lengths;
    for (std::size_t at = std::max(first + kNotesBeside, end) - kNotesBeside; at < end; ++at)
      lengths.push_back(strokes[at + 1].begin - strokes[at].begin);
    if (lengths.empty()) return bar_length(bar_at(strokes[end].begin));
    std::ranges::sort(lengths);
    return lengths[lengths.size() / 2];
  }

  const Score& score_;
  std::vector<double> starts_;                         // of the bars, and the end
  std::vector<std::pair<double, double>> sounds_;      // of all hands
  std::vector<std::pair<double, double>> holds_;       // notes and rests
  std::map<std::string, std::vector<Stroke>> voices_;  // of the leading line
  std::array<double, 16> open_ = no_slurs();           // where slurs of that number begin
  bool is_sung_ = false;
  std::map<int, PhraseSign> signs_;

  static std::array<double, 16> no_slurs() {
    std::array<double, 16> none{};
    none.fill(-1);
    return none;
  }
};

}  // namespace

std::vector<PhraseEnd> phrase_ends(const Score& score) { return PhraseEndFinder(score).find(); }

}  // namespace cahier
