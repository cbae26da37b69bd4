// What keeps very large work within seconds: chains of returns followed once, and a search that
// ends.
#include "plan/schedule/effort.h"

#include "catch.h"
#include "plan/search/planner.h"
#include "plan/search/remedies.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// Sections of two bars, each but the first the return of the one before.
Piece chain_of(int sections) {
  std::string yaml = "title: Chain\nbars: " + std::to_string(2 * sections) +
                     "\nsections:\n  - {name: S0, bars: 1-2}\n";
  for (int at = 1; at < sections; ++at) {
    const int first = 2 * at + 1;
    yaml += "  - {name: S" + std::to_string(at) + ", bars: " + std::to_string(first) + "-" +
            std::to_string(first + 1) + ", same as: " + std::to_string(first - 2) + "-" +
            std::to_string(first - 1) + "}\n";
  }
  return sample::piece(yaml);
}

Terms eleven_weeks(const Piece& piece) {
  return settle(sample::date("2027-01-04"), sample::date("2027-03-22"), piece.practice,
                sample::steady());
}

}  // namespace

TEST_CASE("a chain of returns is learned where it begins, whether followed bar by bar or at once") {
  const Piece chain = chain_of(12);
  const std::vector<int> learned = chain.learned_bars();
  REQUIRE(learned.size() == 25);
  for (int bar = 0; bar <= chain.bars; ++bar) CHECK(learned[bar] == chain.learned_bar(bar));
  CHECK(learned[23] == 1);
  CHECK(learned[24] == 2);
}

TEST_CASE("a search that has used up its effort finds nothing, and says that it ended") {
  const std::vector<Piece> pieces = {sample::piece("title: A\nbars: 24\n")};
  const Terms terms = eleven_weeks(pieces[0]);
  Effort enough;
  CHECK(plan_that_fits(pieces, terms, enough));
  CHECK_FALSE(enough.used_up());
  // Chunks times days of one layout, about.
  CHECK(enough.spent() >= 6 * 77);
  Effort none(0);
  CHECK(none.used_up());
  CHECK_FALSE(plan_that_fits(pieces, terms, none));
}

TEST_CASE("without effort the most that fits is still a plan that says what is missing") {
  const std::vector<Piece> pieces = {sample::piece("title: A\nbars: 24\n")};
  Effort none(0);
  const Plan plan = make_plan(pieces, eleven_weeks(pieces[0]), none);
  CHECK_FALSE(plan.fits);
  CHECK_FALSE(plan.unplaced.empty());
  CHECK(sample::faults_of(plan) == "");
}

TEST_CASE("remedies end with the effort") {
  const std::vector<Piece> pieces = {sample::piece("title: A\nbars: 16\nlevel: 4\n")};
  const Terms terms =
      settle(sample::date("2027-03-01"), sample::date("2027-03-06"), {}, sample::steady());
  Effort enough;
  CHECK(remedies(pieces, terms, std::nullopt, enough).size() >= 3);
  Effort none(0);
  CHECK(remedies(pieces, terms, std::nullopt, none).empty());
}

}  // namespace cahier
