#include "workbook/sheets/cover/cover_facts.h"

#include <algorithm>
#include <cmath>

#include "plan/standing.h"
#include "report/gave_way_text.h"
#include "text/phrasing.h"
#include "workbook/parts/short_dates.h"
#include "workbook/parts/week_words.h"

namespace cahier {
namespace {

constexpr double kManyMinutes = 120;  // from here on hours say more

// To the nearest half hour.
std::string hours_text(double minutes) { return minutes_text(minutes / 60); }

CoverFact days_fact(const Plan& plan, const Words& words, const Totals& totals) {
  if (plan.upkeep)
    return {std::to_string(totals.days_with_work),
            words.count("cover.days_with_work", totals.days_with_work)};
  return {std::to_string(totals.practice_days), words.count("cover.days", totals.practice_days)};
}

CoverFact chunks_fact(const Words& words, const Totals& totals) {
  const int left = totals.chunks - totals.learned_before;
  if (left > 0) return {std::to_string(left), words.count("cover.chunks", left)};
  return {std::to_string(totals.chunks), words.count("cover.chunks_kept", totals.chunks)};
}

CoverFact runs_fact(const Plan& plan, const Words& words, const Totals& totals) {
  if (is_later_edition(plan))
    return {std::to_string(totals.runs), words.count("cover.runs_to_come", totals.runs)};
  if (plan.upkeep || (plan.fits && plan.pieces.size() == 1))
    return {std::to_string(totals.runs), words.count("cover.runs", totals.runs)};
  return {std::to_string(plan.runs_required()),
          plan.pieces.size() > 1 ? words.say("cover.runs_each")
                                 : words.count("cover.runs", plan.runs_required())};
}

}  // namespace

std::vector<CoverFact> cover_facts(const Plan& plan, const Words& words, const Totals& totals) {
  std::vector<CoverFact> result = {
      days_fact(plan, words, totals),
      plan.minutes_total() >= kManyMinutes
          ? CoverFact{hours_text(plan.minutes_total()), words.say("cover.hours")}
          : CoverFact{minutes_text(plan.minutes_total()), words.say("cover.minutes")},
      chunks_fact(words, totals),
      {std::to_string(totals.cues), words.count("cover.cues", totals.cues)},
      runs_fact(plan, words, totals)};
  const bool taken_for_learned = !is_later_edition(plan) && totals.learned_before > 0;
  if (const int weeks = static_cast<int>(weeks_of(plan).size()); taken_for_learned)
    result.push_back({std::to_string(weeks), words.count("cover.weeks", weeks)});
  else if (totals.learned_before + totals.learned_chunks >= totals.chunks && totals.learned)
    result.push_back(
        {short_date(words, plan, *totals.learned),
         words.say(totals.learned_chunks > 0 ? "cover.learned" : "cover.learned_already")});
  else
    result.push_back({"–", words.say("cover.not_learned")});
  return result;
}

std::vector<std::string> cover_assumptions(const Plan& plan, const Words& words,
                                           const Totals& totals) {
  const Method& method = plan.method;
  std::vector<std::string> texts;
  if (totals.least_day == totals.most_day)
    texts.push_back(words.say("cover.assumes_day", {{"minutes", minutes_text(totals.most_day)}}));
  else
    texts.push_back(words.say(
        "cover.assumes_day_from_to",
        {{"least", minutes_text(totals.least_day)}, {"most", minutes_text(totals.most_day)}}));
  if (totals.learned_chunks > 0)
    texts.push_back(
        words.say("cover.assumes_chunk",
                  {{"least", method.chunk_least},
                   {"most", method.chunk_most},
                   {"minutes", minutes_text(totals.learn_minutes / totals.learned_chunks)}}));
  if (totals.learned_chunks > 0) {
    const double weeks = static_cast<double>((*totals.learned - plan.from).count() + 1) / 7;
    const int a_week = static_cast<int>(std::lround(totals.learned_chunks / std::max(1.0, weeks)));
    texts.push_back(words.count("cover.assumes_pace", std::max(1, a_week)));
  }
  if (totals.catch_up_days > 0)
    texts.push_back(words.count("cover.assumes_catch_up", totals.catch_up_days));
  if (plan.upkeep) return texts;
  if (totals.spare_minutes >= kManyMinutes)
    texts.push_back(
        words.say("cover.assumes_spare_hours", {{"hours", hours_text(totals.spare_minutes)}}));
  else
    texts.push_back(
        words.say("cover.assumes_spare", {{"minutes", minutes_text(totals.spare_minutes)}}));
  if (method.quiet_days > 0 && totals.learned_chunks > 0)
    texts.push_back(words.count("cover.assumes_quiet", method.quiet_days));
  if (is_later_edition(plan)) return texts;  // stands beside what was moved
  if (const std::string gave_way = gave_way_text(plan, words); !gave_way.empty())
    texts.push_back(gave_way);
  return texts;
}

}  // namespace cahier
