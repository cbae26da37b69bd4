// How long cahier takes, and how much memory: from a piece file to a PDF, and making plans for
// pieces of growing length. The exponent is that of bars times days: the logarithm of the growth in
// time, divided by the logarithm of the growth in bars times days. Build it as a release; the
// numbers of a debug build say little.
//   cahier_bench [MOST_BARS]       10000 bars when not given
#include <fmt/format.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>

#include "piece/read_piece.h"
#include "plan/search/lower_bound.h"
#include "plan/search/planner.h"
#include "practice/read_method.h"
#include "text/errors.h"
#include "text/templates.h"
#include "text/words.h"
#include "workbook/packet.h"
#include "workbook/workbook.h"

namespace {

using namespace cahier;

template <typename Work>
double seconds(int times, Work work) {
  double best = 1e9;
  for (int time = 0; time < times; ++time) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    best = std::min(best, taken.count());
  }
  return best;
}

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;  // Linux counts in KiB: getrusage(2)
}

Method steady() {
  Diagnostics diagnostics;
  return read_method(Templates().read("methods", "steady"), "steady", diagnostics);
}

// Sections of 16 bars, every fourth the return of the one before the last.
Piece long_piece(int bars) {
  Piece piece;
  piece.title = "Long";
  piece.bars = bars;
  piece.tempo = Tempo{120, Beat::quarter};
  for (int first = 1; first <= bars; first += 16) {
    Section section;
    section.name = fmt::format("S{}", first);
    section.bars = {first, std::min(first + 15, bars)};
    if (first % 64 == 49 && section.bars.size() == 16)
      section.same_as = BarRange{first - 32, first - 17};
    piece.sections.push_back(section);
  }
  return piece;
}

void print_a_workbook(const Method& method) {
  const Typefaces typefaces;
  Diagnostics diagnostics;
  const auto piece = read_piece(Source::from_file(WINTER_FANTASY), diagnostics);
  const Packet packet = read_packet(Templates().read("packets", "full"), diagnostics);
  if (!piece || diagnostics.has_errors()) throw InputError(diagnostics.all());
  const Terms terms =
      settle(*parse_date("2027-01-04"), *parse_date("2027-05-20"), piece->practice, method);
  const Plan plan = make_plan({*piece}, terms);
  const PrintedBook book = print_book(typefaces, plan, packet, english_words(), Print{});
  if (book.pages == 0) throw InputError({});
}

void print_row(const std::string& what, double taken, const std::string& exponent = "") {
  fmt::print("{:<52}{:>10.3f}{:>10}{:>10.1f}\n", what, taken, exponent, peak_megabytes());
  std::fflush(stdout);
}

Terms terms_for(int days_to_go, double minutes, const Method& method) {
  WeekMinutes week{};
  week.fill(minutes);
  Wishes wishes;
  wishes.minutes = week;
  const Date from = *parse_date("2027-01-04");
  return settle(from, from + days{days_to_go}, wishes, method);
}

// A day for each bar up to the ten years that the command line allows, and minutes enough.
void plan_growing_pieces(int most, const Method& method) {
  double before = 0;
  double work_before = 0;
  for (int bars = 100; bars <= most; bars *= 10) {
    const int days_to_go = std::clamp(bars, 120, 3650);
    const Terms terms = terms_for(days_to_go, std::clamp(bars / 10.0, 30.0, 480.0), method);
    const std::vector<Piece> pieces = {long_piece(bars)};
    bool fits = false;
    const double taken =
        seconds(bars > 1000 ? 2 : 5, [&] { fits = make_plan(pieces, terms).fits; });
    const double work = static_cast<double>(bars) * days_to_go;
    print_row(fmt::format("{} bars, {} days, the plan{}", bars, days_to_go,
                          fits ? "" : ", which does not fit"),
              taken,
              before > 0
                  ? fmt::format("{:.2f}", std::log(taken / before) / std::log(work / work_before))
                  : "");
    before = taken;
    work_before = work;
  }
}

void plan_what_does_not_fit(int bars, int days_to_go, double minutes, const Method& method) {
  const Terms terms = terms_for(days_to_go, minutes, method);
  const std::vector<Piece> pieces = {long_piece(bars)};
  bool fits = true;
  const double taken = seconds(3, [&] { fits = make_plan(pieces, terms).fits; });
  print_row(fmt::format("{} bars, {} days, {} minutes: {}", bars, days_to_go, minutes,
                        fits                       ? "fits"
                        : could_fit(pieces, terms) ? "all tried in vain"
                                                   : "beyond the bound"),
            taken);
}

// The fewest minutes a day with which everything has a place, and half a minute less.
void plan_with_hardly_enough(int bars, int days_to_go, const Method& method) {
  const std::vector<Piece> pieces = {long_piece(bars)};
  const auto fits = [&](int halves) {
    return plan_that_fits(pieces, terms_for(days_to_go, halves / 2.0, method)).has_value();
  };
  int too_few = 0;
  int enough = 2 * 480;
  while (enough - too_few > 1) {
    const int middle = (too_few + enough) / 2;
    (fits(middle) ? enough : too_few) = middle;
  }
  const Terms terms = terms_for(days_to_go, enough / 2.0, method);
  const double taken = seconds(3, [&] { make_plan(pieces, terms); });
  print_row(fmt::format("{} bars, {} days, the fewest minutes: {}", bars, days_to_go, enough / 2.0),
            taken);
  plan_what_does_not_fit(bars, days_to_go, too_few / 2.0, method);
}

}  // namespace

int main(int argc, char** argv) {
  const int most = argc > 1 ? std::atoi(argv[1]) : 10000;
  const Method method = steady();
  fmt::print("{:<52}{:>10}{:>10}{:>10}\n", "", "seconds", "exponent", "peak MB");
  print_row("96 bars, from the file to the PDF", seconds(3, [&] { print_a_workbook(method); }));
  plan_growing_pieces(most, method);
  plan_with_hardly_enough(96, 42, method);
  plan_with_hardly_enough(1000, 120, method);
  plan_what_does_not_fit(1000, 120, 5, method);
  return 0;
}
