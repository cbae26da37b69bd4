// The small work that inputs are tried on, and what is made of it.
#pragma once

#include <string>
#include <vector>

#include "piece/piece.h"
#include "plan/plan.h"
#include "plan/terms.h"
#include "text/diagnostics.h"
#include "text/source.h"
#include "text/words.h"
#include "workbook/packet.h"

namespace fuzz {

// Longer pieces are read but not planned, to keep the fuzz quick; and not printed.
inline constexpr int kMostBars = 48;
inline constexpr int kMostBarsPrinted = 12;
inline constexpr int kMostDays = 60;

cahier::Date first_day();
cahier::Method steady();
cahier::Packet full_packet();
cahier::Piece piece_of(int bars);

// A plan from first_day(), of three weeks and a day for every bar.
cahier::Plan plan_of(const cahier::Piece& piece, const cahier::Method& method);

// The plan as text with all that can be asked for, and as JSON.
void tell(const cahier::Plan& plan, const cahier::Words& words);

// The sheets on the recording canvas, and then the PDF.
void print(const cahier::Plan& plan, const cahier::Packet& packet, const cahier::Words& words);

// Throws std::logic_error when a refusal says nothing, or has no end.
void require_words(const cahier::Diagnostics& diagnostics);

// Adds the characters of the input that no typeface prints.
void require_typefaces(const cahier::Source& source, cahier::Diagnostics& diagnostics);

// Gives the input to `read` as a file; true when it was sound and can be printed.
template <typename Read>
bool reads(const std::string& input, Read read) {
  cahier::Diagnostics diagnostics;
  const cahier::Source source("input.yaml", input);
  read(source, diagnostics);
  require_typefaces(source, diagnostics);
  require_words(diagnostics);
  return !diagnostics.has_errors();
}

}  // namespace fuzz
