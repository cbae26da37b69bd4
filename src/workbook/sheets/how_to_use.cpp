#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "plan/standing.h"
#include "practice/numbers.h"
#include "practice/time_model.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/prose.h"
#include "workbook/parts/totals.h"
#include "workbook/parts/week_words.h"

namespace cahier {
namespace {

int percent(double share) { return static_cast<int>(std::lround(share * 100)); }

bool has_several_parts(const Plan& plan) {
  return std::any_of(plan.pieces.begin(), plan.pieces.end(),
                     [](const PlannedPiece& planned) { return planned.piece.parts().size() > 1; });
}

bool has_repeats(const Plan& plan) {
  return std::any_of(plan.pieces.begin(), plan.pieces.end(),
                     [](const PlannedPiece& planned) { return !planned.piece.repeats.empty(); });
}

bool has_changes_of_tempo(const Plan& plan) {
  return std::any_of(plan.pieces.begin(), plan.pieces.end(), [](const PlannedPiece& planned) {
    return std::any_of(planned.piece.changes.begin(), planned.piece.changes.end(),
                       [](const Change& change) { return change.tempo.has_value(); });
  });
}

std::string_view missed_words(const Plan& plan) {
  if (plan.upkeep) return "how_to_use.missed_kept";
  return totals_of(plan).learned_chunks == 0 ? "how_to_use.missed_learned"
                                             : "how_to_use.missed_means";
}

// "30–39 %": the shares of the piece's tempo at which a drill is asked for; `usual` when it is not.
std::string shares_of_tempo(const Plan& plan, Drill drill, double usual) {
  double least = 1;
  double most = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (task.drill != drill || !task.tempo) continue;
      const Piece& piece = plan.pieces[task.piece].piece;
      const double share = *task.tempo * quarters(task.beat) /
                           tempo_or_usual(piece, task.bars.first).quarters_per_minute();
      least = std::min(least, share);
      most = std::max(most, share);
    }
  if (most <= 0) least = most = usual;
  return bar_range(percent(least), percent(most)) + "\u00a0%";
}

// What the plan does about a day off a week: "Every Sunday is free here."; empty for a plan without
// a whole week.
std::string rest_words(const Plan& plan, const Words& words) {
  std::vector<PlanWeek> weeks = weeks_of(plan);
  std::erase_if(weeks, [](const PlanWeek& week) { return week.days.size() < 7; });
  if (weeks.empty()) return {};
  const auto free_on = [&](std::size_t weekday) {
    return std::ranges::all_of(
        weeks, [&](const PlanWeek& week) { return week.days[weekday].tasks.empty(); });
  };
  std::vector<Date> free;
  for (const Day& day : weeks.front().days)
    if (free_on(static_cast<std::size_t>(weekday_index(day.date)))) free.push_back(day.date);
  if (free.size() == 1)
    return words.say("how_to_use.rest_weekday", {{"weekday", weekday_long(words, free.front())}});
  const bool every_week = std::ranges::all_of(weeks, [](const PlanWeek& week) {
    return std::ranges::any_of(week.days, [](const Day& day) { return day.tasks.empty(); });
  });
  return words.say(every_week ? "how_to_use.rest_given" : "how_to_use.rest_missing");
}

// The cautions, the second with what the plan does about rest.
std::vector<std::string> cautions(const Plan& plan, const Words& words, std::string_view key) {
  std::vector<std::string> texts = words.list(key);
  const std::string rest = rest_words(plan, words);
  if (texts.size() > 1 && !rest.empty()) texts[1] += " " + rest;
  return texts;
}

// A book with nothing new in it explains only what it asks for; another has sheets for the rest.
bool has_nothing_new(const Plan& plan) {
  return plan.upkeep || (is_later_edition(plan) && totals_of(plan).learned_chunks == 0);
}
bool may_ask_for(const Plan& plan, Drill drill) {
  return !has_nothing_new(plan) || asks_for(plan, drill);
}

// The keys of the day's steps.
struct HowToSteps {
  std::string_view heading;
  std::string_view list;
};

HowToSteps steps_of(const Plan& plan) {
  if (plan.upkeep) return {"how_to_use.steps_kept_heading", "how_to_use.steps_kept"};
  if (has_nothing_new(plan))
    return {"how_to_use.steps_learned_heading", "how_to_use.steps_learned"};
  return {"how_to_use.steps_heading", "how_to_use.steps"};
}

struct Term {
  std::string label;
  std::string text;
};

// What the drill asks for, as this book does; empty where the book does not ask for it.
std::string meaning_of(const Plan& plan, const Words& words, const Totals& totals, Drill drill) {
  const Method& method = plan.method;
  switch (drill) {
    case Drill::learn:
      if (totals.learned_chunks == 0) return {};
      return words.say(
          has_several_parts(plan) ? "how_to_use.learn_parts" : "how_to_use.learn_one_part",
          {{"times", method.repetitions}});
    case Drill::join:
      return may_ask_for(plan, drill) ? words.say("how_to_use.join_means") : "";
    case Drill::recall:
      return words.say(has_nothing_new(plan) ? "how_to_use.recall_kept" : "how_to_use.recall_means",
                       {{"number", method.first_recall_days}});
    case Drill::cue_starts:
      return words.say("how_to_use.cue_starts_mean");
    case Drill::slow_pass:
      return words.say("how_to_use.slow_pass_means",
                       {{"percent", shares_of_tempo(plan, drill, method.slow_tempo)}});
    case Drill::counted_pass:
      return words.say("how_to_use.counted_pass_means",
                       {{"percent", shares_of_tempo(plan, drill, method.counted_tempo)}});
    case Drill::run_through:
      if (is_later_edition(plan))
        return words.say("how_to_use.run_through_more", {{"number", totals.runs}});
      return words.say(
          "how_to_use.run_through_means",
          {{"number", plan.upkeep ? totals.runs : std::max(totals.runs, plan.runs_required())}});
    case Drill::spoken_part:
      if (plan.temper == Temper::no || !has_several_parts(plan) || !may_ask_for(plan, drill))
        return {};
      return words.count("how_to_use.spoken_part_means", method.spoken_times);
    case Drill::write_out:
      if (plan.temper == Temper::no || !may_ask_for(plan, drill)) return {};
      return words.say("how_to_use.write_out_means");
    case Drill::silent_run:
      return asks_for(plan, drill) ? words.say("how_to_use.silent_run_means") : "";
  }
  return {};
}

// The drills of this book, in the order of the stages; a fork is one of the cue starts.
std::vector<Term> drill_terms(const Plan& plan, const Words& words) {
  const Totals totals = totals_of(plan);
  const bool forks = std::any_of(plan.pieces.begin(), plan.pieces.end(),
                                 [](const auto& piece) { return !piece.forks.empty(); });
  std::vector<Term> terms;
  for (const DrillFacts& facts : every_drill()) {
    const std::string meaning = meaning_of(plan, words, totals, facts.drill);
    if (meaning.empty()) continue;
    terms.push_back({words.say(fmt::format("how_to_use.{}", facts.word)), meaning});
    if (facts.drill == Drill::cue_starts && forks)
      terms.push_back({words.say("how_to_use.fork"), words.say("how_to_use.fork_means")});
  }
  return terms;
}

}  // namespace

