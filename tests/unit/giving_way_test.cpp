// The order in which work gives way when time is short: nothing later in the order is given up for
// want of minutes on days that hold enough of something earlier.
#include <fmt/format.h>

#include <iostream>
#include <map>
#include <set>

#include "catch.h"
#include "long_checks.h"
#include "plan/quality/gave_way.h"
#include "plan/quality/quality.h"
#include "practice/time_model.h"
#include "roomy_work.h"

namespace cahier {
namespace {

// In the order of giving way. A silent play-through has no word in GaveWay: the second of these.
enum class Earlier { temper, silent, sooner, second_pass, fork_again, section };
constexpr std::array<std::string_view, 6> kEarlier = {
    "spoken and written", "silent", "sooner recalls", "second passes", "forks again", "sections"};

bool goes_before(Earlier earlier, GaveWay later) {
  switch (earlier) {
    case Earlier::temper:
    case Earlier::silent:
      return later > GaveWay::spoken_parts;
    case Earlier::sooner:
      return later > GaveWay::recalls;
    case Earlier::second_pass:
      return later > GaveWay::second_passes;
    case Earlier::fork_again:
      return later > GaveWay::fork_drills;
    case Earlier::section:
      return later > GaveWay::sections;
  }
  return false;
}

// Minutes that a day gives to each kind that goes early.
using DayMinutes = std::map<Earlier, double>;

class EarlyWork {
 public:
  explicit EarlyWork(const Plan& plan) {
    for (const Day& day : plan.days) {
      free_[day.date] = day.allowance - day.minutes();
      for (const Task& task : day.tasks)
        if (const auto kind = kind_of(task)) minutes_[day.date][*kind] += task.minutes;
    }
  }

  // The earliest kind before `later` that, on some day of the window, gives so many minutes to
  // itself and what goes before it, with what is free.
  std::optional<Earlier> stands_for(GaveWay later, DateSpan window, double needed) const {
    std::optional<Earlier> found;
    for (const auto& [date, kinds] : minutes_) {
      if (!window.contains(date)) continue;
      double minutes = free_.at(date);
      for (const auto& [kind, of_kind] : kinds) {
        if (!goes_before(kind, later)) break;
        minutes += of_kind;
        if (minutes < needed - 1e-9) continue;
        if (!found || kind < *found) found = kind;
        break;
      }
    }
    return found;
  }

 private:
  std::optional<Earlier> kind_of(const Task& task) {
    switch (task.drill) {
      case Drill::write_out:
      case Drill::spoken_part:
        return Earlier::temper;
      case Drill::silent_run:
        return Earlier::silent;
      case Drill::slow_pass:
      case Drill::counted_pass:
        return again(task) ? std::optional(Earlier::second_pass) : std::nullopt;
      case Drill::cue_starts: {
        bool all_again = task.fork && !task.ways.empty();
        for (const PlayedWay& way : task.ways)
          all_again = !ways_.insert({task.piece, way.at, way.to}).second && all_again;
        return all_again ? std::optional(Earlier::fork_again) : std::nullopt;
      }
      case Drill::recall:
        if (task.reason == Reason::sooner) return Earlier::sooner;
        if (task.reason == Reason::section) return Earlier::section;
        return std::nullopt;
      default:
        return std::nullopt;
    }
  }

  bool again(const Task& task) {
    bool again = true;
    for (int bar = task.bars.first; bar <= task.bars.last; ++bar)
      again = !passed_.insert({task.piece, task.drill, bar}).second && again;
    return again;
  }

