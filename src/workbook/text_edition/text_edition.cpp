#include "workbook/text_edition/text_edition.h"

#include <map>
#include <set>
#include <vector>

#include "plan/first_uses.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "workbook/parts/teachers_note.h"
#include "workbook/parts/week_words.h"
#include "workbook/text_edition/forks_in_words.h"
#include "workbook/text_edition/plain_forms.h"
#include "workbook/text_edition/starts_in_words.h"
#include "workbook/text_edition/task_in_words.h"

namespace cahier {
namespace {

constexpr int kTimesExplained = 2;  // a drill, as on the panels

class TextEdition {
 public:
  TextEdition(const Plan& plan, const Words& words, int most_weeks, const PrintedNames& names)
      : plan_(plan),
        words_(words),
        most_weeks_(most_weeks),
        names_(names),
        first_uses_(first_uses(plan)) {}

  std::string write() {
    write_head();
    write_left_out();
    write_how();
    const std::vector<PlanWeek> weeks = printed_weeks(plan_, most_weeks_);
    for (const PlanWeek& week : weeks) write_week(week);
    if (!weeks.empty() && weeks.back().last() == plan_.days.back().date) write_the_day();
    for (const PlannedPiece& piece : plan_.pieces) write_starts(piece);
    return std::move(text_);
  }

 private:
  void line(const std::string& text) { text_ += in_plain_signs(words_, text) + "\n"; }
  void gap() { text_ += "\n"; }

  void write_head() {
    std::vector<std::string> titles;
    for (const PlannedPiece& piece : plan_.pieces) {
      const std::string& composer = piece.piece.composer;
      titles.push_back(composer.empty()
                           ? piece.piece.title
                           : words_.say("plan.by_composer",
                                        {{"title", piece.piece.title}, {"composer", composer}}));
    }
    text_ += kTextEditionMark;
    line(plan_.programme.empty() ? titles.front() : plan_.programme);
    if (!plan_.programme.empty())
      for (const std::string& title : titles) line(title);
    line(words_.say("cover.kind"));
    if (!names_.student.empty())
      line(words_.say("in_words.for_student", {{"student", names_.student}}));
    if (!names_.note.empty()) line(teachers_note(words_, names_));
    line(words_.say(plan_.upkeep ? "in_words.keep_until" : "in_words.to_be_played",
                    {{"date", full_date(words_, plan_.by)}}));
    line(words_.say("in_words.practice", {{"from", full_date(words_, plan_.from)},
                                          {"to", full_date(words_, plan_.days.back().date)}}));
  }

  // Nothing is left out without a word.
  void write_left_out() {
    if (plan_.fits) return;
    gap();
    line(words_.say("cover.does_not_fit_here"));
    for (const LeftOut& kind : left_out_of(plan_)) line(say_left_out(words_, plan_, kind));
  }

  void write_how() {
    gap();
    line(words_.say("how_to_use.title"));
    for (const std::string& each : words_.list("in_words.how")) line(each);
    for (const std::string& each : words_.list("how_to_use.cautions")) line(each);
  }

  void write_week(const PlanWeek& week) {
    gap();
    line(words_.say("in_words.heading", {{"title", week_title(words_, week)},
                                         {"dates", date_span(words_, week.first(), week.last())}}));
    line(week_goal(words_, plan_, week));
    for (const Day& day : week.days) write_day(day);
  }

  void write_day(const Day& day) {
    gap();
    const std::string date = weekday_day_month(words_, day.date);
    if (day.tasks.empty()) {
      line(words_.say("in_words.day", {{"date", date}, {"says", says_of_free(day)}}));
      return;
    }
    line(words_.say("in_words.day",
                    {{"date", date},
                     {"says", words_.say("in_words.minutes_of_day",
                                         {{"minutes", minutes_text(day.minutes())},
                                          {"allowance", minutes_text(day.allowance)}})}}));
    if (day.lesson) line(words_.say("panels.lesson_too"));
    if (const std::string note = say_note(words_, day.note); !note.empty()) line(note);
    bool learns = false;
    for (std::size_t at = 0; at < day.tasks.size(); ++at) {
      const Task& task = day.tasks[at];
      if (at > 0 && task.block != day.tasks[at - 1].block)
        line(words_.say("panels.break_now",
                        {{"minutes", minutes_text(plan_.method.break_minutes)}}));
      if (plan_.pieces.size() > 1 && (at == 0 || task.piece != day.tasks[at - 1].piece))
        line(plan_.pieces[task.piece].piece.title);
      const SaidOfTask said{met_[task.drill]++ < kTimesExplained, first_uses_.contains(&task)};
      for (const std::string& each :
           task_in_words(words_, plan_, task, static_cast<int>(at) + 1, said))
        line(each);
      learns = learns || task.drill == Drill::learn;
    }
    line(words_.say(learns ? "panels.stop_new" : "panels.stop") + " " +
         words_.say("in_words.write_down"));
  }

  std::string says_of_free(const Day& day) const {
    const std::string note = say_note(words_, day.note);
    if (!note.empty()) return note;
    if (day.allowance > 0)
      return words_.say("panels.free") + (day.lesson ? " " + words_.say("panels.lesson_too") : "");
    return words_.say(day.lesson ? "panels.off_lesson" : "panels.off");
  }

  void write_the_day() {
    if (plan_.upkeep) return;
    gap();
    line(words_.say("in_words.day", {{"date", weekday_day_month(words_, plan_.by)},
                                     {"says", words_.say("panels.the_day")}}));
    line(words_.say("panels.the_day_forward"));
  }

  void write_starts(const PlannedPiece& piece) {
    gap();
    const std::string title = words_.say("cue_starts.title");
    line(plan_.pieces.size() == 1
             ? title
             : words_.say("in_words.heading", {{"title", title}, {"dates", piece.piece.title}}));
    for (const std::string& each : starts_in_words(words_, piece)) line(each);
    if (const std::string rejoin = rejoining_in_words(words_, piece); !rejoin.empty()) {
      gap();
      line(rejoin);
    }
    write_forks(piece);
  }

  void write_forks(const PlannedPiece& piece) {
    const std::vector<std::string> forks = forks_in_words(words_, piece);
    if (forks.empty()) return;
    gap();
    line(words_.say("look_alikes.title"));
    line(words_.say("in_words.forks"));
    for (const std::string& each : forks) line(each);
  }

  const Plan& plan_;
  const Words& words_;
  int most_weeks_;
  const PrintedNames& names_;
  std::set<const Task*> first_uses_;
  std::map<Drill, int> met_;
  std::string text_;
};

}  // namespace

std::string text_edition(const Plan& plan, const Words& words, int most_weeks,
                         const PrintedNames& names) {
  return TextEdition(plan, words, most_weeks, names).write();
}

}  // namespace cahier
