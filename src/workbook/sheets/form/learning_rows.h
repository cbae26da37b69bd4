// What the learning calendar shows: chunk by chunk what happens when.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// The strongest thing that happens in a column wins.
enum class Dot { none, joined, recalled, learned };

struct LearningRow {
  std::string label;
  std::string bars;       // empty in the row of run-throughs
  std::vector<Dot> dots;  // one for each column
  bool begins_section = false;
  bool learned_before = false;  // in an earlier edition
};

// A row for each chunk of a piece, and one for its run-throughs; a column for every `span` days.
std::vector<LearningRow> learning_rows(const Book& book, int piece, int span);

}  // namespace cahier
