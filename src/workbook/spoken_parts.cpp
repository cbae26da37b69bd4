#include "workbook/sheets.h"

namespace cahier {

void draw_spoken_parts(Book&) {}

}  // namespace cahier
