// Random pieces, wishes and calendars from a seed, for property tests. Strange ones among them, but
// every piece is one that a piece file could hold: piece_file.h writes it, and reading it is
// tested.
#pragma once

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "piece/piece.h"
#include "text/date.h"

namespace cahier::sample {

class RandomWork {
 public:
  explicit RandomWork(unsigned seed) : engine_(seed) {}

  // A whole number from `least` to `most`. Not std::uniform_int_distribution, whose results differ
  // between libraries.
  int number(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<unsigned>(most - least + 1));
  }
  bool one_in(int chances) { return number(1, chances) == 1; }

  Piece piece(int most_bars) {
    Piece made;
    made.title = "Random";
    made.bars = one_in(12) ? number(1, 3) : number(1, most_bars);
    made.meter = meter();
    if (one_in(4)) made.pickup = made.meter.count() > 1 ? number(1, made.meter.count() - 1) : 0.5;
    if (one_in(2)) made.key = key();
    made.level = number(1, 5);
    if (!one_in(6)) made.tempo = tempo(made.meter);
    made.instrument = instrument();
    if (!one_in(4)) {
      add_sections(made);
      add_returns(made);
    }
    if (one_in(3)) add_changes(made);
    if (one_in(3)) add_repeats(made);
    if (one_in(3))
      for (int group = number(1, 3); group > 0; --group) add_look_alikes(made);
    for (int i = number(0, 3); i > 0; --i) {
      const int bar = number(1, made.bars);
      made.hard.push_back({{bar, std::min(made.bars, bar + number(0, 5))}, number(1, 5)});
    }
    if (one_in(4)) add_cues(made);
    return made;
  }

  // Mostly one piece, now and then two, rarely three, that share the days.
  std::vector<Piece> pieces(int most_bars) {
    const int count = one_in(12) ? 3 : one_in(6) ? 2 : 1;
    std::vector<Piece> made;
    for (int i = 0; i < count; ++i) made.push_back(piece(most_bars / count));
    return made;
  }

  Wishes wishes(Date from) {
    Wishes made;
    made.minutes = minutes();
    made.temper = static_cast<Temper>(number(0, 2));
    made.order = static_cast<Order>(number(0, 2));
    made.new_to_performing = one_in(4);
    made.blocks = number(1, 3);
    if (one_in(5)) made.lesson = number(0, 6);
    if (one_in(3)) {
      DaysOff off;
      for (int span = number(0, 3); span > 0; --span) {
        const Date first = from + days{number(0, one_in(4) ? 400 : 60)};
        off.dates.push_back({first, first + days{number(0, one_in(5) ? 60 : 15)}});
      }
      for (int weekday = number(0, 2); weekday > 0; --weekday) off.weekdays[number(0, 6)] = true;
      made.days_off = off;
    }
    return made;
  }

  // From the day after tomorrow to three years.
  int days_to_go() {
    if (one_in(10)) return number(2, 6);
    if (one_in(16)) return number(300, 1100);
    return number(7, 120);
  }

 private:
  template <typename T>
  T one_of(std::initializer_list<T> all) {
    return *(all.begin() + number(0, static_cast<int>(all.size()) - 1));
  }

  Meter meter() {
    return *parse_meter(
        one_of<const char*>({"4/4", "4/4", "3/4", "2/4", "6/8", "2+3/8", "5/4", "2/2", "1/4"}));
  }
  Key key() { return *parse_key(one_of<const char*>({"A minor", "B flat major", "2 sharps"})); }

  Tempo tempo(const Meter& meter) {
    if (one_in(12)) return {one_of<double>({10, 400}), natural_beat(meter)};
    return {static_cast<double>(number(40, 180)), natural_beat(meter)};
  }

  Instrument instrument() {
    if (one_in(2)) return {};
    Instrument made = *find_instrument(
        one_of<const char*>({"violin", "violin", "organ", "voice", "vibraphone", "harp"}));
    if (one_in(6)) made.parts = {"one", "two", "three", "four"};
    return made;
  }

  WeekMinutes minutes() {
    WeekMinutes week{};
    switch (number(1, 8)) {
      case 1:  // one practice day a week
        week[number(0, 6)] = number(10, 120);
        return week;
      case 2:  // hardly any
        week.fill(number(1, 7));
        return week;
      case 3:  // as many as can be
        week.fill(one_of<double>({120, 480}));
        return week;
      case 4:
      case 5:  // another number each weekday, some none
        for (double& each : week) each = one_in(5) ? 0 : number(5, 45);
        if (*std::max_element(week.begin(), week.end()) <= 0) week[2] = 20;
        return week;
      default:
        week.fill(number(8, 60));
        return week;
    }
  }

