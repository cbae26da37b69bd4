// What is measured of a bar, and its level.

#include <random>

#include "catch.h"
#include "score/level/bar_level.h"
#include "score/level/level_weights.h"
#include "score/score.h"

using namespace cahier;

namespace {

ScoreNote made_note(const std::string& name, Quarters onset, int staff = 1) {
  ScoreNote made;
  made.pitch = {name.front(),
                name[1] == '#'   ? 100
                : name[1] == 'b' ? -100
                                 : 0,
                name.back() - '0', false};
  made.onset = onset;
  made.duration = Quarters(1, 4);
  made.staff = staff;
  return made;
}

// Bars of 4/4 for two hands at 60 quarters a minute, four seconds each.
Score two_hands(const std::vector<std::vector<ScoreNote>>& bars, int fifths = 0,
                double per_minute = 60) {
  Score score;
  score.hands = {{"right hand", {1}}, {"left hand", {2}}};
  for (const std::vector<ScoreNote>& notes : bars) {
    ScoreMeasure measure;
    measure.length = Quarters(4, 1);
    measure.key = ScoreKey{fifths, ""};
    if (per_minute > 0) measure.tempo = ScoreTempo{per_minute};
    measure.notes = notes;
    score.measures.push_back(measure);
    const int element = static_cast<int>(score.measures.size());
    score.bars.push_back({element, element, "", measure.length, false, element});
  }
  return score;
}

BarMeasures measured(const std::vector<ScoreNote>& bar, int fifths = 0, double per_minute = 60) {
  return measure_bars(two_hands({bar}, fifths, per_minute))[0][0];
}

std::vector<ScoreNote> row(const std::vector<std::string>& names, Quarters apart, int staff = 1) {
  std::vector<ScoreNote> notes;
  Quarters onset;
  for (const std::string& name : names) {
    notes.push_back(made_note(name, onset, staff));
    onset = onset + apart;
  }
  return notes;
}

std::vector<ScoreNote> both(std::vector<ScoreNote> one, const std::vector<ScoreNote>& other) {
  one.insert(one.end(), other.begin(), other.end());
  return one;
}

bool no_less(const BarMeasures& more, const BarMeasures& less) {
  return more.onsets >= less.onsets && more.chord >= less.chord && more.spread >= less.spread &&
         more.leaps >= less.leaps && more.accidentals >= less.accidentals &&
         more.apart >= less.apart && more.met <= less.met;
}

double any_of(std::mt19937& chance, unsigned most) { return static_cast<double>(chance() % most); }

ScoreNote any_note(std::mt19937& chance) {
  ScoreNote note = made_note(std::string(1, static_cast<char>('A' + chance() % 7)) + "x4",
                             Quarters(static_cast<std::int64_t>(chance() % 16), 4),
                             1 + static_cast<int>(chance() % 2));
  note.pitch.octave = 2 + static_cast<int>(chance() % 4);
  note.grace = chance() % 10 == 0;
  note.tie_stop = chance() % 8 == 0;
  if (chance() % 4 == 0) note.pitch.alter = chance() % 2 == 0 ? 100 : -100;
  return note;
}

}  // namespace

TEST_CASE("the busiest second of a bar tells its onsets, chords and graces counted once each") {
  CHECK(measured(row({"C4", "D4", "E4", "F4"}, Quarters(1, 1))).onsets == 1);
  CHECK(measured(row({"C4", "D4", "E4", "F4"}, Quarters(1, 4))).onsets == 4);
  CHECK(measured(row({"C4", "D4", "E4", "F4"}, Quarters(1, 4)), 0, 120).onsets == 4);
  CHECK(measured(row({"C4", "E4", "G4"}, Quarters())).onsets == 1);
  std::vector<ScoreNote> graced = row({"B3", "C4"}, Quarters());
  graced[0].grace = true;
  CHECK(measured(graced).onsets == 2);
  CHECK(measured({}).onsets == 0);
  std::vector<ScoreNote> tied = row({"C4"}, Quarters());
  tied[0].tie_stop = true;
  CHECK(measured(tied).onsets == 0);
  // Without a tempo, 96 quarters a minute: sixteenths are 6.4 a second, 7 in the busiest.
  CHECK(measured(row({"C4", "D4", "E4", "F4", "G4", "A4", "B4", "C5"}, Quarters(1, 4)), 0, 0)
            .onsets == 7);
}

