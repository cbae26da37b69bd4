// How the lines of a form share the pages.
#pragma once

#include <vector>

namespace cahier {

struct FormPages {
  std::vector<int> lines;  // on each page
  double between = 0;      // millimetres of white space below each line
};

// For lines of these heights on pages `page` millimetres high, the last of them with room for
// `key` below: on as few pages as can be, and about as many on each, so that no line is left alone
// on the last. A line that no page holds has one of its own.
FormPages form_pages(const std::vector<double>& heights, double page, double key);

}  // namespace cahier