  void add_sections(Piece& made) {
    const int most = one_in(6) ? 3 : 24;
    int at = made.first_bar();
    for (int index = 1; at <= made.bars; ++index) {
      int end = std::min(made.bars, std::max(at, 1) + number(1, most) - 1);
      if (at == 0 && one_in(4)) end = 0;  // the pickup by itself
      Section section;
      section.name = "S" + std::to_string(index);
      section.bars = {at, end};
      if (one_in(4)) section.level = number(1, 5);
      if (one_in(3)) {
        for (int open = at; open <= end;) {
          const int close = std::min(end, std::max(open, 1) + number(0, 8));
          section.phrases.push_back({open, close});
          open = close + 1;
        }
      }
      made.sections.push_back(section);
      at = end + 1;
    }
  }

  // Returns to earlier and to later bars, of whole sections, parts of them and more than one, and
  // of what is a return itself; never in a circle.
  void add_returns(Piece& made) {
    for (Section& section : made.sections) {
      const int size = section.bars.size();
      if (section.bars.first == 0 || size >= made.bars || !one_in(3)) continue;
      int first = number(1, made.bars - size + 1);
      if (one_in(2)) first = made.sections[number(0, index_of(made, section.bars))].bars.first;
      const BarRange source{first, first + size - 1};
      if (first == 0 || source.last > made.bars || source.overlaps(section.bars)) continue;
      section.same_as = source;
      if (goes_in_a_circle(made, section.bars)) section.same_as.reset();
    }
  }

  static int index_of(const Piece& made, BarRange bars) {
    int index = 0;
    while (made.sections[index].bars != bars) ++index;
    return index;
  }

  static bool goes_in_a_circle(const Piece& made, BarRange bars) {
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      int at = bar;
      for (int hop = 0; hop <= made.bars; ++hop) {
        const auto section = std::find_if(made.sections.begin(), made.sections.end(),
                                          [&](const Section& s) { return s.bars.contains(at); });
        if (!section->same_as) break;
        at = section->same_as->first + at - section->bars.first;
        if (at == bar) return true;
      }
    }
    return false;
  }

  void add_changes(Piece& made) {
    int bar = made.first_bar();
    for (int i = number(1, 4); i > 0; --i) {
      bar += number(1, 12);
      if (bar > made.bars) return;
      Change change;
      change.bar = bar;
      const int what = number(1, 7);
      if (what & 1) change.meter = meter();
      if (what & 2) change.key = key();
      if (what & 4) change.tempo = tempo(change.meter.value_or(made.meter));
      made.changes.push_back(change);
    }
  }

  // One after another or one inside another.
  void add_repeats(Piece& made) {
    const int first = number(made.first_bar(), made.bars);
    const int last = number(first, made.bars);
    made.repeats.push_back({{first, last}, number(2, 3)});
    if (last - first > 2) made.repeats.push_back({{first + 1, last - 1}, 2});
    int next = last + 1;
    if (last - first > 2 && last < made.bars && (first + last) % 2 == 0) {
      std::vector<int> before;
      for (int time = 1; time < made.repeats[0].times; ++time) before.push_back(time);
      made.repeats[0].endings = {{{last, last}, before}, {{next, next}, {made.repeats[0].times}}};
      ++next;
    }
    if (next > made.bars) return;
    made.repeats.push_back({{next, made.bars}, 2});
    if (made.bars - next > 3 && next % 2 == 0)
      made.repeats.back().endings = {{{made.bars - 2, made.bars - 1}, {1}},
                                     {{made.bars, made.bars}, {2}}};
  }

  // Two to four passages that begin alike, wherever they stand; the groups may overlap.
  void add_look_alikes(Piece& made) {
    const int passages = one_in(3) ? number(3, 4) : 2;
    const int bars = number(1, 6);
    const int apart = made.bars / passages;
    if (apart < bars) return;
    const int into = number(0, bars - 1);
    LookAlikes group;
    for (int i = 0; i < passages; ++i) {
      const int first = i * apart + number(1, apart - bars + 1);
      group.passages.push_back({first, first + bars - 1});
      group.forks.push_back(first + (one_in(8) ? 0 : into));
    }
    made.look_alikes.push_back(group);
  }

  void add_cues(Piece& made) {
    const int apart = number(1, 20);
    for (int bar = number(1, made.bars); bar <= made.bars; bar += apart) made.cues.push_back(bar);
  }

  std::mt19937 engine_;
};

}  // namespace cahier::sample
