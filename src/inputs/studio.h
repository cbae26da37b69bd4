// A teacher's students, each with a piece, under dates that they share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "paper/page_size.h"
#include "piece/occasion.h"
#include "piece/wishes.h"

namespace cahier {

// A file that a studio names.
struct StudioFile {
  std::string path;  // as written: relative to the studio's own folder
  Place at;
};

// How workbooks are to be printed; empty where nothing is said.
struct Packing {
  std::string packet;
  std::optional<PageSize> paper;
  Place packet_at;

  // This one, with `fallback` for whatever it leaves empty.
  Packing over(const Packing& fallback) const;
};

struct Student {
  std::string name;
  Place at;
  std::string file_name;           // the name as the beginning of one: "mia-k"
  std::vector<StudioFile> pieces;  // at least one; a single one may be a programme
  std::vector<StudioFile> logs;    // need not exist yet
  // What the student's entry says over what the studio says.
  Occasion occasion;
  Wishes practice;
  Packing packing;
  std::string note;
};

struct Studio {
  std::string title;
  std::vector<Student> students;  // at least one, at most kMostStudents
};

inline constexpr std::size_t kMostStudents = 200;

}  // namespace cahier
