// How long cahier takes, and how much memory: from a piece file to a PDF, and making plans for
// pieces of growing length. Build it as a release; the numbers of a debug build say little.
//   cahier_bench [MOST_BARS]       10000 bars when not given
#include <fmt/format.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>

#include "piece/read_piece.h"
#include "plan/planner.h"
#include "practice/method.h"
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

}  // namespace

int main(int argc, char** argv) {
  const int most = argc > 1 ? std::atoi(argv[1]) : 10000;
  const Method method = steady();
  fmt::print("{:<44}{:>10}{:>12}{:>12}\n", "", "seconds", "growth", "peak MB");
  const double printed = seconds(3, [&] { print_a_workbook(method); });
  fmt::print("{:<44}{:>10.3f}{:>12}{:>12.1f}\n", "96 bars, from the file to the PDF", printed, "",
             peak_megabytes());
  double before = 0;
  for (int bars = 100; bars <= most; bars *= 10) {
    // A day for each bar up to the ten years that the command line allows, and minutes enough.
    WeekMinutes minutes{};
    minutes.fill(std::clamp(bars / 10.0, 30.0, 480.0));
    Wishes wishes;
    wishes.minutes = minutes;
    const Date from = *parse_date("2027-01-04");
    const Terms terms = settle(from, from + days{std::clamp(bars, 120, 3650)}, wishes, method);
    bool fits = false;
    const double taken =
        seconds(bars > 1000 ? 1 : 3, [&] { fits = make_plan({long_piece(bars)}, terms).fits; });
    fmt::print("{:<44}{:>10.3f}{:>12}{:>12.1f}\n",
               fmt::format("{} bars, the plan{}", bars, fits ? "" : ", which does not fit"), taken,
               before > 0 ? fmt::format("n^{:.2f}", std::log10(taken / before)) : "",
               peak_megabytes());
    std::fflush(stdout);
    before = taken;
  }
  return 0;
}
