#include "small_work.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace exact {
namespace {

constexpr std::uint64_t kSeed = 20270104;
constexpr int kMostChunks = 10;
constexpr int kFewestDays = 7;
constexpr int kMostDays = 21;
constexpr int kStartBefore = 4;  // bars: the farthest that a start lies before its fork

// The splitmix64 generator: the same on every machine.
class Chance {
 public:
  explicit Chance(std::uint64_t state) : state_(state) {}

  int among(int count) { return static_cast<int>(next() % static_cast<std::uint64_t>(count)); }
  bool one_in(int count) { return among(count) == 0; }

 private:
  std::uint64_t next() {
    std::uint64_t mixed = (state_ += 0x9e3779b97f4a7c15u);
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9u;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebu;
    return mixed ^ (mixed >> 31);
  }

  std::uint64_t state_;
};

struct Instrument {
  const char* name;
  int parts;
};
constexpr std::array<Instrument, 3> kInstruments = {{{"violin", 1}, {"piano", 2}, {"organ", 3}}};

struct MeterKind {
  const char* name;
  double quarters;
  double beat_quarters;
  double unit_quarters;
};
constexpr std::array<MeterKind, 4> kMeters = {
    {{"4/4", 4, 1, 1}, {"3/4", 3, 1, 1}, {"6/8", 3, 1.5, .5}, {"2/4", 2, 1, 1}}};

constexpr std::array<int, 7> kTempi = {48, 56, 66, 84, 100, 120, 144};

// Sizes of phrases. Those of up to three bars are chunks as they stand, four may be cut in two.
std::vector<int> phrase_sizes(Chance& chance) {
  const int chunks = 3 + chance.among(kMostChunks - 2);
  std::vector<int> sizes;
  int left_to_cut = 2;
  for (int held = 0; held < chunks;) {
    const int roll = chance.among(20);
    int size = roll < 8 ? 2 : roll < 16 ? 3 : roll < 18 ? 4 : 1;
    if (size == 4 && (left_to_cut == 0 || held + 2 > chunks)) size = 3;
    if (size == 4) --left_to_cut;
    sizes.push_back(size);
    held += size == 4 ? 2 : 1;
  }
  return sizes;
}

void add_sections(Chance& chance, SmallWork& work) {
  const std::vector<int> sizes = phrase_sizes(chance);
  const int count = std::min<int>(1 + chance.among(3), static_cast<int>(sizes.size()));
  int bar = 1;
  for (std::size_t at = 0; at < sizes.size(); ++at) {
    if (at * count / sizes.size() == work.sections.size()) {
      work.sections.push_back({std::string(1, static_cast<char>('A' + work.sections.size())),
                               {bar, bar},
                               {},
                               chance.one_in(4) ? 1 + chance.among(5) : 0,
                               false});
    }
    Section& section = work.sections.back();
    section.phrases.push_back({bar, bar + sizes[at] - 1});
    if (chance.one_in(5)) work.hard.push_back({section.phrases.back(), 3 + chance.among(3)});
    bar += sizes[at];
    section.bars.last = bar - 1;
  }
  if (count > 1 && chance.one_in(3)) {
    const int size = work.sections[0].bars.last;
    work.sections.push_back({"again", {bar, bar + size - 1}, {}, 0, true});
    bar += size;
  }
  work.bars = bar - 1;
}

// Two phrases of two bars or more, far enough apart that no start lies before both forks.
void add_alikes(Chance& chance, SmallWork& work) {
  if (!chance.one_in(3)) return;
  std::vector<Bars> phrases;
  for (const Section& section : work.sections)
    for (const Bars& phrase : section.phrases)
      if (phrase.size() > 1) phrases.push_back(phrase);
  if (phrases.size() < 2) return;
  const Bars one = phrases[static_cast<std::size_t>(chance.among(2))];
  const Bars other = phrases.back();
  const int longest = std::min(one.size(), other.size());
  const int size = 2 + chance.among(longest - 1);
  const int fork = size - 1;
  if (other.first - one.first <= kStartBefore) return;
  work.alikes.push_back({{{one.first, one.first + size - 1}, {other.first, other.first + size - 1}},
                         {one.first + fork, other.first + fork}});
}

void add_terms(Chance& chance, SmallWork& work) {
  using namespace std::chrono;
  work.from = sys_days(year{2027} / January / 4) + std::chrono::days(chance.among(7));
  // Where there are days enough, the longest task alone decides: two in three have few.
  int chunks = 0;
  for (const Section& section : work.sections)
    for (const Bars& phrase : section.phrases) chunks += phrase.size() > 3 ? 2 : 1;
  work.days = chance.one_in(3) ? kFewestDays + chance.among(kMostDays - kFewestDays + 1)
                               : std::max(kFewestDays, chunks / 2 + 4 + chance.among(4));
  const int off = chance.among(6);
  if (off == 2) work.weekdays_off = {7};
  if (off == 3) work.weekdays_off = {6, 7};
  if (off == 4) {
    const int first = chance.among(work.days);
    work.days_off = {first, first + 1};
  }
  if (off == 5)
    for (int day = 1; day < work.days; day += 3) work.days_off.push_back(day);
  work.long_saturdays = chance.one_in(4);
  work.new_to_performing = chance.one_in(8);
  // With few, learning takes little beside recalls and joins, and the rules of those decide.
  if (chance.one_in(2)) work.repetitions = 1 + chance.among(2);
}

std::string range(const Bars& bars) {
  return bars.first == bars.last ? std::to_string(bars.first)
                                 : std::to_string(bars.first) + "-" + std::to_string(bars.last);
}

std::string minutes(int halves) {
  return std::to_string(halves / 2) + (halves % 2 == 1 ? ".5" : "");
}

}  // namespace

