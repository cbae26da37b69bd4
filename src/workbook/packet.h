// Which sheets, in which order, for whom; read from templates/packets/NAME.yaml.
#pragma once

#include <string>
#include <vector>

#include "text/diagnostics.h"
#include "text/source.h"
#include "workbook/all_sheets.h"

namespace cahier {

struct Packet {
  std::string name{};  // of its file, without .yaml; empty where that is not known
  std::vector<Sheet> sheets;
  bool teacher = false;  // with the teacher's lines and sign-off
};

// Adds every problem to `diagnostics`; usable only when no error was added.
Packet read_packet(const Source& source, Diagnostics& diagnostics);

}  // namespace cahier
