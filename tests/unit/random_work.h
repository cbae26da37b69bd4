// Random pieces and wishes from a seed, for property tests.
#pragma once

#include <algorithm>
#include <random>

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
    made.bars = number(1, most_bars);
    made.pickup = one_in(4) ? 1 : 0;
    made.level = number(1, 5);
    made.tempo = Tempo{static_cast<double>(number(40, 180)), Beat::quarter};
    if (one_in(5)) made.instrument = *find_instrument("violin");
    if (one_in(7)) made.instrument = *find_instrument("organ");
    if (!one_in(4)) add_sections(made);
    if (one_in(3) && made.bars > 20) add_look_alikes(made);
    for (int i = number(0, 3); i > 0; --i) {
      const int bar = number(1, made.bars);
      made.hard.push_back({{bar, std::min(made.bars, bar + 3)}, number(1, 5)});
    }
    if (one_in(4)) made.cues.push_back(number(1, made.bars));
    return made;
  }

  Wishes wishes(Date from) {
    Wishes made;
    WeekMinutes minutes{};
    if (one_in(2)) {
      minutes.fill(number(8, 60));
    } else {
      for (double& each : minutes) each = one_in(5) ? 0 : number(5, 45);
      if (*std::max_element(minutes.begin(), minutes.end()) <= 0) minutes[2] = 20;
    }
    made.minutes = minutes;
    made.temper = static_cast<Temper>(number(0, 2));
    made.order = static_cast<Order>(number(0, 2));
    made.new_to_performing = one_in(4);
    made.blocks = number(1, 3);
    if (one_in(3)) {
      DaysOff off;
      const Date first = from + days{number(0, 60)};
      off.dates.push_back({first, first + days{number(0, 15)}});
      off.weekdays[number(0, 6)] = true;
      made.days_off = off;
    }
    return made;
  }

 private:
  void add_sections(Piece& made) {
    int at = made.first_bar();
    for (int index = 1; at <= made.bars; ++index) {
      const int end = std::min(made.bars, std::max(at, 1) + number(1, 24) - 1);
      Section section;
      section.name = "S" + std::to_string(index);
      section.bars = {at, end};
      const int latest_source = at - section.bars.size();
      if (one_in(4) && latest_source >= 1) {
        const int source = number(1, latest_source);
        section.same_as = BarRange{source, source + section.bars.size() - 1};
      } else if (one_in(3)) {
        for (int open = at; open <= end;) {
          const int close = std::min(end, open + number(1, 8));
          section.phrases.push_back({open, close});
          open = close + 1;
        }
      }
      made.sections.push_back(section);
      at = end + 1;
    }
  }

  void add_look_alikes(Piece& made) {
    const int first = number(1, 5);
    const int bars = number(3, 6);
    const int second = number(first + bars, made.bars - bars);
    const int into = number(0, bars - 1);
    made.look_alikes.push_back(
        {{{first, first + bars - 1}, {second, second + bars - 1}}, {first + into, second + into}});
  }

  std::mt19937 engine_;
};

}  // namespace cahier::sample