  std::map<Date, double> free_;
  std::map<Date, DayMinutes> minutes_;
  std::set<std::tuple<int, Drill, int>> passed_;
  std::set<std::tuple<int, int, int>> ways_;
};

std::optional<GaveWay> kind_of(const QualityFigure& figure, const Shortfall& shortfall) {
  QualityFigure one = figure;
  one.why = {shortfall};
  const std::vector<GaveWay> kinds = what_gave_way(Plan(), {one});
  return kinds.empty() ? std::nullopt : std::optional(kinds.front());
}

// The first day on which the bars could be played whole: each of their chunks has come back once,
// and for passes everything is learned.
Date ready(const Plan& plan, GaveWay kind, const Shortfall& shortfall) {
  const int piece = shortfall.piece.value_or(0);
  const auto& chunks = plan.pieces[piece].chunks;
  std::vector<bool> learned(chunks.size(), false);
  std::vector<bool> recalled(chunks.size(), false);
  Date last_new = plan.from;
  Date ready = plan.from;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (task.piece != piece) continue;
      for (const int chunk : task.chunks) {
        if (task.drill == Drill::learn) {
          learned[chunk] = true;
          last_new = day.date + days{1};
        } else if (retrieves(task.drill) && learned[chunk] && !recalled[chunk]) {
          recalled[chunk] = true;
          for (const BarRange& bars : shortfall.bars)
            if (bars.overlaps(chunks[chunk].bars)) ready = day.date;
        }
      }
    }
  return kind == GaveWay::sections ? ready : std::max(ready, last_new);
}

// Of the least that would mend a part of it.
double minutes_needed(const Plan& plan, GaveWay kind, const Shortfall& shortfall) {
  const Piece& piece = plan.pieces[shortfall.piece.value_or(0)].piece;
  const TimeModel time(piece, plan.method);
  if (kind == GaveWay::more_run_throughs) return time.run_through();
  if (kind == GaveWay::fork_drills || shortfall.bars.empty()) return time.cue_starts(2);
  BarRange bars = shortfall.bars.front();
  const bool passes = kind == GaveWay::passes || kind == GaveWay::second_passes;
  bars.last = std::min(bars.last, bars.first + (passes ? plan.method.stretch_bars : 32) - 1);
  return passes ? time.minutes(Drill::slow_pass, bars, 2)
                : time.recall(bars, piece.hardest_level(bars));
}

struct Found {
  int given_up = 0;  // kinds, once for each plan, for want of minutes
  int against = 0;   // of those: while something earlier stood on the same days
  std::vector<std::string> cases;

  std::string told(int plans) const {
    std::string text = fmt::format(
        "of {} plans: {} of {} kinds given up while something earlier "
        "stands\n",
        plans, against, given_up);
    for (const std::string& one : cases) text += "  " + one + "\n";
    return text;
  }
};

void look_at(Found& order, const Plan& plan, const std::string& which) {
  const EarlyWork early(plan);
  std::map<GaveWay, std::optional<Earlier>> found;
  for (const QualityFigure& figure : quality(plan))
    for (const Shortfall& shortfall : figure.why) {
      const auto kind = kind_of(figure, shortfall);
      if (!kind || !shortfall.window || shortfall.mend == Mend::unsaid ||
          shortfall.mend == Mend::later_date)
        continue;
      DateSpan window = *shortfall.window;
      window.first = std::max(window.first, ready(plan, *kind, shortfall));
      const auto stands = early.stands_for(*kind, window, minutes_needed(plan, *kind, shortfall));
      auto& earliest = found[*kind];
      if (stands && (!earliest || *stands < *earliest)) earliest = stands;
    }
  for (const auto& [kind, earliest] : found) {
    ++order.given_up;
    if (!earliest) continue;
    ++order.against;
    order.cases.push_back(fmt::format("{}: {} while {}", which, gave_way_word(kind),
                                      kEarlier[static_cast<std::size_t>(*earliest)]));
  }
}

}  // namespace

TEST_CASE("nothing is given up while something that should go before it stands on the same days") {
  // In the ordinary run works whose halves, sections or first run-throughs were once given up for
  // recalls sooner than needed.
  using Work = std::pair<unsigned, double>;
  std::vector<Work> works = {{2010, 1.0}, {2050, 1.0}, {2164, 1.0}, {2086, 1.3}, {2102, 1.6}};
  if (sample::in_long_checks()) {
    works.clear();
    for (const double slack : {1.0, 1.3, 1.6, 2.0})
      for (unsigned seed = 2000; seed < 2200; ++seed) works.emplace_back(seed, slack);
  }
  Found order;
  int plans = 0;
  for (const auto& [seed, slack] : works) {
    const auto work = sample::roomy_work(seed, slack);
    if (!work) continue;
    const Plan plan = make_plan(work->pieces, work->terms);
    if (!plan.fits) continue;
    ++plans;
    look_at(order, plan, fmt::format("seed {} at {}", seed, slack));
  }
  const std::string table = order.told(plans);
  if (sample::in_long_checks()) std::cout << table;
  INFO(table);
  CHECK(plans > static_cast<int>(works.size()) / 2);
  // Three kinds of 32 in 512 plans when this was written: passes, where
  // recalls on the way to the tempo come first (passes first cost more figures than they mend).
  CHECK(order.against <= (sample::in_long_checks() ? .01 * plans : 0));
}

}  // namespace cahier
