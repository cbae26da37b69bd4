#include "report/standing_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "plan/chunk_labels.h"
#include "plan/standing.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "text/wrap.h"

namespace cahier {
namespace {

constexpr std::size_t kMostSpots = 5;

std::string course(const LastEdition& last, const Words& words) {
  if (last.days_behind > 0) return words.count("plan.behind", last.days_behind);
  if (last.days_behind < 0) return words.count("plan.ahead", -last.days_behind);
  return words.say("plan.on_course");
}

std::string edition_line(const Plan& plan, const Words& words) {
  std::vector<std::string> items = {words.say("plan.edition", {{"number", plan.record.edition}})};
  if (plan.upkeep) items.push_back(words.say("plan.upkeep"));
  if (const auto& last = plan.record.last) {
    if (!plan.upkeep) items.push_back(course(*last, words));
    if (last->tasks > 0)
      items.push_back(
          words.say("plan.tasks_done", {{"done", last->tasks_done}, {"all", last->tasks}}));
    if (last->bars_new > 0)
      items.push_back(
          words.say("plan.bars_learned", {{"done", last->bars_learned}, {"all", last->bars_new}}));
  }
  return wrap("", items, kDot, 2);
}

// Of learning, so nothing where nothing is left to learn.
std::string pace_line(const Plan& plan, const Words& words) {
  if (!has_new_bars(plan)) return {};
  std::vector<std::string> items;
  for (const LevelPace& pace : level_paces(plan))
    items.push_back(
        words.say("plan.pace_of_level", {{"level", pace.level},
                                         {"now", fmt::format("{:.2f}", pace.now)},
                                         {"first", fmt::format("{:.2f}", pace.first)}}));
  return items.empty() ? "" : wrap("  " + words.say("plan.pace") + " ", items, kDot, 4);
}

std::string slips_line(const Plan& plan, const Words& words) {
  const std::vector<WeakSpot> spots = weak_spots(plan);
  if (spots.empty()) return {};
  std::vector<std::string> items;
  for (std::size_t at = 0; at < std::min(spots.size(), kMostSpots); ++at) {
    const Chunk& chunk = plan.pieces[spots[at].piece].chunks[spots[at].chunk];
    const std::optional<Date> mended = last_mended(plan, spots[at]);
    const bool by_bars = ChunkLabels(plan.pieces[spots[at].piece]).by_bars(chunk);
    const char* mended_key = by_bars ? "places.slips_mended" : "plan.slips_mended";
    const char* key = by_bars ? "places.slips_of" : "plan.slips_of";
    items.push_back(piece_mark(plan, spots[at].piece) +
                    words.say(mended ? mended_key : key,
                              {{"chunk", chunk.id},
                               {"bars", bar_range(chunk.bars.first, chunk.bars.last)},
                               {"slips", chunk.slips.slips},
                               {"trials", chunk.slips.trials},
                               {"date", mended ? day_month(words, *mended) : ""}}));
  }
  if (spots.size() > kMostSpots)
    items.push_back(words.count("plan.more_slips", static_cast<int>(spots.size() - kMostSpots)));
  return wrap("  " + words.say("plan.slips") + " ", items, kDot, 4);
}

}  // namespace

std::string standing_text(const Plan& plan, const Words& words) {
  if (!is_later_edition(plan)) return {};
  return edition_line(plan, words) + pace_line(plan, words) + slips_line(plan, words);
}

}  // namespace cahier