int SmallWork::level_at(int bar) const {
  const int learned = learned_as(bar);
  for (const HardBars& each : hard)
    if (each.bars.holds(learned)) return each.level;
  for (const Section& section : sections)
    if (section.bars.holds(std::max(learned, 1)) && section.level > 0) return section.level;
  return level;
}

int SmallWork::tempo_at(int bar) const {
  int tempo = pulses.front().tempo;
  for (const Pulse& pulse : pulses)
    if (pulse.from <= bar) tempo = pulse.tempo;
  return tempo;
}

int SmallWork::learned_as(int bar) const {
  for (const Section& section : sections)
    if (section.returns && section.bars.holds(bar)) return bar - section.bars.first + 1;
  return bar;
}

int SmallWork::room(int day, int halves) const {
  const unsigned weekday = std::chrono::weekday(from + std::chrono::days(day)).iso_encoding();
  if (std::count(weekdays_off.begin(), weekdays_off.end(), weekday) > 0) return 0;
  if (std::count(days_off.begin(), days_off.end(), day) > 0) return 0;
  return long_saturdays && weekday == 6 ? halves + halves / 2 : halves;
}

SmallWork small_work(long number) {
  Chance chance(kSeed + static_cast<std::uint64_t>(number) * 1000003u);
  SmallWork work;
  work.number = number;
  const Instrument& instrument = kInstruments[static_cast<std::size_t>(chance.among(3))];
  work.instrument = instrument.name;
  work.parts = instrument.parts;
  const MeterKind& meter = kMeters[static_cast<std::size_t>(chance.among(4))];
  work.meter = meter.name;
  work.quarters = meter.quarters;
  work.beat_quarters = meter.beat_quarters;
  work.pickup_quarters = meter.unit_quarters;
  work.level = 1 + chance.among(5);
  work.pulses = {{0, kTempi[static_cast<std::size_t>(chance.among(7))]}};
  add_sections(chance, work);
  work.pickup = chance.one_in(5) && !work.sections.back().returns;
  if (work.sections.size() > 1 && !work.sections.back().returns && chance.one_in(4))
    work.pulses.push_back(
        {work.sections.back().bars.first, kTempi[static_cast<std::size_t>(chance.among(7))]});
  add_alikes(chance, work);
  add_terms(chance, work);
  return work;
}

std::string piece_file(const SmallWork& work) {
  const char* beat = work.beat_quarters > 1 ? "dotted quarter" : "quarter";
  std::string text = "title: Small " + std::to_string(work.number) +
                     "\ninstrument: " + work.instrument + "\nbars: " + std::to_string(work.bars) +
                     "\nmeter: " + work.meter +
                     "\nkey: C major\ntempo: " + std::to_string(work.pulses[0].tempo) +
                     "\nbeat: " + beat + "\nlevel: " + std::to_string(work.level) + "\n";
  if (work.pickup) text += "pickup: 1\n";
  if (work.pulses.size() > 1)
    text += "changes:\n  - {bar: " + std::to_string(work.pulses[1].from) +
            ", tempo: " + std::to_string(work.pulses[1].tempo) + ", beat: " + beat + "}\n";
  text += "sections:\n";
  for (const Section& section : work.sections) {
    text += "  - {name: " + section.name + ", bars: " + range(section.bars);
    if (section.level > 0) text += ", level: " + std::to_string(section.level);
    if (section.returns)
      text += ", same as: " + range(work.sections[0].bars);
    else
      for (std::size_t at = 0; at < section.phrases.size(); ++at)
        text += (at == 0 ? ", phrases: [" : ", ") + range(section.phrases[at]) +
                (at + 1 == section.phrases.size() ? "]" : "");
    text += "}\n";
  }
  for (std::size_t at = 0; at < work.hard.size(); ++at)
    text += (at == 0 ? "hard:\n  - {bars: " : "  - {bars: ") + range(work.hard[at].bars) +
            ", level: " + std::to_string(work.hard[at].level) + "}\n";
  for (const Alike& alike : work.alikes)
    text += "look-alikes:\n  - {bars: [" + range(alike.passages[0]) + ", " +
            range(alike.passages[1]) + "], fork: [" + std::to_string(alike.forks[0]) + ", " +
            std::to_string(alike.forks[1]) + "]}\n";
  return text;
}

std::string options(const SmallWork& work, int halves) {
  constexpr std::array<const char*, 7> kNames = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
  std::string text = "--from " + judge::iso(work.from) + " --by " +
                     judge::iso(work.from + std::chrono::days(work.days)) + " --temper no" +
                     (work.new_to_performing ? " --new-to-performing yes" : "");
  text += " --repetitions " + std::to_string(work.repetitions) + " --minutes ";
  if (!work.long_saturdays) {
    text += minutes(halves);
  } else {
    for (unsigned day = 1; day <= 7; ++day)
      text += (day == 1 ? "" : ",") + std::string(kNames[day - 1]) + ":" +
              minutes(day == 6 ? halves + halves / 2 : halves);
  }
  std::string off;
  for (const unsigned day : work.weekdays_off) off += "," + std::string(kNames[day - 1]);
  for (const int day : work.days_off) off += "," + judge::iso(work.from + std::chrono::days(day));
  if (!off.empty()) text += " --days-off " + off.substr(1);
  return text;
}

}  // namespace exact
