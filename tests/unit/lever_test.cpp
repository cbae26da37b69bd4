#include "plan/search/levers.h"

#include "catch.h"
#include "sample_plan.h"
#include "typed_remedy.h"

namespace cahier {

TEST_CASE("what is typed does what the lever did, at every step, and asks more at each") {
  for (const std::string practice :
       {"{minutes: 22.5}", "{minutes: {mon: 15, wed: 20, sat: 30}, temper: yes}"}) {
    const std::vector<Piece> pieces = {
        sample::piece("title: T\nbars: 32\nlevel: 4\npractice: " + practice + "\n")};
    const Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-03-20"),
                               pieces.front().practice, sample::steady());
    const std::vector<Lever> all = levers(terms, std::nullopt);
    CHECK(all.size() == 5);
    for (const Lever& lever : all)
      for (int step = 1; step <= lever.steps; ++step) {
        INFO(lever.words(step));
        Terms pulled = terms;
        lever.pull(pulled, step);
        const Terms typed = sample::typed(terms, lever.words(step));
        CHECK(pulled.from == typed.from);
        CHECK(pulled.by == typed.by);
        CHECK(pulled.minutes == typed.minutes);
        CHECK(pulled.method.repetitions == typed.method.repetitions);
        CHECK(pulled.method.chunk_most == typed.method.chunk_most);
        CHECK(pulled.method.chunk_minutes == typed.method.chunk_minutes);
        CHECK(lever.asks(step) > (step > 1 ? lever.asks(step - 1) : 0));
      }
  }
}

TEST_CASE("levers that would change nothing are not there") {
  const std::vector<Piece> pieces = {sample::piece("title: T\nbars: 32\nlevel: 4\n")};
  const Terms usual = settle(sample::date("2027-01-04"), sample::date("2027-03-20"),
                             pieces.front().practice, sample::steady());
  const auto number_without = [&](auto change, std::optional<Date> earliest_start = {}) {
    Terms terms = usual;
    change(terms);
    return levers(terms, earliest_start).size();
  };
  CHECK(number_without([](Terms&) {}) == 5);
  CHECK(number_without([](Terms&) {}, usual.from) == 4);
  CHECK(number_without([](Terms& terms) { terms.minutes.fill(240); }) == 4);
  CHECK(number_without([](Terms& terms) { terms.method.repetitions = 2; }) == 4);
  CHECK(number_without([](Terms& terms) { terms.method.chunk_most = 8; }) == 4);
  // Spoken and written work never keeps a plan from fitting.
  for (const Temper temper : {Temper::yes, Temper::no})
    CHECK(number_without([&](Terms& terms) { terms.temper = temper; }) == 5);
}

TEST_CASE(
    "no remedy asks for more than four hours, a year, two repetitions or chunks of eight bars",
    "[numbers]") {
  const Terms terms =
      settle(sample::date("2027-01-04"), sample::date("2027-03-20"), {}, sample::steady());
  const std::vector<Lever> all = levers(terms, std::nullopt);
  REQUIRE(all.size() == 5);
  CHECK(all[0].steps == 240 - 15);
  CHECK(all[1].steps == 366);
  CHECK(all[2].steps == 366);
  CHECK(all[3].steps == 5 - 2);
  CHECK(all[4].steps == 8 - 4);
}

}  // namespace cahier
