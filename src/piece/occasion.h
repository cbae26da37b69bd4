// For whom and for when: what a piece, a programme or a studio may say of its workbook.
#pragma once

#include <optional>
#include <string>

#include "text/date.h"
#include "text/yaml.h"

namespace cahier {

inline constexpr std::size_t kLongestName = 40;  // characters of a student's or teacher's name

struct Occasion {
  std::optional<Date> by;
  std::optional<Date> from;
  std::string student;  // empty where none is named, here and below
  std::string teacher;
  Place by_at;  // of `by`, where there is one

  // This one, with `fallback` for whatever it leaves empty.
  Occasion over(const Occasion& fallback) const;
};

// Reads `by`, `from`, `student` and `teacher`; anything invalid is reported and left empty.
Occasion read_occasion(YamlFields& fields);

// The same without `student`, of what is for several.
Occasion read_shared_occasion(YamlFields& fields);

}  // namespace cahier
