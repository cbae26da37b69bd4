// What is left of a plan after a week that went slower than planned.

#include <iostream>
#include <map>

#include "catch.h"
#include "later_edition.h"
#include "long_checks.h"
#include "plan/quality/quality.h"
#include "plan/search/planner.h"
#include "roomy_work.h"

namespace cahier {
namespace {

// A plan, and the next one after a week that took longer.
struct TwoEditions {
  Plan before;
  Plan after;
  Date week_over;
};

struct SlowWeek {
  double factor = 1;   // times the planned minutes
  int slips = 1;       // bars that slip, in the week's first recalls
  bool missed = true;  // its third practice day
};

TwoEditions after_a_week(const std::vector<Piece>& pieces, Terms terms, const SlowWeek& week) {
  TwoEditions made;
  made.before = make_plan(pieces, terms);
  made.week_over = terms.from + days{7};
  int slips = week.slips;
  int practised = 0;
  for (const Day& day : made.before.days) {
    if (day.date >= made.week_over || day.tasks.empty()) continue;
    if (++practised == 3 && week.missed) continue;
    double minutes = 0;
    for (const Task& task : day.tasks) {
      Done done = sample::done(task, day.date);
      for (const int cue : task.cues)
        done.hit.push_back(made.before.pieces[task.piece].cues[cue - 1].bar);
      if (task.drill == Drill::learn) done.minutes = task.minutes * week.factor;
      if (task.drill == Drill::recall && slips > 0) {
        done.slips = {task.bars.first};
        --slips;
      }
      minutes += task.minutes * week.factor;
      terms.record.done.push_back(done);
    }
    terms.record.minutes.push_back({day.date, minutes});
  }
  terms.record.edition = 2;
  terms.from = made.week_over;
  made.after = make_plan(pieces, terms);
  return made;
}

int count(const Plan& plan, Date from, const std::vector<Drill>& drills) {
  int tasks = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (day.date >= from && std::find(drills.begin(), drills.end(), task.drill) != drills.end())
        ++tasks;
  return tasks;
}

struct Kind {
  std::string name;
  std::vector<Drill> drills;
  double kept;  // the share that is kept at least
};

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all = {{"passes", {Drill::slow_pass, Drill::counted_pass}, .8},
                                        {"runs", {Drill::run_through}, .8},
                                        {"joins", {Drill::join}, .5},
                                        {"spoken", {Drill::spoken_part, Drill::write_out}, 0}};
  return all;
}

}  // namespace

TEST_CASE("table of what a slow week leaves", "[.][table]") {
  if (const char* one = getenv("SEED")) {
    const auto made = sample::roomy_work(static_cast<unsigned>(atoi(one)), 2);
    setenv("DBG", "1", 1);
    std::cerr << "EDITION ONE\n";
    const TwoEditions two = after_a_week(made->pieces, made->terms, {1.0, atoi(one) % 3});
    unsetenv("DBG");
    return;
  }
  for (const double slack : {1.2, 1.6, 2.0}) {
    std::map<std::string, std::pair<int, int>> sums;
    std::map<std::string, int> cliffs;
    int fits = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
      const auto made = sample::roomy_work(seed, slack);
      if (!made) continue;
      for (const double factor : {1.0, 1.3, 1.6, 2.0}) {
        const TwoEditions two =
            after_a_week(made->pieces, made->terms, {factor, static_cast<int>(seed % 3)});
        if (!two.before.fits || !two.after.fits) continue;
        ++fits;
        for (const Kind& kind : kinds()) {
          const int before = count(two.before, two.week_over, kind.drills);
          const int after = count(two.after, two.week_over, kind.drills);
          auto& sum = sums[kind.name];
          sum.first += before;
          sum.second += after;
          if (after < kind.kept * before - 1e-9) {
            ++cliffs[kind.name];
            if (kind.name == "passes" || kind.name == "runs") {
              std::cout << "seed " << seed << " slack " << slack << " × " << factor << " "
                        << kind.name << " " << before << " → " << after << " gave way "
                        << two.after.gave_way.size();
              for (const Plan* plan : {&two.before, &two.after}) {
                Date last{}, run{};
                std::string runs;
                for (const Day& day : plan->days)
                  for (const Task& task : day.tasks) {
                    if (task.drill == Drill::learn) last = day.date;
                    if (task.drill == Drill::run_through) runs += " " + iso(day.date).substr(5);
                  }
                std::cout << " | learned " << iso(last) << " runs" << runs;
                for (const QualityFigure& figure : quality(*plan))
                  if (!figure.met) std::cout << " " << figure_word(figure.name);
              }
              std::cout << "\n";
            }
          }
        }
      }
    }
    std::cout << "slack " << slack << ", " << fits << " pairs that fit\n";
    for (const Kind& kind : kinds())
      std::cout << "  " << kind.name << " " << sums[kind.name].first << " → "
                << sums[kind.name].second << ", cliffs " << cliffs[kind.name] << "\n";
  }
}

}  // namespace cahier
