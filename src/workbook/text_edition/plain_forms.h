// Numbers, bars and signs as they are read aloud: nothing that a screen reader skips or a braille
// printer lacks.
#pragma once

#include <string>
#include <string_view>

#include "piece/bar_range.h"
#include "practice/time_model.h"
#include "text/words.h"

namespace cahier {

// A sentence of the workbook without its signs: "4–10 January" becomes "4 to 10 January", "5½" "5
// and a half", "14 → 15" "14 then 15", and what a middle dot divides is divided by commas.
std::string in_plain_signs(const Words& words, std::string_view text);

// "bars 1 to 4", "bar 3".
std::string plain_bars(const Words& words, BarRange bars);

// "once", "5 times".
std::string plain_times(const Words& words, int times);

// "quarter note = 56 beats a minute".
std::string plain_tempo(const Words& words, const Tempo& tempo);

}  // namespace cahier
