// What the teacher has written to the student.
#pragma once

#include <string>

#include "text/words.h"
#include "workbook/print.h"

namespace cahier {

// REQUIRES: there is a note.
inline std::string teachers_note(const Words& words, const PrintedNames& names) {
  if (names.teacher.empty()) return words.say("cover.note", {{"note", names.note}});
  return words.say("cover.note_of", {{"teacher", names.teacher}, {"note", names.note}});
}

}  // namespace cahier
