// A day in a child's words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"
#include "workbook/book.h"
#include "workbook/sheets/child/child_pages.h"

namespace cahier {

struct ChildLine {
  std::string text;
  std::optional<Shape> shape{};  // to colour when it is done; none where nothing is played
};

// What the day asks for. Tasks of one kind are one line, so that a day stays short: "From memory:
// bars 1–4 and 9–12." Never empty.
std::vector<ChildLine> child_lines(const Book& book, const Day& day);

}  // namespace cahier
