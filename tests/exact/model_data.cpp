#include "model_data.h"

#include <algorithm>
#include <ostream>
#include <set>

namespace exact {
namespace {

using Table = std::vector<std::vector<int>>;

// By first passage and how many, from none on; what goes past the end is never taken.
Table costs_from_memory(const CutWork& cut, const TaskMinutes& minutes, const std::string& tempo) {
  const int count = static_cast<int>(cut.passages.size());
  Table costs;
  for (int first = 0; first < count; ++first) {
    costs.push_back({0});
    for (int length = 1; length <= count; ++length)
      costs.back().push_back(
          first + length > count
              ? 0
              : minutes.from_memory(cut.bars(first, length), cut.level(first, length), tempo));
  }
  return costs;
}

// The least that it takes to play so many passages from memory in a day, by recalls and starts.
std::vector<int> least_cover(const Table& recalls, const std::vector<int>& starts) {
  const int count = static_cast<int>(recalls.size());
  std::vector<int> by_recalls(static_cast<std::size_t>(count) + 1, 0);
  for (int covered = 1; covered <= count; ++covered) {
    int& least = by_recalls[covered] = 1 << 20;
    for (int length = 1; length <= covered; ++length)
      for (int first = 0; first + length <= count; ++first)
        least = std::min(least, by_recalls[covered - length] + recalls[first][length]);
  }
  std::vector<int> least = by_recalls;
  for (int covered = count; covered > 0; --covered)
    for (int from_starts = 0; from_starts <= covered; ++from_starts)
      least[covered] =
          std::min(least[covered], by_recalls[covered - from_starts] + starts[from_starts]);
  for (int covered = count; covered > 0; --covered)
    least[covered - 1] = std::min(least[covered - 1], least[covered]);
  return least;
}

void write_set(std::ostream& out, const std::set<int>& numbers) {
  out << "{";
  for (const int number : numbers) out << (number == *numbers.begin() ? "" : ", ") << number;
  out << "}";
}

// What starts before a fork may play for certain: from as far before it as rule 8 allows, to the
// end of the passage after that which holds it.
std::set<int> played_before(const CutWork& cut, int fork, int most_before) {
  std::set<int> played;
  std::size_t holder = 0;
  while (!cut.passages[holder].bars.holds(fork)) ++holder;
  for (std::size_t at = 0; at < cut.passages.size() && at <= holder + 1; ++at)
    if (cut.passages[at].bars.last >= fork - most_before) played.insert(static_cast<int>(at) + 1);
  return played;
}

std::set<int> chunks_in(const SmallWork& work, const CutWork& cut, const Bars& bars) {
  std::set<int> chunks;
  for (int bar = bars.first; bar <= bars.last; ++bar)
    for (std::size_t chunk = 0; chunk < cut.chunks.size(); ++chunk)
      if (cut.chunks[chunk].holds(work.learned_as(bar))) chunks.insert(static_cast<int>(chunk) + 1);
  return chunks;
}

void write_alikes(std::ostream& out, const SmallWork& work, const CutWork& cut, int most_before) {
  out << "pairs = " << work.alikes.size() << ";\nalike = array2d(1.." << work.alikes.size()
      << ", 1..2, [";
  for (const Alike& alike : work.alikes)
    for (const Bars& passage : alike.passages) {
      write_set(out, chunks_in(work, cut, passage));
      out << ", ";
    }
  out << "]);\nlead_plays = [";
  for (const Alike& alike : work.alikes)
    for (const int fork : alike.forks) {
      write_set(out, played_before(cut, fork, most_before));
      out << ", ";
    }
  out << "];\n";
}

}  // namespace

void write_list(std::ostream& out, const std::string& name, const std::vector<int>& values) {
  out << name << " = [";
  for (std::size_t at = 0; at < values.size(); ++at) out << (at == 0 ? "" : ", ") << values[at];
  out << "];\n";
}

void write_table(std::ostream& out, const std::string& name, int first_row, int first_column,
                 const Table& rows) {
  const int columns = rows.empty() ? 0 : static_cast<int>(rows[0].size());
  out << name << " = array2d(" << first_row << ".." << first_row + static_cast<int>(rows.size()) - 1
      << ", " << first_column << ".." << first_column + columns - 1 << ", [";
  for (const std::vector<int>& row : rows)
    for (const int value : row) out << value << ", ";
  out << "]);\n";
}

std::vector<int> practice_days(const SmallWork& work) {
  std::vector<int> days;
  for (int day = 0; day < work.days; ++day)
    if (work.room(day, 2) > 0) days.push_back(day);
  return days;
}

void write_data(std::ostream& out, const SmallWork& work, const CutWork& cut,
                const TaskMinutes& minutes, int halves) {
  const std::vector<int> days = practice_days(work);
  std::vector<int> room, chunk_at, learn, joins, starts;
  for (const int day : days) room.push_back(work.room(day, halves));
  for (const Passage& passage : cut.passages) {
    chunk_at.push_back(passage.chunk + 1);
    if (passage.join >= 0) joins.push_back(passage.join + 1);
  }
  for (std::size_t chunk = 0; chunk < cut.chunks.size(); ++chunk)
    learn.push_back(minutes.learn(cut.chunks[chunk], cut.levels[chunk]));
  const int most_starts =
      static_cast<int>(cut.passages.size()) + 2 * static_cast<int>(work.alikes.size());
  for (int count = 0; count <= most_starts; ++count) starts.push_back(minutes.starts(count));
  const Table recalls = costs_from_memory(cut, minutes, "recall tempo");

  out << "days = " << work.days << ";\npractice = " << days.size()
      << ";\nchunks = " << cut.chunks.size() << ";\npassages = " << cut.passages.size()
      << ";\njoins = " << cut.joins << ";\nrun_cost = " << minutes.run_through() << ";\n";
  write_list(out, "day", days);
  write_list(out, "room", room);
  write_list(out, "chunk_at", chunk_at);
  write_list(out, "learn_cost", learn);
  write_list(out, "join_at", joins);
  write_table(out, "recall_cost", 1, 0, recalls);
  write_table(out, "join_cost", 1, 0, costs_from_memory(cut, minutes, "join tempo"));
  out << "start_cost = array1d(0.." << most_starts << ", [";
  for (const int cost : starts) out << cost << ", ";
  out << "]);\nleast_cover = array1d(0.." << cut.passages.size() << ", [";
  for (const int cost : least_cover(recalls, starts)) out << cost << ", ";
  out << "]);\n";
  write_alikes(out, work, cut, static_cast<int>(minutes.number("chunk most")));
  const auto number = [&](const char* name, const char* key) {
    out << name << " = " << minutes.number(key) << ";\n";
  };
  number("quiet_days", "quiet days");
  number("first_recall_days", "first recall days");
  number("runs_needed",
         work.new_to_performing ? "run throughs for a new performer" : "run throughs");
  number("run_days", "run days");
  number("runs_a_day", "runs a day");
  number("longest_gap", "longest gap");
  // The pairs of the source: Cepeda and others 2008, Psychological Science 19(11):1095-1102.
  out << "delay = [7.0, 35.0, 70.0, 350.0];\ngap = [3.0, 8.0, 12.0, 27.0];\n";
}

void write_free(std::ostream& out) {
  out << "given = false;\n";
  for (const char* name : {"given_learn", "given_runs", "given_starts"}) write_list(out, name, {});
  for (const char* name : {"given_recall", "given_join"}) write_table(out, name, 1, 1, {});
}

}  // namespace exact
