#include "tiny_work.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace cahier::brute {
namespace {

// Takes one number apart into the digits of many choices; the first choice turns fastest.
class Choices {
 public:
  explicit Choices(long number) : left_(number) {}

  int among(int count) {
    const int digit = static_cast<int>(left_ % count);
    left_ /= count;
    return digit;
  }

 private:
  long left_;
};

constexpr std::array<std::string_view, 5> kForms = {"one section", "two sections", "return",
                                                    "look-alikes", "return and look-alikes"};
constexpr std::array<std::string_view, 4> kLevels = {"level 2", "level 4", "levels 2 4",
                                                     "levels 5 2 3"};
constexpr std::array<std::string_view, 3> kTemper = {"temper yes", "temper no", "temper weak"};
constexpr std::array<std::string_view, 3> kOff = {"every day", "every second day", "weekend off"};
constexpr int kFewestDays = 3;
constexpr int kMostDays = 10;

int level_of(int levels, int chunk) {
  constexpr std::array<int, 3> kThree = {5, 2, 3};
  switch (levels) {
    case 0:
      return 2;
    case 1:
      return 4;
    case 2:
      return chunk % 2 == 0 ? 2 : 4;
    default:
      return kThree[chunk % 3];
  }
}

// Everything but the form of the piece.
void add_wishes(Choices& choices, TinyWork& work, const Method& method) {
  const int count = kFewestDays + choices.among(kMostDays - kFewestDays + 1);
  const int off = choices.among(static_cast<int>(kOff.size()));
  const int temper = choices.among(static_cast<int>(kTemper.size()));
  const bool violin = choices.among(2) == 1;
  const bool slow = choices.among(2) == 1;
  const bool thursday = choices.among(2) == 1;
  const bool new_to_performing = choices.among(4) == 3;
  if (violin) work.piece.instrument = *find_instrument("violin");
  work.piece.tempo = Tempo{slow ? 56.0 : 120.0, Beat::quarter};
  Wishes wishes;
  wishes.temper = static_cast<Temper>(std::array{Temper::yes, Temper::no, Temper::weak}[temper]);
  wishes.new_to_performing = new_to_performing;
  const Date from = parse_date(thursday ? "2027-01-07" : "2027-01-04").value();
  DaysOff days_off;
  if (off == 1)
    for (int day = 1; day < kMostDays; day += 2)
      days_off.dates.push_back({from + days{day}, from + days{day}});
  if (off == 2) days_off.weekdays[5] = days_off.weekdays[6] = true;
  wishes.days_off = days_off;
  work.terms = settle(from, from + days{count}, wishes, method);
  work.name +=
      fmt::format(", {}, tempo {}, {}, {} days from {}, {}{}", violin ? "violin" : "piano",
                  slow ? 56 : 120, kTemper[temper], count, thursday ? "thursday" : "monday",
                  kOff[off], new_to_performing ? ", new to performing" : "");
}

constexpr long kWishes = (kMostDays - kFewestDays + 1) * 3L * 3 * 2 * 2 * 2 * 4;

// A section of the given phrases, from a bar on.
Section section_of(std::string name, int first, const std::vector<int>& sizes) {
  Section section;
  section.name = std::move(name);
  section.bars = {first, first - 1};
  for (const int size : sizes) {
    section.phrases.push_back({section.bars.last + 1, section.bars.last + size});
    section.bars.last += size;
  }
  return section;
}

void add_return(Piece& piece) {
  Section again;
  again.name = "again";
  again.same_as = piece.sections.front().bars;
  again.bars = {piece.bars + 1, piece.bars + again.same_as->size()};
  piece.bars = again.bars.last;
  piece.sections.push_back(again);
}

// The first two bars and two later ones, parting on the second.
void add_look_alikes(Piece& piece, int later) {
  piece.look_alikes.push_back({{{1, 2}, {later, later + 1}}, {2, later + 1}});
}

}  // namespace

long phrased_count() { return kWishes * 6 * 3 * 5 * 4; }

TinyWork phrased(long number, const Method& method) {
  Choices choices(number);
  const int chunks = 1 + choices.among(6);
  const int shape = choices.among(3);
  const int form = choices.among(static_cast<int>(kForms.size()));
  const int levels = choices.among(static_cast<int>(kLevels.size()));
  std::vector<int> sizes;
  for (int chunk = 0; chunk < chunks; ++chunk)
    sizes.push_back(shape == 0 ? 2 : shape == 1 ? 3 : 2 + chunk % 2);

  TinyWork work;
  Piece& piece = work.piece;
  piece.title = "Tiny";
  const bool split = form != 0 && chunks > 1;
  const int first_chunks = split ? (chunks + 1) / 2 : chunks;
  piece.sections.push_back(
      section_of("A", 1, std::vector<int>(sizes.begin(), sizes.begin() + first_chunks)));
  if (split)
    piece.sections.push_back(
        section_of("B", piece.sections[0].bars.last + 1,
                   std::vector<int>(sizes.begin() + first_chunks, sizes.end())));
  piece.bars = piece.sections.back().bars.last;
  int bar = 1;
  for (int chunk = 0; chunk < chunks; ++chunk) {
    piece.hard.push_back({{bar, bar + sizes[chunk] - 1}, level_of(levels, chunk)});
    bar += sizes[chunk];
  }
  if ((form == 3 || form == 4) && split) add_look_alikes(piece, piece.sections[1].bars.first);
  if (form == 2 || form == 4) add_return(piece);
  std::string size_words;
  for (const int size : sizes) size_words += fmt::format("{}", size);
  work.name =
      fmt::format("p{}: chunks {}, {}, {}", number, size_words, kForms[form], kLevels[levels]);
  add_wishes(choices, work, method);
  return work;
}

long unphrased_count() { return kWishes * 9 * 4 * 3; }

TinyWork unphrased(long number, const Method& method) {
  Choices choices(number);
  const int bars = 2 + choices.among(9);
  const int form = choices.among(4);  // none named, two sections, return, look-alikes
  const int levels = choices.among(3);
  TinyWork work;
  Piece& piece = work.piece;
  piece.title = "Tiny";
  piece.bars = bars;
  piece.level = levels == 1 ? 4 : 2;
  if (levels == 2) piece.hard.push_back({{1, std::min(3, bars)}, 5});
  const bool split = form != 0 && bars >= 4;
  if (form != 0) piece.sections.push_back({"A", {1, split ? bars / 2 : bars}, {}, {}, {}});
  if (split) piece.sections.push_back({"B", {bars / 2 + 1, bars}, {}, {}, {}});
  if (form == 2) add_return(piece);
  if (form == 3 && split) add_look_alikes(piece, bars / 2 + 1);
  constexpr std::array<std::string_view, 3> kUnphrasedLevels = {"level 2", "level 4", "levels 5 2"};
  work.name = fmt::format("u{}: {} bars, {}, {}", number, bars,
                          form == 0 ? "no section named" : kForms[form], kUnphrasedLevels[levels]);
  add_wishes(choices, work, method);
  return work;
}

}  // namespace cahier::brute
