// A piece of music as far as practice from memory needs it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "piece/bar_range.h"
#include "piece/instrument.h"
#include "piece/key.h"
#include "piece/meter.h"
#include "piece/occasion.h"
#include "piece/parting.h"
#include "piece/wishes.h"

namespace cahier {

struct Section {
  std::string name;
  BarRange bars;
  std::vector<BarRange> phrases;    // empty, or covering the section in order
  std::optional<int> level;         // 1 easy … 5 very hard
  std::optional<BarRange> same_as;  // a return: learned where these bars are learned
};

struct Change {
  int bar = 1;
  std::optional<Meter> meter;
  std::optional<Key> key;
  std::optional<Tempo> tempo;
};

struct HardBars {
  BarRange bars;
  int level = 4;
};

struct LookAlikes {
  std::vector<BarRange> passages;  // at least two, in bar order
  std::vector<int> forks;          // one for each passage, inside it
};

// Bars at the end of a repeat that are played only at some of its times.
struct Ending {
  BarRange bars;
  std::vector<int> times;  // from 1, rising
};

struct Repeat {
  BarRange bars;
  int times = 2;  // as played, the first time included
  // In bar order, without gaps, up to the last of `bars`; the last one may follow it. Each time is
  // in one of them; empty where all times end alike.
  std::vector<Ending> endings{};

  // What is played every time.
  BarRange body() const {
    return {bars.first, endings.empty() ? bars.last : endings.front().bars.first - 1};
  }
  // Whether it goes back from the end of this bar at some time.
  bool goes_back_from(int bar) const;
  // All of it, an ending that follows it included.
  BarRange reach() const {
    return {bars.first, endings.empty() ? bars.last : endings.back().bars.last};
  }
};

struct Mark {
  int bar = 1;
  std::string note;
  bool holds = false;  // in force until the next mark that holds
};

enum class Fingering { unsaid, ready, not_yet };

struct Piece {
  std::string title;
  std::string short_title{};  // as the file gives it; may be empty
  std::string composer;       // may be empty
  Instrument instrument;
  int bars = 0;       // written bars, without bar 0
  double pickup = 0;  // beats (of the meter's unit) in bar 0; 0 for none
  Meter meter;
  std::optional<Key> key;
  std::optional<Tempo> tempo;
  int level = 2;
  std::vector<Change> changes;    // by bar
  std::vector<Section> sections;  // by bar; empty when the file names none, else covering every bar
  std::vector<HardBars> hard;
  std::vector<LookAlikes> look_alikes;
  std::vector<Repeat> repeats;
  std::vector<Mark> marks;
  std::vector<int> cues;
  Fingering fingering = Fingering::unsaid;
  Wishes practice;
  Occasion occasion{};
  // By bar from 0: the first notes there, in a few names; empty where no score tells.
  std::vector<std::string> beginnings{};
  // The same to be read aloud, hand by hand.
  std::vector<std::vector<std::string>> beginnings_aloud{};
  // By bar from 0, and in it by part: the notes as they are spoken; empty where no score tells.
  std::vector<std::vector<std::string>> said{};
  // Of each way on at a fork but the first how it differs from that; empty where no score tells.
  std::vector<Parting> partings{};

  const std::vector<std::string>& parts() const { return instrument.parts; }
  int first_bar() const { return pickup > 0 ? 0 : 1; }
  BarRange whole() const { return {first_bar(), bars}; }

  Meter meter_at(int bar) const;
  std::optional<Key> key_at(int bar) const;
  std::optional<Tempo> tempo_at(int bar) const;
  // Quarter notes in a bar; bar 0 has the pickup's.
  double quarters_in(int bar) const;
  // The hardest of piece, section and hard bars that speak of this bar; a section's level stands
  // in place of the piece's, and a `hard` entry in place of both.
  int level_at(int bar) const;
  // The level of the hardest of these bars; at least 1.
  int hardest_level(BarRange among) const;
  // The note of the last mark that holds, at this bar or before it; empty where none does. In the
  // pickup that of bar 1.
  std::string in_force_at(int bar) const;
  // The first notes at a bar, in a few names; empty where nothing tells.
  std::string beginning_at(int bar) const;
  // The same to be read aloud, hand by hand.
  std::vector<std::string> beginning_aloud_at(int bar) const;
  // The notes of a part in a bar as they are spoken; empty where nothing tells.
  std::string said_at(int bar, std::size_t part) const;
  // How two bars part into which a fork leads; nullptr where nothing tells.
  const Parting* parting_of(int one, int other) const;
  // The bar whose notes are learned for this one: itself, or followed through `same as`.
  int learned_bar(int bar) const;
  // The same of every bar, by bar from 0: each `same as` is followed once, however long the chain.
  std::vector<int> learned_bars() const;
  // Stretches in the order they are played, with repeats and their endings.
  std::vector<BarRange> playing_order() const;
};

}  // namespace cahier
