// What a teacher would ask of a plan, in words.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "plan/quality/quality.h"
#include "text/words.h"

namespace cahier {

// The words of the catalogue's keys under "teacher_asks", in the order of the enumeration.
std::span<const std::string_view> lack_words();

// One sentence, with its piece where there are several, and a second one where something would make
// room.
std::string say_shortfall(const Words& words, const Plan& plan, const Shortfall& shortfall);

// The paragraph at the end of a plan's text, with a line before it; empty where nothing is short,
// and where the work does not fit: then the remedies come first.
std::string teacher_text(const Plan& plan, const Words& words);

}  // namespace cahier