TEST_CASE("a pickup is no faster for being short", "[numbers]") {
  Score score = two_hands({row({"C4"}, Quarters(1, 1))}, 0, 120);
  score.measures[0].length = score.bars[0].length = Quarters(1, 2);  // a quarter of a second
  CHECK(measure_bars(score)[0][0].onsets == 2);
  score.measures[0].length = score.bars[0].length = Quarters();
  CHECK(measure_bars(score)[0][0].onsets == 2);
}

TEST_CASE("chords are measured by their notes and what they reach beyond an octave") {
  const BarMeasures triad = measured(row({"C4", "E4", "C5"}, Quarters()));
  CHECK(triad.chord == 3);
  CHECK(triad.spread == 0);
  CHECK(measured(row({"C4", "E5"}, Quarters())).spread == 2);
  CHECK(measured(row({"C2", "C5"}, Quarters())).spread == 3);
}

TEST_CASE("leaps are counted beyond an octave and from what was struck within half a second") {
  // An octave and a sixth, in half a second, over four seconds.
  CHECK(measured(row({"C3", "A4"}, Quarters(1, 2))).leaps == Approx(5.0 / 4));
  CHECK(measured(row({"C3", "A4"}, Quarters(5, 8))).leaps == 0);
  CHECK(measured(row({"C3", "C4"}, Quarters(1, 2))).leaps == 0);
  // Into the next bar as well.
  const auto bars =
      measure_bars(two_hands({{made_note("C2", Quarters(15, 4))}, {made_note("C4", Quarters())}}));
  CHECK(bars[1][0].leaps == Approx(7.0 / 4));
}

TEST_CASE("accidentals are those against the key, each once") {
  const std::vector<ScoreNote> notes = row({"F#4", "F#5", "Bb4", "C4"}, Quarters(1, 1));
  CHECK(measured(notes).accidentals == 2);
  CHECK(measured(notes, 1).accidentals == 1);
  CHECK(measured(notes, -1).accidentals == 1);
  CHECK(measured(row({"F4"}, Quarters(1, 1)), 1).accidentals == 1);
  CHECK(measured(row({"F#4", "C#4", "G#4", "D#4", "A#4", "E#4", "B#4"}, Quarters(1, 2)), 7)
            .accidentals == 0);
  CHECK(measured(row({"Bb4", "Eb4", "Ab4", "Db4", "Gb4", "Cb4", "Fb4"}, Quarters(1, 2)), -7)
            .accidentals == 0);
}

TEST_CASE("hands are apart where one strikes alone, as far as the other strikes at all") {
  const std::vector<ScoreNote> quarters = row({"C3", "C3", "C3", "C3"}, Quarters(1, 1), 2);
  const auto apart = [&](const std::vector<ScoreNote>& right) {
    return measure_bars(two_hands({both(right, quarters)}))[0][0].apart;
  };
  CHECK(apart(row({"C5", "D5", "E5", "F5"}, Quarters(1, 1))) == 0);
  CHECK(apart(row({"C5", "D5", "E5"}, Quarters(4, 3))) == Approx(2.0 / 4));
  CHECK(measured(row({"C5", "D5", "E5"}, Quarters(1, 2))).apart == 0);
  const auto over_one = measure_bars(
      two_hands({both(row({"C5", "D5", "E5", "F5"}, Quarters(1, 4)), {made_note("C3", {}, 2)})}));
  CHECK(over_one[0][0].apart == Approx(1.0 / 4));
  CHECK(over_one[0][1].apart == 0);
}

TEST_CASE("a bar that comes again has been met, hand by hand") {
  const std::vector<ScoreNote> right = row({"C5", "D5"}, Quarters(1, 1));
  const auto bars = measure_bars(
      two_hands({both(right, row({"C3"}, Quarters(), 2)), both(right, row({"D3"}, Quarters(), 2)),
                 row({"C3"}, Quarters(), 2)}));
  CHECK_FALSE(bars[0][0].met);
  CHECK(bars[1][0].met);
  CHECK_FALSE(bars[1][1].met);
  CHECK(bars[2][1].met);
}

