#include "report/plan_summary.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "plan/standing.h"
#include "practice/time_model.h"
#include "report/gave_way_text.h"
#include "report/plan_words.h"
#include "report/spacing_text.h"
#include "report/standing_text.h"
#include "text/phrasing.h"
#include "text/wrap.h"

namespace cahier {
namespace {

bool is_practice_day(const Day& day) { return day.allowance > 0; }

int count_runs(const Plan& plan, int piece) {
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::run_through && !task.steps.empty())
        runs += task.steps[0].times;
  return runs;
}

// The day the last chunk of all is learned; nullopt when one is never learned.
std::optional<Date> all_learned(const Plan& plan) {
  std::size_t missing = 0;
  std::optional<Date> last;
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece)
    for (const auto& learned : learned_before(plan, static_cast<int>(piece))) {
      if (!learned) ++missing;
      last = std::max(last, learned);
    }
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn) {
        last = day.date;
        missing -= std::min<std::size_t>(missing, 1);
      }
  return missing == 0 ? last : std::nullopt;
}

std::string learned_line(const Plan& plan, const Words& words) {
  const auto learned = all_learned(plan);
  if (!learned) return words.say("plan.never_learned");
  const WordValues date = {{"date", weekday_day_month(words, *learned)}};
  if (*learned >= plan.from) return words.say("plan.all_learned", date);
  // The log does not say when.
  if (!is_later_edition(plan)) return words.say("plan.taken_for_learned");
  return words.say("plan.all_learned_before", date);
}

std::string title_line(const PlannedPiece& planned, const Words& words) {
  const Piece& piece = planned.piece;
  if (piece.composer.empty()) return piece.title;
  return words.say("plan.by_composer", {{"title", piece.title}, {"composer", piece.composer}});
}

std::string heading(const Plan& plan, const Words& words) {
  std::string text = plan.programme.empty() ? "" : wrap("", {plan.programme}, "", 4);
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece)
    text += wrap(piece_mark(plan, static_cast<int>(piece)), {title_line(plan.pieces[piece], words)},
                 "", 4);
  const int weeks = static_cast<int>((plan.days.size() + 6) / 7);
  std::vector<std::string> dates;
  if (!plan.days.empty()) dates.push_back(date_span(words, plan.from, plan.by - days{1}));
  dates.push_back(words.count("plan.weeks", weeks));
  dates.push_back(
      words.say(plan.upkeep ? "plan.until" : "plan.date", {{"date", full_date(words, plan.by)}}));
  return text + wrap("", dates, kDot, 2);
}

std::string holdings(const Plan& plan, const Words& words) {
  const int practice =
      static_cast<int>(std::count_if(plan.days.begin(), plan.days.end(), is_practice_day));
  const int off = static_cast<int>(plan.days.size()) - practice;
  std::vector<std::string> time = {words.count("plan.practice_days", practice)};
  if (off > 0) time.push_back(words.count("plan.days_off", off));
  time.push_back(
      words.say("plan.minutes_in_all", {{"minutes", minutes_text(plan.minutes_total())}}));
  std::string text = wrap("  ", time, kDot, 4);
  for (std::size_t at = 0; at < plan.pieces.size(); ++at) {
    const PlannedPiece& piece = plan.pieces[at];
    const int index = static_cast<int>(at);
    text += wrap("  " + piece_mark(plan, index),
                 {words.count("plan.chunks", static_cast<int>(piece.chunks.size())),
                  words.count("plan.cues", static_cast<int>(piece.cues.size())),
                  words.count("plan.runs", count_runs(plan, index))},
                 kDot, 4);
  }
  return text + wrap("  ", {learned_line(plan, words)}, "", 4) + spacing_figure(plan, words);
}

std::string minutes_a_day(const Plan& plan, const Words& words) {
  double least = 0;
  double most = 0;
  for (const Day& day : plan.days) {
    if (!is_practice_day(day)) continue;
    least = least > 0 ? std::min(least, day.allowance) : day.allowance;
    most = std::max(most, day.allowance);
  }
  if (least == most) return words.say("plan.minutes_a_day", {{"minutes", minutes_text(most)}});
  return words.say("plan.minutes_from_to",
                   {{"least", minutes_text(least)}, {"most", minutes_text(most)}});
}

std::string tempo_of(const Plan& plan, int index, const Words& words) {
  const Piece& piece = plan.pieces[index].piece;
  const Tempo tempo = tempo_or_usual(piece, 1);
  return piece_mark(plan, index) +
         words.say(piece.tempo_at(1) ? "plan.tempo" : "plan.tempo_usual",
                   {{"beat", beat_name(tempo.beat)}, {"tempo", number_text(tempo.per_minute)}});
}

std::string temper_of(const Plan& plan, const Words& words) {
  if (plan.temper == Temper::no) return words.say("plan.temper_no");
  if (plan.temper == Temper::yes) return words.say("plan.temper_yes");
  return words.say("plan.temper_weak", {{"number", plan.method.weak_level}});
}

std::string assumptions(const Plan& plan, const Words& words) {
  const Method& method = plan.method;
  std::vector<std::string> items = {minutes_a_day(plan, words)};
  if (plan.blocks > 1) items.push_back(words.count("plan.blocks", plan.blocks));
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece)
    items.push_back(tempo_of(plan, static_cast<int>(piece), words));
  items.push_back(
      words.say("plan.chunk_sizes", {{"least", method.chunk_least}, {"most", method.chunk_most}}));
  items.push_back(words.count("plan.repetitions", method.repetitions));
  items.push_back(words.say("plan.recalls", {{"number", method.first_recall_days}}));
  if (method.quiet_days > 0) items.push_back(words.count("plan.quiet_days", method.quiet_days));
  items.push_back(words.say("plan.most_runs_a_day", {{"number", method.runs_a_day}}));
  if (plan.new_to_performing) items.push_back(words.say("plan.new_to_performing"));
  items.push_back(temper_of(plan, words));
  std::string text = words.say("plan.assumes") + "\n" + wrap("  ", items, kDot, 2);
  if (const std::string gave_way = gave_way_text(plan, words); !gave_way.empty())
    text += "\n" + wrap("", {gave_way}, "", 2);
  return text;
}

}  // namespace

std::string plan_summary(const Plan& plan, const Words& words) {
  return heading(plan, words) + standing_text(plan, words) + "\n" + holdings(plan, words) + "\n" +
         assumptions(plan, words);
}

}  // namespace cahier
