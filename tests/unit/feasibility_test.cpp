#include "plan/feasibility.h"

#include <catch2/catch.hpp>

#include "sample_plan.h"

namespace cahier {
namespace {

struct Tight {
  std::vector<Piece> pieces = {
      sample::piece("title: Tight\nbars: 64\nmeter: 4/4\ntempo: 96\nlevel: 4\n")};
  Terms terms = settle(sample::date("2027-02-15"), sample::date("2027-03-20"),
                       pieces.front().practice, sample::steady());
};

}  // namespace

TEST_CASE("every remedy makes the plan fit, and the easiest comes first") {
  Tight tight;
  REQUIRE_FALSE(make_plan(tight.pieces, tight.terms).fits);
  const std::vector<Remedy> found = remedies(tight.pieces, tight.terms);
  REQUIRE(found.size() >= 3);
  for (std::size_t i = 1; i < found.size(); ++i) CHECK(found[i - 1].asks <= found[i].asks);
  for (const Remedy& remedy : found) {
    Terms terms = tight.terms;
    const std::string value = remedy.say.substr(remedy.say.find(' ') + 1);
    if (remedy.say.starts_with("--minutes")) terms.minutes.fill(std::stod(value));
    if (remedy.say.starts_with("--by")) terms.by = sample::date(value);
    if (remedy.say.starts_with("--from")) terms.from = sample::date(value);
    if (remedy.say.starts_with("--temper")) terms.temper = Temper::no;
    if (remedy.say.starts_with("--repetitions")) terms.method.repetitions = std::stoi(value);
    INFO(remedy.say);
    CHECK(make_plan(tight.pieces, terms).fits);
  }
}

TEST_CASE("one minute less than the remedy's minutes does not fit") {
  Tight tight;
  for (const Remedy& remedy : remedies(tight.pieces, tight.terms)) {
    if (!remedy.say.starts_with("--minutes")) continue;
    tight.terms.minutes.fill(std::stod(remedy.say.substr(10)) - 1);
    CHECK_FALSE(make_plan(tight.pieces, tight.terms).fits);
  }
}

}  // namespace cahier