TEST_CASE("what a level is in figures", "[numbers]") {
  const auto level = [](auto change) {
    BarMeasures measures;
    measures.onsets = 3;
    measures.chord = 1;
    change(measures);
    return level_of(measures);
  };
  CHECK(level([](BarMeasures&) {}) == 2);
  CHECK(level([](BarMeasures& one) { one.onsets = 2.9; }) == 1);
  CHECK(level([](BarMeasures& one) { one.onsets = 5.9; }) == 2);
  CHECK(level([](BarMeasures& one) { one.onsets = 6; }) == 3);
  CHECK(level([](BarMeasures& one) { one.onsets = 12; }) == 5);
  CHECK(level([](BarMeasures& one) { one.onsets = 60; }) == 5);
  CHECK(level([](BarMeasures& one) { one.chord = 5; }) == 2);
  CHECK(level([](BarMeasures& one) { one.chord = 6; }) == 3);
  CHECK(level([](BarMeasures& one) { one.spread = 3; }) == 2);
  CHECK(level([](BarMeasures& one) { one.spread = 3, one.chord = 2; }) == 3);
  CHECK(level([](BarMeasures& one) { one.leaps = 16; }) == 2);
  CHECK(level([](BarMeasures& one) { one.leaps = 17; }) == 3);
  CHECK(level([](BarMeasures& one) { one.accidentals = 4; }) == 2);
  CHECK(level([](BarMeasures& one) { one.accidentals = 5; }) == 3);
  CHECK(level([](BarMeasures& one) { one.apart = 4.9; }) == 2);
  CHECK(level([](BarMeasures& one) { one.apart = 5; }) == 3);
  CHECK(level([](BarMeasures& one) { one.met = true; }) == 1);
  CHECK(level_of({}) == 1);
}

TEST_CASE("a level never falls when one measure grows") {
  std::mt19937 chance(5);
  for (int round = 0; round < 2000; ++round) {
    const BarMeasures one{any_of(chance, 100) / 10,
                          1 + static_cast<int>(chance() % 6),
                          static_cast<int>(chance() % 4),
                          any_of(chance, 30),
                          static_cast<int>(chance() % 8),
                          any_of(chance, 50) / 10,
                          chance() % 2 == 0};
    BarMeasures more = one;
    switch (chance() % 7) {
      case 0:
        more.onsets += 0.3;
        break;
      case 1:
        ++more.chord;
        break;
      case 2:
        ++more.spread;
        break;
      case 3:
        more.leaps += 1;
        break;
      case 4:
        ++more.accidentals;
        break;
      case 5:
        more.apart += 0.4;
        break;
      default:
        more.met = false;
    }
    CHECK(level_of(more) >= level_of(one));
    CHECK(level_of(more) <= level_of(one) + 1);
  }
}

TEST_CASE("a note, a leap or an accidental more never makes a bar easier") {
  std::mt19937 chance(7);
  int harder = 0;
  for (int round = 0; round < 3000; ++round) {
    std::vector<std::vector<ScoreNote>> bars(2);
    for (std::vector<ScoreNote>& bar : bars)
      for (std::size_t notes = chance() % 12; notes > 0; --notes) bar.push_back(any_note(chance));
    const double tempo = 40 + any_of(chance, 160);
    const int fifths = static_cast<int>(chance() % 15) - 7;
    const auto measured_of = [&] { return measure_bars(two_hands(bars, fifths, tempo))[1]; };
    const std::vector<BarMeasures> before = measured_of();
    std::vector<ScoreNote>& bar = bars[1];
    int staff = 1;
    if (chance() % 3 == 0 && !bar.empty()) {
      // One that the key has becomes one that it has not.
      ScoreNote& note = bar[chance() % bar.size()];
      const bool sharp = std::string("FCGDAEB").find(note.pitch.step) <
                         static_cast<std::size_t>(std::max(0, fifths));
      const bool flat = std::string("BEADGCF").find(note.pitch.step) <
                        static_cast<std::size_t>(std::max(0, -fifths));
      if (note.pitch.alter != (sharp ? 100 : flat ? -100 : 0)) continue;
      SpelledPitch altered = note.pitch;
      altered.alter = sharp || flat ? 0 : 100;
      // It must not fall together with another one.
      if (std::ranges::any_of(bar, [&](const ScoreNote& other) { return other.pitch == altered; }))
        continue;
      note.pitch = altered;
      staff = note.staff;
    } else {
      bar.push_back(any_note(chance));
      bar.back().tie_stop = false;
      if (chance() % 3 == 0) bar.back().pitch.octave = chance() % 2 == 0 ? 1 : 7;
      staff = bar.back().staff;
    }
    const auto hand = static_cast<std::size_t>(staff) - 1;
    const BarMeasures after = measured_of()[hand];
    if (after.met && !before[hand].met) continue;
    CAPTURE(round, fifths, tempo);
    CHECK(no_less(after, before[hand]));
    CHECK(level_of(after) >= level_of(before[hand]));
    if (level_of(after) > level_of(before[hand])) ++harder;
  }
  CHECK(harder > 300);
}
