#include "trial.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "oracle.h"
#include "plan/rules/rules.h"
#include "plan/search/lower_bound.h"
#include "plan/search/planner.h"

namespace cahier::brute {
namespace {

constexpr int kAround = 4;                              // half minutes above the least
constexpr std::array kUsual = {5, 10, 15, 20, 30, 60};  // minutes
constexpr int kEnough = 480;                            // half minutes

// What a simple planner might not do.
struct Liberty {
  bool Freedom::*what;
  std::string_view words;
};
constexpr std::array<Liberty, 7> kLiberties = {{
    {&Freedom::any_order, "another order of learning"},
    {&Freedom::wide_recalls, "recalls over section boundaries"},
    {&Freedom::recalls_at_return, "recalls where a chunk comes back"},
    {&Freedom::starts_recall, "cue starts as recalls"},
    {&Freedom::starts_by_day, "a fork drill on the day of learning"},
    {&Freedom::more_runs, "more run-throughs than asked for"},
    {&Freedom::late_joins, "joins left for a later day"},
}};

std::string said(const std::vector<Violation>& found) {
  std::string text;
  for (const Violation& violation : found)
    text += fmt::format("; rule {}: {}", violation.rule, violation.what);
  return text;
}

class Questions {
 public:
  explicit Questions(const TinyWork& work) : work_(work), oracle_(work.piece, work.terms) {
    trial_.name = work.name;
  }

  Trial ask() {
    trial_.least = oracle_.least();
    if (trial_.least) prove_it_exists(*trial_.least);
    std::set<int> halves = {kEnough};
    for (const int minutes : kUsual) halves.insert(minutes * 2);
    if (trial_.least) {
      find_planned(*trial_.least);
      for (int step = -2; step <= kAround; ++step) halves.insert(*trial_.least + step);
      if (trial_.planned)
        halves.insert({*trial_.planned - 1, *trial_.planned, *trial_.planned + 1});
    }
    for (const int each : halves)
      if (each > 0) ask_within(each);
    if (trial_.least && trial_.planned != trial_.least) explain(*trial_.least);
    return std::move(trial_);
  }

 private:
  bool exists(int halves) const { return trial_.least && halves >= *trial_.least; }

  void prove_it_exists(int halves) {
    const std::optional<Plan> plan = oracle_.plan(halves);
    if (!plan) return trial_.faults.push_back("the least allowance has no plan");
    const std::vector<Violation> found = violations(*plan);
    if (!found.empty())
      trial_.faults.push_back(
          fmt::format("the plan found for {} minutes is none{}", halves / 2.0, said(found)));
  }

  std::optional<Plan> planned(int halves) const {
    return plan_that_fits({work_.piece}, with_halves(work_.terms, halves));
  }

  void find_planned(int from) {
    for (int halves = from; halves <= std::max(3 * from, from + 40); ++halves)
      if (planned(halves)) {
        trial_.planned = halves;
        return;
      }
  }

  void ask_within(int halves) {
    const std::optional<Plan> plan = planned(halves);
    trial_.asked.push_back({halves, exists(halves), plan.has_value()});
    if (exists(halves) && !could_fit({work_.piece}, with_halves(work_.terms, halves)))
      trial_.faults.push_back(
          fmt::format("the lower bound refuses {} minutes, which are enough", halves / 2.0));
    if (!plan) return;
    const std::vector<Violation> found = violations(*plan);
    if (!plan->fits || !found.empty())
      trial_.faults.push_back(
          fmt::format("the planner's plan for {} minutes is none{}", halves / 2.0, said(found)));
    if (!oracle_.plan_cut_as(plan->pieces[0].chunks, halves))
      trial_.faults.push_back(fmt::format(
          "the planner has a plan for {} minutes that the oracle calls impossible", halves / 2.0));
  }

  // Which liberties the plan cannot do without; where it can do without any one of them, which one
  // makes up for all the others.
  void explain(int halves) {
    Freedom plain;
    for (const Liberty& liberty : kLiberties) plain.*liberty.what = false;
    const bool needs_none = oracle_.plan(halves, plain).has_value();
    std::vector<std::string> enough;
    for (const Liberty& liberty : kLiberties) {
      Freedom without;
      without.*liberty.what = false;
      if (!oracle_.plan(halves, without)) trial_.hangs_on.emplace_back(liberty.words);
      Freedom alone = plain;
      alone.*liberty.what = true;
      if (!needs_none && oracle_.plan(halves, alone)) enough.emplace_back(liberty.words);
    }
    const Plan attempt = make_plan({work_.piece}, with_halves(work_.terms, halves));
    if (!oracle_.plan_cut_as(attempt.pieces[0].chunks, halves))
      trial_.hangs_on.emplace_back("other chunks");
    if (!trial_.hangs_on.empty()) return;
    std::string words = needs_none ? "nothing but its days" : "";
    for (const std::string& one : enough) words += (words.empty() ? "" : " or ") + one;
    trial_.hangs_on.push_back(words.empty() ? "several liberties at once" : words);
  }

  const TinyWork& work_;
  Oracle oracle_;
  Trial trial_;
};

}  // namespace

Trial tried(const TinyWork& work) { return Questions(work).ask(); }

}  // namespace cahier::brute
