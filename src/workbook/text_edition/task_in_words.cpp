#include "workbook/text_edition/task_in_words.h"

#include <algorithm>
#include <set>

#include "plan/spoken_steps.h"
#include "text/phrasing.h"
#include "workbook/parts/task_words.h"
#include "workbook/text_edition/plain_forms.h"

namespace cahier {
namespace {

class TaskInWords {
 public:
  TaskInWords(const Words& words, const Plan& plan, const Task& task)
      : words_(words), task_(task), piece_(plan.pieces[task.piece]) {}

  std::string head(int number) const {
    std::string what = drill_title(words_, task_);
    if (!covers(task_.drill, Covers::starts))
      what = words_.say("in_words.task_of_bars",
                        {{"title", what}, {"bars", plain_bars(words_, task_.bars)}});
    return words_.say("in_words.task", {{"number", number}, {"what", what}, {"code", task_.id}});
  }

  // What is played and said, and how often; of cue starts where each begins.
  std::string steps() const {
    if (covers(task_.drill, Covers::starts)) return starts();
    if (task_.steps.size() == 1 && task_.drill != Drill::learn) return single_step();
    std::string text;
    for (const Step& step : task_.steps)
      text += (text.empty() ? "" : "; ") +
              words_.say("in_words.step",
                         {{"step", parts_of(step)}, {"times", plain_times(words_, step.times)}});
    return words_.say("in_words.steps", {{"steps", text}});
  }

  std::string tempo() const {
    if (task_.drill == Drill::run_through) return words_.say("in_words.tempo_as_on_the_day");
    if (!shows_tempo(task_) || covers(task_.drill, Covers::starts)) return {};
    std::string text = plain_tempo(words_, tempo_of(task_));
    for (const TempoFrom& from : later_tempi(task_)) text += ", " + said(from);
    return words_.say("in_words.tempo_of", {{"tempo", text}});
  }

  std::string minutes() const {
    if (task_.minutes == 1) return words_.say("in_words.about_one_minute");
    if (task_.minutes < 1) return words_.say("in_words.about_half_a_minute");
    return words_.say("in_words.about_minutes", {{"minutes", minutes_text(task_.minutes)}});
  }

  std::string in_force() const { return mark_in_force(piece_, task_); }

  std::vector<std::string> marks() const { return marks_in(words_, piece_, task_.bars); }

 private:
  std::string list(const std::vector<std::string>& parts) const {
    if (parts.size() > 1 && parts.size() == piece_.piece.parts().size())
      return words_.say(parts.size() == 2 ? "in_words.both" : "in_words.all");
    return list_text(words_, parts);
  }

  std::string parts_of(const Step& step) const {
    if (step.spoken.empty()) return list(step.parts);
    return words_.say(says_what_is_played(step) ? "in_words.play_and_say" : "in_words.play_say",
                      {{"played", list(step.parts)}, {"said", list(step.spoken)}});
  }

  std::string single_step() const {
    const Step& step = task_.steps.front();
    const std::string times = plain_times(words_, step.times);
    const bool no_parts =
        !facts_of(task_.drill).needs_instrument || piece_.piece.parts().size() < 2;
    std::string text =
        no_parts ? times
                 : words_.say("in_words.step_of_all", {{"step", parts_of(step)}, {"times", times}});
    if (task_.drill == Drill::slow_pass) text += ", " + words_.say("in_words.again_if_mended");
    return words_.say("in_words.how_often", {{"times", text}});
  }

  std::string said(const TempoFrom& from) const {
    return words_.say("in_words.tempo_from",
                      {{"bar", from.bar}, {"number", number_text(from.per_minute)}});
  }

  std::string starts() const {
    std::string text;
    std::vector<TempoFrom> later = later_tempi(task_);
    // A fork's start stands there once for each way on.
    for (const int number : std::set(task_.cues.begin(), task_.cues.end())) {
      const int bar = piece_.cues[number - 1].bar;
      const auto at = std::ranges::find(task_.from_starts, bar, &BarRange::first);
      std::string tempo = plain_tempo(words_, tempo_at(task_, bar));
      std::erase_if(later, [&](const TempoFrom& from) {
        const bool is_on_the_way = at != task_.from_starts.end() && at->contains(from.bar);
        if (is_on_the_way) tempo += ", " + said(from);
        return is_on_the_way;
      });
      text +=
          words_.say("in_words.start_at", {{"number", number}, {"bar", bar}, {"tempo", tempo}}) +
          " ";
    }
    // Beyond a jump.
    std::string jumps;
    for (const TempoFrom& from : later) jumps += (jumps.empty() ? "" : ", ") + said(from);
    if (!jumps.empty()) text += words_.say("in_words.tempo_of", {{"tempo", jumps}}) + " ";
    if (task_.throws > 0)
      text += words_.count(task_.cues.empty() ? "in_words.throws" : "in_words.more_throws",
                           task_.throws);
    while (!text.empty() && text.back() == ' ') text.pop_back();
    return text;
  }

  const Words& words_;
  const Task& task_;
  const PlannedPiece& piece_;
};

}  // namespace

std::vector<std::string> task_in_words(const Words& words, const Plan& plan, const Task& task,
                                       int number, SaidOfTask said) {
  const TaskInWords one(words, plan, task);
  std::vector<std::string> lines = {one.head(number)};
  if (said.if_unlearned) lines.push_back(words.say("panels.if_missed"));
  if (said.explained || task.fork)
    lines.push_back(in_plain_signs(words, drill_meaning(words, task)));
  if (!task.steps.empty()) lines.push_back(one.steps());
  if (const std::string tempo = one.tempo(); !tempo.empty()) lines.push_back(tempo);
  lines.push_back(one.minutes());
  if (task.reason == Reason::listener) lines.push_back(words.say("task.listener"));
  if (task.reason == Reason::recorded) lines.push_back(words.say("task.record"));
  if (task.drill == Drill::learn)
    for (const std::string& mark : one.marks()) lines.push_back(mark);
  if (const std::string mark = one.in_force(); !mark.empty())
    lines.push_back(words.say("in_words.in_force", {{"mark", mark}}));
  return lines;
}

}  // namespace cahier
