// Small cases for exact.sh, by number.
//   exact_case piece N                         the piece file
//   exact_case options N HALVES                the options of `cahier plan`
//   exact_case about N                         in words
//   exact_case cuts METHOD N                   in how many ways it can be cut
//   exact_case data METHOD N HALVES CUT        the data of rules.mzn, for one way of cutting
//   exact_case given METHOD N HALVES [BREAK]   the same for the plan on standard input, in JSON;
//   with
//                                              BREAK it is made to break the rule of that number
//   exact_case compare METHOD N HALVES         compares minutes and chunks of the plan on standard
//                                              input with what is worked out here
//   exact_case judge METHOD N CUT ANSWER       the breaches in the plan that the solver found, by
//   the
//                                              judge of plans; the program's is on standard input
// METHOD is the method file. HALVES are half minutes a day.
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <stdexcept>

#include "given_plan.h"
#include "model_data.h"
#include "witness.h"

namespace {

using namespace exact;

int whole(const std::string& text) {
  char* end = nullptr;
  const long value = std::strtol(text.c_str(), &end, 10);
  if (text.empty() || *end != '\0' || value < 0) throw std::runtime_error("no number: " + text);
  return static_cast<int>(value);
}

int run(const std::vector<std::string>& words) {
  const std::string& what = words.at(0);
  if (what == "piece") return std::cout << piece_file(small_work(whole(words.at(1)))), 0;
  if (what == "options")
    return std::cout << options(small_work(whole(words.at(1))), whole(words.at(2))) << "\n", 0;
  const bool about = what == "about";
  const Numbers method = about ? Numbers() : read_numbers(words.at(1));
  const SmallWork work = small_work(whole(words.at(about ? 1 : 2)));
  if (about) return std::cout << in_words(work) << "\n", 0;
  const TaskMinutes minutes(work, method);
  const auto ways = ways_to_cut(work, static_cast<int>(minutes.number("chunk least")),
                                static_cast<int>(minutes.number("chunk most")));
  if (what == "cuts") return std::cout << ways.size() << "\n", 0;
  if (what == "judge") {
    std::ifstream answer(words.at(4));
    const auto& way = ways.at(static_cast<std::size_t>(whole(words.at(3))));
    const std::vector<std::string> breaches =
        breaches_of_answer(answer, judge::read_plan(std::cin), work, cut(work, way), minutes);
    for (const std::string& breach : breaches) std::cout << breach << "\n";
    return breaches.empty() ? 0 : 1;
  }
  const int halves = whole(words.at(3));
  if (what == "data") {
    const std::size_t way = static_cast<std::size_t>(whole(words.at(4)));
    write_data(std::cout, work, cut(work, ways.at(way)), minutes, halves);
    write_free(std::cout);
    return 0;
  }
  const judge::Plan plan = judge::read_plan(std::cin);
  if (what == "compare") return compare(plan, work, minutes, halves, std::cerr) ? 0 : 1;
  if (what != "given") throw std::runtime_error("no such question: " + what);
  const CutWork as_planned = cut(work, chunks_of(plan));
  GivenPlan given(plan, work, as_planned);
  if (words.size() > 4) given.spoil(words.at(4));
  write_data(std::cout, work, as_planned, minutes, given.room(halves));
  given.write(std::cout);
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  try {
    return run({arguments + 1, arguments + count});
  } catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 2;
  }
}