void draw_how_to_use(Book& book) {
  const Words& words = book.words();
  book.open_sheet(SheetKind::how_to_use, words.say("how_to_use.title"));
  Prose prose(book);
  const double width = prose.rest().width;
  const double label_width = std::min(36.0, width * 0.27);

  if (is_later_edition(book.plan())) prose.paragraph(words.say("how_to_use.later"));
  const HowToSteps steps = steps_of(book.plan());
  prose.heading(words.say(steps.heading));
  int number = 0;
  for (const std::string& step : words.list(steps.list))
    prose.term(std::to_string(++number), step, 8);
  // Before anything that may move to a second page on smaller paper.
  const bool speaks =
      may_ask_for(book.plan(), Drill::spoken_part) || may_ask_for(book.plan(), Drill::write_out);
  prose.framed(
      cautions(book.plan(), words, speaks ? "how_to_use.cautions" : "how_to_use.cautions_kept"));

  prose.heading(words.say("how_to_use.terms_heading"));
  for (const Term& term : drill_terms(book.plan(), words))
    prose.term(term.label, term.text, label_width);

  prose.heading(words.say("how_to_use.trouble_heading"));
  if (has_changes_of_tempo(book.plan()))
    prose.term(words.say("how_to_use.tempo"), words.say("how_to_use.tempo_means"), label_width);
  if (has_repeats(book.plan()))
    prose.term(words.say("how_to_use.repeats"), words.say("how_to_use.repeats_mean"), label_width);
  prose.term(words.say("how_to_use.ticks"),
             words.say("how_to_use.ticks_mean",
                       {{"tries", numbers::kTriesOfARepetition * book.plan().method.repetitions}}),
             label_width);
  prose.term(words.say("how_to_use.minutes"), words.say("how_to_use.minutes_mean"), label_width);
  prose.term(words.say("how_to_use.slip"), words.say("how_to_use.slip_means"), label_width);
  prose.term(words.say("how_to_use.missed"),
             words.say(missed_words(book.plan()), {{"hint", words.say("panels.if_missed")}}),
             label_width);
}

}  // namespace cahier
