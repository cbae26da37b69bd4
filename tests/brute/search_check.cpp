// The search against every list of tasks there is, checked one by one: one and two chunks, up to
// six days, and a method that asks for little, so that all lists can be tried.
//   search_check                  one work in many; with CAHIER_LONG in the environment, more
// Fails when the two disagree, just below the least allowance that the search names, or at it.
#include <fmt/format.h>

#include <cstdlib>

#include "chunkings.h"
#include "every_plan.h"
#include "oracle.h"
#include "plan/chunks/analyse.h"
#include "practice/read_method.h"
#include "text/templates.h"
#include "tiny_work.h"

namespace {

using namespace cahier;

constexpr long kEveryQuick = 4001;  // primes, so that every choice comes round with every other
constexpr long kEveryLong = 3001;
constexpr long kMostChecked = 6000;
constexpr long kMostCheckedOnce = 40000;  // for the one work that is always asked
constexpr int kLittle = 10;  // half minutes, for works that no allowance makes possible
// A work whose least allowance needs the second chunk learned first.
constexpr long kOrderMatters = 605359;
constexpr long kOrderMattersTurn = 0;
constexpr int kMostChunks = 2;
constexpr long kMostDays = 6;

// Numbers small enough for every list to be tried; which rule binds turns with the work.
Method easy_method(long turn) {
  Diagnostics diagnostics;
  Method method = read_method(Templates().read("methods", "steady"), "steady", diagnostics);
  const auto one_of = [&turn](int count) {
    const int digit = static_cast<int>(turn % count);
    turn /= count;
    return 1 + digit;
  };
  method.repetitions = 1;
  method.quiet_days = one_of(3);
  method.run_days = one_of(2);
  method.first_recall_days = one_of(3);
  method.runs_a_day = one_of(2);
  method.run_throughs = method.run_throughs_new = one_of(3);
  return method;
}

struct Tally {
  long possible = 0;
  long impossible = 0;
  long too_many = 0;
  long wrong = 0;
};

void compare(const brute::TinyWork& work, const Analysis& analysis, int halves, bool expected,
             long most, Tally& tally) {
  if (halves <= 0) return;
  const std::optional<bool> found =
      brute::any_plan_at_all(analysis, brute::with_halves(work.terms, halves), most);
  if (!found) {
    ++tally.too_many;
    return;
  }
  ++(*found ? tally.possible : tally.impossible);
  if (*found == expected) return;
  ++tally.wrong;
  fmt::print("{}: within {:g} minutes a plan {}, but the search says otherwise\n", work.name,
             halves / 2.0, *found ? "exists" : "is impossible");
}

// False when the work is too large for every list of tasks to be tried.
bool ask(long number, long turn, long most, Tally& tally) {
  const brute::TinyWork work = brute::phrased(number, easy_method(turn));
  if ((work.terms.by - work.terms.from).count() > kMostDays) return false;
  const Piece cut = brute::chunkings(work.piece, work.terms.method).front();
  const Analysis analysis = analyse(cut, work.terms.method, brute::kNeverCut);
  if (analysis.planned.chunks.size() > kMostChunks) return false;
  const std::optional<int> least = brute::Oracle(work.piece, work.terms).least();
  compare(work, analysis, least ? *least - 1 : kLittle, false, most, tally);
  if (least) compare(work, analysis, *least, true, most, tally);
  return true;
}

}  // namespace

int main() {
  Tally tally;
  const long every = std::getenv("CAHIER_LONG") != nullptr ? kEveryLong : kEveryQuick;
  ask(kOrderMatters, kOrderMattersTurn, kMostCheckedOnce, tally);
  long turn = 0;
  for (long number = 0; number < brute::phrased_count(); number += every)
    if (ask(number, turn, kMostChecked, tally)) ++turn;
  fmt::print("{} times possible, {} times impossible, {} times left, {} wrong\n", tally.possible,
             tally.impossible, tally.too_many, tally.wrong);
  return tally.wrong == 0 && tally.possible > 0 && tally.impossible > 0 ? 0 : 1;
}
