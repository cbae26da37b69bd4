// The planner against every plan there is, for tiny pieces: up to 6 chunks, up to 10 days.
//   brute_force                   one work in many; with CAHIER_LONG in the environment, more
//   brute_force EVERY             one work in EVERY
//   brute_force p123 u45 …        these works, with all that was asked
// Fails when the planner misses more than one in a hundred of the plans that exist, when a plan
// that is said to fit breaks a rule, or when it has a plan that the search calls impossible.
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>

#include "practice/read_method.h"
#include "text/templates.h"
#include "trial.h"

namespace {

using namespace cahier;
using brute::Trial;

constexpr long kEveryQuick = 4001;  // primes, so that every choice comes round with every other
constexpr long kEveryLong = 997;
constexpr double kShareToFind = 0.99;

Method steady() {
  Diagnostics diagnostics;
  return read_method(Templates().read("methods", "steady"), "steady", diagnostics);
}

double share_of(long part, long whole) {
  return whole > 0 ? static_cast<double>(part) / static_cast<double>(whole) : 0;
}

struct Tally {
  long works = 0;
  long impossible = 0;  // works without any plan, however long the days
  long asked = 0;
  long exist = 0;
  long found = 0;
  long exist_at_least = 0;  // at the least allowance itself
  long found_at_least = 0;
  double worst = 1;
  std::string worst_name;
  long faults = 0;
  std::map<std::string, long> hangs_on;

  void add(const Trial& trial) {
    ++works;
    impossible += trial.least ? 0 : 1;
    for (const auto& one : trial.asked) {
      ++asked;
      exist += one.exists ? 1 : 0;
      found += one.exists && one.planned ? 1 : 0;
      if (trial.least && one.halves == *trial.least) {
        ++exist_at_least;
        found_at_least += one.planned ? 1 : 0;
      }
    }
    faults += static_cast<long>(trial.faults.size());
    for (const auto& what : trial.hangs_on) ++hangs_on[what];
    if (!trial.least) return;
    const double ratio = trial.planned ? share_of(*trial.planned, *trial.least) : 99;
    if (ratio > worst) {
      worst = ratio;
      worst_name = trial.name;
    }
  }
};

std::string minutes(const std::optional<int>& halves) {
  return halves ? fmt::format("{:g}", *halves / 2.0) : "never";
}

void say_all(const Trial& trial) {
  fmt::print("{}\n  least {} planned {}\n ", trial.name, minutes(trial.least),
             minutes(trial.planned));
  for (const auto& one : trial.asked)
    fmt::print(" {:g}:{}{}", one.halves / 2.0, one.exists ? "y" : "n", one.planned ? "y" : "n");
  fmt::print("\n");
}

void say(const Trial& trial) {
  for (const std::string& fault : trial.faults) fmt::print("FAULT {}: {}\n", trial.name, fault);
  if (!trial.least || trial.planned == trial.least) return;
  std::string kinds;
  for (const auto& what : trial.hangs_on) kinds += (kinds.empty() ? "" : ", ") + what;
  fmt::print("miss {}: {} would do, planned from {}; hangs on {}\n", trial.name,
             minutes(trial.least), minutes(trial.planned), kinds);
}

int report(const Tally& tally) {
  const double share = share_of(tally.found, tally.exist);
  fmt::print("{} works, {} of them impossible on their days; asked {} times\n", tally.works,
             tally.impossible, tally.asked);
  fmt::print("a plan exists {} times, the planner finds it {} times: {:.2f} %\n", tally.exist,
             tally.found, share * 100);
  fmt::print("at the least allowance itself: {} of {}\n", tally.found_at_least,
             tally.exist_at_least);
  fmt::print("worst allowance asked for: {:.2f} times the least{}\n", tally.worst,
             tally.worst_name.empty() ? "" : ": " + tally.worst_name);
  for (const auto& [what, count] : tally.hangs_on) fmt::print("  {:4} hang on {}\n", count, what);
  fmt::print("{} faults\n", tally.faults);
  if (share < kShareToFind)
    fmt::print("{:g} % of the plans that exist should be found\n", kShareToFind * 100);
  return tally.faults == 0 && tally.exist > 0 && share >= kShareToFind ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  const Method method = steady();
  Tally tally;
  bool by_name = false;
  long every = std::getenv("CAHIER_LONG") != nullptr ? kEveryLong : kEveryQuick;
  for (int index = 1; index < argc; ++index) {
    const std::string word = argv[index];
    if (word[0] != 'p' && word[0] != 'u') {
      every = std::stol(word);
      continue;
    }
    by_name = true;
    const long number = std::stol(word.substr(1));
    const Trial trial = brute::tried(word[0] == 'p' ? brute::phrased(number, method)
                                                    : brute::unphrased(number, method));
    say_all(trial);
    say(trial);
    tally.add(trial);
  }
  if (by_name) return report(tally);
  const auto run = [&](const brute::TinyWork& work) {
    const Trial trial = brute::tried(work);
    say(trial);
    tally.add(trial);
  };
  for (long number = 0; number < brute::phrased_count(); number += every)
    run(brute::phrased(number, method));
  for (long number = 0; number < brute::unphrased_count(); number += every)
    run(brute::unphrased(number, method));
  return report(tally);
}
