#include "workbook/sheets/cover/since_last_edition.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "piece/short_title.h"
#include "plan/standing.h"
#include "report/gave_way_text.h"
#include "text/phrasing.h"
#include "workbook/parts/totals.h"

namespace cahier {
namespace {

constexpr std::size_t kMostSpots = 3;
constexpr std::size_t kMostMoved = 3;  // more are counted
constexpr double kLeastPace = 0.1;     // a smaller difference is not worth a sentence

std::string minutes_a_day(const Totals& totals, const Words& words) {
  return words.say(
      totals.least_day == totals.most_day ? "cover.minutes_a_day" : "cover.minutes_a_day_at_most",
      {{"minutes", minutes_text(totals.most_day)}});
}

// "3 days behind; the date still holds with 17 minutes a day (15 before)."
std::string course(const Plan& plan, const LastEdition& last, const Words& words) {
  const Totals totals = totals_of(plan);
  const bool more_minutes = last.minutes && totals.most_day - *last.minutes >= 0.5;
  const std::string a_day = minutes_a_day(totals, words);
  const std::string before = minutes_text(last.minutes.value_or(0));
  const WordValues minutes = {{"minutes", a_day}, {"before", before}};
  if (last.days_behind == 0) {
    if (!plan.fits) return words.say("cover.on_course_misfit");
    return words.say(more_minutes ? "cover.on_course_minutes" : "cover.on_course", minutes);
  }
  const bool behind = last.days_behind > 0;
  const int number = std::abs(last.days_behind);
  if (!plan.fits) return words.count(behind ? "cover.behind_misfit" : "cover.ahead_misfit", number);
  if (!behind) return words.count("cover.ahead", number);
  return words.count(more_minutes ? "cover.behind_minutes" : "cover.behind", number, minutes);
}

// "Of the last workbook’s 42 tasks so far, 38 were done. New bars learned: 12 of 16."
std::string done(const LastEdition& last, const Words& words) {
  if (last.tasks <= 0) return {};
  std::string text;
  if (last.tasks_done >= last.tasks)
    text = words.count("cover.done_all", last.tasks);
  else if (last.tasks_done <= 0)
    text = words.count("cover.done_none", last.tasks);
  else
    text = words.count("cover.done", last.tasks_done, {{"tasks", last.tasks}});
  if (last.bars_new > 0)
    text += " " +
            words.say("cover.new_bars", {{"learned", last.bars_learned}, {"bars", last.bars_new}});
  return text;
}

// Of each piece, in the order of the plan.
std::vector<std::string> titles_in_text(const Plan& plan) {
  std::vector<const Piece*> pieces;
  for (const PlannedPiece& piece : plan.pieces) pieces.push_back(&piece.piece);
  return short_titles(pieces);
}

std::string slips(const Plan& plan, const Words& words) {
  const std::vector<WeakSpot> spots = weak_spots(plan);
  if (spots.empty()) return {};
  // By piece, the one that slips most first.
  std::vector<std::pair<int, std::vector<std::string>>> by_piece;
  for (std::size_t at = 0; at < std::min(spots.size(), kMostSpots); ++at) {
    const int piece = spots[at].piece;
    auto found = std::find_if(by_piece.begin(), by_piece.end(),
                              [&](const auto& one) { return one.first == piece; });
    if (found == by_piece.end()) found = by_piece.insert(by_piece.end(), {piece, {}});
    const BarRange range = plan.pieces[piece].chunks[spots[at].chunk].bars;
    found->second.push_back(bar_range(range.first, range.last));
  }
  std::vector<std::string> bars;
  for (const auto& [piece, ranges] : by_piece) {
    if (plan.pieces.size() == 1)
      bars = ranges;
    else
      bars.push_back(words.say("week.of_piece", {{"bars", list_text(words, ranges)},
                                                 {"piece", titles_in_text(plan)[piece]}}));
  }
  if (spots.size() > kMostSpots)
    bars.push_back(words.count("cover.more_slips", static_cast<int>(spots.size() - kMostSpots)));
  return words.say("cover.slips", {{"bars", list_text(words, bars)}});
}

std::string pace(const Plan& plan, const Words& words) {
  const double pace = mean_pace(plan);
  if (std::abs(pace - 1) < kLeastPace || totals_of(plan).learned_chunks == 0) return {};
  return words.say("cover.pace", {{"times", number_text(pace)}});
}

std::string moved_text(const Plan& plan, const MovedBars& moved, const Words& words) {
  std::string bars = words.count("cover.moved_bars", moved.bars.size(),
                                 {{"bars", bar_range(moved.bars.first, moved.bars.last)}});
  if (plan.pieces.size() > 1)
    bars =
        words.say("week.of_piece", {{"bars", bars}, {"piece", titles_in_text(plan)[moved.piece]}});
  return words.say(
      "cover.moved_from",
      {{"bars", bars}, {"from", day_month(words, moved.from)}, {"to", day_month(words, moved.to)}});
}

// "Moved: bars 9–12 from 12 January to 20 January."
std::string moved(const Plan& plan, const Words& words) {
  const std::vector<MovedBars> all = moved_bars(plan);
  if (all.empty()) return {};
  if (all.size() > kMostMoved) {
    Date last = all.front().to;
    for (const MovedBars& one : all) last = std::max(last, one.to);
    return words.say("cover.moved_many",
                     {{"number", static_cast<int>(all.size())}, {"date", day_month(words, last)}});
  }
  std::vector<std::string> texts;
  for (const MovedBars& one : all) texts.push_back(moved_text(plan, one, words));
  return words.say("cover.moved", {{"list", list_text(words, texts)}});
}

}  // namespace

std::vector<std::string> since_last_edition(const Plan& plan, const Words& words) {
  std::vector<std::string> texts;
  const auto add = [&](std::string text) {
    if (!text.empty()) texts.push_back(std::move(text));
  };
  if (plan.record.last && !plan.upkeep) add(course(plan, *plan.record.last, words));
  if (plan.record.last) add(done(*plan.record.last, words));
  add(moved(plan, words));
  if (!plan.upkeep) add(gave_way_text(plan, words));
  add(slips(plan, words));
  add(pace(plan, words));
  return texts;
}

}  // namespace cahier
