// A plan as `cahier plan --json` prints it, read into plain values.
#pragma once

#include <chrono>
#include <iosfwd>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace judge {

using Date = std::chrono::sys_days;

struct Bars {
  int first = 0;
  int last = 0;
  bool holds(int bar) const { return first <= bar && bar <= last; }
  // A pickup, bar 0, is not counted.
  int size() const { return last - (first == 0 ? 1 : first) + 1; }
};

struct Section {
  std::string name;
  Bars bars;
  std::optional<Bars> same_as;
};

struct Chunk {
  std::string id;
  Bars bars;
  std::string section;
  int level = 0;
};

struct Cue {
  int number = 0;
  int bar = 0;
  int weight = 1;       // its share of the dice
  bool is_new = false;  // not in the workbook before
};

struct LookAlikes {
  std::vector<Bars> passages;
  std::vector<int> forks;
};

struct Dice {
  struct Row {
    int cue = 0;
    std::vector<std::vector<int>> outcomes;
  };
  std::string name;
  int faces = 0;
  int count = 0;
  bool order_matters = false;
  std::vector<Row> rows;
  std::vector<std::vector<int>> again;
};

struct Piece {
  std::string title;
  int bars = 0;
  int first_bar = 1;
  std::vector<std::string> parts;
  std::vector<Section> sections;
  std::vector<Chunk> chunks;
  std::vector<Cue> cues;
  std::vector<LookAlikes> look_alikes;
  std::vector<Bars> ways_on;  // of the forks that follow from the form: the bars before and after
  std::vector<int> rejoin;
  std::vector<Dice> dice;

  // Where a bar is learned: itself, or through returns the bar it repeats.
  int learned_as(int bar) const;
  // Index of the chunk that holds a bar, through returns; -1 when none does.
  int chunk_of(int bar) const;
  int chunk_called(const std::string& id) const;
  // Whether a chunk, or what a return has of it, begins at a bar; sections cut as well.
  bool opens_at(int bar) const;
  // The last bar that a start from `bar` plays for certain: to the end of the chunk that begins
  // there; from inside one to the end of the next; from the last start before a fork, in the bars
  // that look alike, to the end of the chunk that holds the fork.
  int end_of_start(int bar) const;
};

struct Step {
  std::vector<std::string> parts;
  int times = 0;
  std::string say;  // the part said; may be empty
};

struct Task {
  std::string id;
  int piece = 0;
  std::string stage, drill;
  Bars bars;
  std::vector<int> chunks;
  std::vector<Step> steps;
  bool has_tempo = false;
  double tempo = 0;
  std::vector<std::pair<int, double>> tempi;  // from a bar on
  double minutes = 0;
  std::vector<int> cues;
  std::vector<Bars> ways;  // of a fork drill: from one bar to another, which need not be the next
};

struct Day {
  Date date;
  double allowance = 0;
  double minutes = 0;
  bool has_note = false;
  std::vector<Task> tasks;
};

// What the plan says of its gaps between recalls.
struct ChunkSpacing {
  int piece = 0;
  int chunk = 0;
  std::vector<Date> recalls, ideal;
  int near = 0;
  int gaps = 0;
};

struct Spacing {
  double near_share = 0;
  int forced_by_days_off = 0;
  std::vector<ChunkSpacing> chunks;
};

struct Plan {
  Date from, by;
  bool fits = false;
  double minutes_total = 0;
  std::vector<Piece> pieces;
  std::vector<Day> days;  // those before the plan, from the first on which something was done, too
  int first = 0;          // index of the plan's first day
  std::size_t unplaced = 0;
  Spacing spacing;
  int edition = 1;
};

// From JSON, with nothing but white space after it. Throws std::exception where it is none, or
// where a key is missing, given twice or of another kind than the format says.
Plan read_plan(std::istream& input);

std::string iso(Date date);

}  // namespace judge
