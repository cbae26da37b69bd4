// Whatever the piece, the calendar and the player, every edition keeps the rules and the log that
// was typed is read back as what was done.

#include "catch.h"
#include "long_checks.h"
#include "random_work.h"
#include "sample_plan.h"
#include "typed_log.h"

namespace cahier {
namespace {

constexpr int kShards = 3;  // test cases, that they may run side by side
const int kSeasons = sample::in_long_checks() ? 16 : 6;  // in each shard
constexpr int kMostBars = 40;

struct RandomSeason {
  Piece piece;
  Terms terms;
  sample::PlayerTruth truth;
};

RandomSeason random_season(unsigned seed) {
  sample::RandomWork random(seed);
  RandomSeason made;
  made.piece = random.piece(kMostBars);
  const Date from = sample::date("2027-01-04");
  const Wishes wishes = random.wishes(from);
  made.terms = settle(from, from + days{random.number(21, 70)}, wishes, sample::steady());
  made.truth.pace.fill(random.number(8, 16) * .1);
  made.truth.miss_a_day = random.one_in(2) ? 0 : .15;
  const int weak = random.number(1, made.piece.bars);
  made.truth.weak = {{weak, std::min(weak + 2, made.piece.bars)}};
  return made;
}

}  // namespace

TEMPLATE_TEST_CASE_SIG("every edition of random seasons passes the checker", "",
                       ((int shard), shard), 0, 1, 2) {
  int editions_that_fit = 0;
  for (int number = 0; number < kSeasons; ++number) {
    const unsigned seed = static_cast<unsigned>(number * kShards + shard);
    const RandomSeason random = random_season(seed);
    sample::SimulatedPlayer player(random.piece, sample::steady(), random.truth, seed);
    const auto editions = sample::practise_season(
        random.piece, random.terms, player, [&](const auto& before, const Terms& now) {
          INFO("seed " << seed << ", " << iso(now.from));
          const Record read = sample::read_back(before, random.piece, now);
          REQUIRE(sample::told(read) == sample::told(sample::record_of_editions(before)));
          return read;
        });
    for (const sample::PractisedEdition& edition : editions) {
      INFO("seed " << seed << ", " << iso(edition.plan.from));
      REQUIRE(sample::faults_of(edition.plan) == "");
      editions_that_fit += edition.plan.fits && edition.terms.record.edition > 1 ? 1 : 0;
    }
  }
  // Of five or six editions after the first, those whose date is not too tight from the beginning,
  // or after days missed.
  CHECK(editions_that_fit >= 2 * kSeasons);
}

}  // namespace cahier
