// Texts of a drawn book that are too long for their places.
#pragma once

#include <string>
#include <vector>

#include "paper/margins.h"
#include "paper/recording_canvas.h"

namespace cahier {

struct UnfitText {
  enum class Kind { cut, beyond_page };
  Kind kind = Kind::cut;
  std::string line;  // as drawn: one line of a longer text, or its beginning
  int page = 1;
};

// Every line of which a part was left out, and the longest on each page that lies outside the
// margins: the one that tells most of where it comes from. Each line once, in the order of the
// pages.
std::vector<UnfitText> unfit_texts(const RecordingCanvas& drawn, const Margins& margins);

}  // namespace cahier
