#include "report/plan_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "plan/left_out.h"
#include "report/fork_words.h"
#include "report/plan_summary.h"
#include "report/plan_words.h"
#include "report/spacing_text.h"
#include "report/teacher_text.h"
#include "text/phrasing.h"
#include "text/utf8.h"
#include "text/wrap.h"

namespace cahier {
namespace {

std::string to_left(const std::string& text, std::size_t width) {
  return text + std::string(width - std::min(width, count_characters(text)), ' ');
}

std::string to_right(const std::string& text, std::size_t width) {
  return std::string(width - std::min(width, count_characters(text)), ' ') + text;
}

std::size_t widest(const std::vector<std::string>& texts) {
  std::size_t width = 0;
  for (const auto& text : texts) width = std::max(width, count_characters(text));
  return width;
}

class PlanText {
 public:
  PlanText(const Plan& plan, const Words& words, bool why, bool spacing)
      : plan_(plan),
        words_(words),
        why_(why),
        spacing_(spacing),
        weekday_width_(widest(words.list("weekdays.short"))),
        month_width_(widest(words.list("months.short"))) {
    for (const Day& day : plan.days) {
      minutes_width_ = std::max(minutes_width_, count_characters(minutes_of(day)));
    }
  }

  std::string compose() const {
    std::string text = plan_summary(plan_, words_);
    for (std::size_t day = 0; day < plan_.days.size(); ++day) {
      if (day == 0 || weekday_index(plan_.days[day].date) == 0)
        text.append("\n").append(week_head(day));
      text += day_lines(plan_.days[day]);
    }
    if (spacing_) text += spacing_by_chunk(plan_, words_);
    if (!plan_.fits) text.append("\n").append(misfit());
    if (!plan_.sensitivity.empty()) text.append("\n").append(if_learning_takes_longer());
    return text + teacher_text(plan_, words_);
  }

  std::string misfit() const {
    double minutes = 0;
    for (const Unplaced& work : plan_.unplaced) minutes += work.minutes;
    std::string text = wrap("",
                            {words_.say("plan.does_not_fit", {{"date", full_date(words_, plan_.by)},
                                                              {"minutes", minutes_text(minutes)}})},
                            "", 0);
    text.append("\n").append(words_.say("plan.not_placed")).append("\n");
    for (const LeftOut& kind : left_out_of(plan_))
      text += wrap("  ", {say_left_out(words_, plan_, kind)}, "", 4);
    if (plan_.remedies.empty())
      return text + "\n" + wrap("", {words_.say("plan.no_remedy")}, "", 0);
    text.append("\n").append(words_.say("plan.remedies")).append("\n");
    for (const Remedy& remedy : plan_.remedies) text += remedy.say + "\n";
    return text;
  }

 private:
  std::string minutes_of(const Day& day) const {
    if (day.allowance <= 0) return words_.say("plan.off");
    if (day.tasks.empty()) return {};
    return words_.say("plan.minutes", {{"minutes", minutes_text(day.minutes())}});
  }

  std::string week_head(std::size_t first) const {
    const Date begin = plan_.days[first].date;
    const Date sunday = begin + days{6 - weekday_index(begin)};
    return wrap("",
                {words_.say("plan.week", {{"number", iso_week(begin).week}}),
                 date_span(words_, begin, std::min(sunday, plan_.days.back().date))},
                kDot, 2);
  }

  std::string day_lead(const Day& day) const {
    return fmt::format("{} {} {}  {}  ", to_left(weekday_short(words_, day.date), weekday_width_),
                       to_right(std::to_string(day_of_month(day.date)), 2),
                       to_left(month_short(words_, day.date), month_width_),
                       to_right(minutes_of(day), minutes_width_));
  }

  std::string day_lines(const Day& day) const {
    const std::string lead = day_lead(day);
    const int hang = static_cast<int>(count_characters(lead));
    std::string text = why_ ? tasks_with_reasons(day, lead, hang) : tasks_in_a_row(day, lead, hang);
    const std::string note = say_note(words_, day.note);
    if (!note.empty() && !day.tasks.empty()) text += wrap(std::string(hang, ' '), {note}, "", hang);
    return text;
  }

  std::string tasks_in_a_row(const Day& day, const std::string& lead, int hang) const {
    std::vector<std::string> items;
    for (const Task& task : day.tasks)
      items.push_back(piece_mark(plan_, task.piece) + say_task(words_, task));
    if (items.empty() && day.allowance > 0) {
      const std::string note = say_note(words_, day.note);
      items.push_back(note.empty() ? words_.say("plan.nothing") : note);
    }
    return wrap(lead, items, kDot, hang);
  }

  std::string tasks_with_reasons(const Day& day, const std::string& lead, int hang) const {
    if (day.tasks.empty()) return tasks_in_a_row(day, lead, hang);
    std::string text;
    for (const Task& task : day.tasks) {
      const std::string minutes =
          words_.say("plan.minutes", {{"minutes", minutes_text(task.minutes)}});
      text += wrap(text.empty() ? lead : std::string(hang, ' '),
                   {piece_mark(plan_, task.piece) + say_task(words_, task), minutes}, kDot, hang);
      const std::string reason = say_reason(words_, task);
      if (!reason.empty()) text += wrap(std::string(hang + 2, ' '), {reason}, "", hang + 2);
      for (const std::string& told : parting_words(words_, plan_.pieces[task.piece], task))
        text += wrap(std::string(hang + 2, ' '), {told}, "", hang + 2);
    }
    return text;
  }

  std::string if_learning_takes_longer() const {
    std::string text;
    for (const Sensitivity& one : plan_.sensitivity)
      text += wrap("", {say_sensitivity(words_, one)}, "", 2);
    return text;
  }

  const Plan& plan_;
  const Words& words_;
  bool why_;
  bool spacing_;
  std::size_t weekday_width_;
  std::size_t month_width_;
  std::size_t minutes_width_ = 0;
};

}  // namespace

std::string plan_text(const Plan& plan, const Words& words, bool why, bool spacing) {
  return PlanText(plan, words, why, spacing).compose();
}

std::string misfit_text(const Plan& plan, const Words& words) {
  return PlanText(plan, words, false, false).misfit();
}

}  // namespace cahier
