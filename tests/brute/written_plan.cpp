#include "written_plan.h"

#include <fmt/format.h>

#include "plan/due/task_maker.h"

namespace cahier::brute {
namespace {

class Writer {
 public:
  Writer(const Facts& facts, const Terms& terms)
      : facts_(facts), make_(facts.analysis, terms.method, 0) {}

  // Run-throughs and recalls cold, then what is new, its joins and cue starts.
  void write(const Choice& choice, Day& day) {
    for (int run = 0; run < choice.runs; ++run) day.tasks.push_back(make_.run_through());
    if (choice.alone) day.note = DayNote::run_alone;
    add_ranges(choice.memory.ranges, day, [&](BarRange bars) { return make_.recall(bars); });
    for (int chunk = 0; chunk < facts_.chunks; ++chunk)
      if (choice.learn >> chunk & 1) day.tasks.push_back(make_.learn(chunk));
    add_ranges(choice.joins.ranges, day, [&](BarRange bars) { return make_.join(bars); });
    if (choice.memory.starts >= 0) {
      const Starts& starts = facts_.starts[choice.memory.starts];
      day.tasks.push_back(make_.cue_starts(starts.cues, 0));
      day.tasks.back().fork = starts.forks != 0;
    }
    name_tasks(day);
  }

 private:
  template <typename Make>
  void add_ranges(std::uint64_t ranges, Day& day, Make make) const {
    for (std::size_t at = 0; at < facts_.ranges.size(); ++at)
      if (ranges >> at & 1) day.tasks.push_back(make(facts_.ranges[at].bars));
  }

  static void name_tasks(Day& day) {
    const std::chrono::year_month_day date(day.date);
    int number = 0;
    for (Task& task : day.tasks)
      task.id = fmt::format("{:02}{:02}-{}", static_cast<unsigned>(date.month()),
                            static_cast<unsigned>(date.day()), ++number);
  }

  const Facts& facts_;
  TaskMaker make_;
};

}  // namespace

Plan written_plan(const Piece& piece, const Facts& facts, const Terms& terms,
                  const std::vector<Choice>& choices) {
  Plan plan;
  plan.from = terms.from;
  plan.by = terms.by;
  plan.method = terms.method;
  plan.temper = Temper::no;  // none is searched for
  plan.order = terms.order;
  plan.new_to_performing = terms.new_to_performing;
  plan.blocks = terms.blocks;
  plan.pieces = {facts.analysis.planned};
  plan.pieces[0].dice = weighted_dice_tables(plan.pieces[0].thrown_cues());
  plan.pieces[0].piece = piece;
  plan.days = calendar(terms);
  Writer writer(facts, terms);
  std::size_t at = 0;
  for (Day& day : plan.days)
    if (day.allowance > 0) writer.write(choices.at(at++), day);
  return plan;
}

}  // namespace cahier::brute
