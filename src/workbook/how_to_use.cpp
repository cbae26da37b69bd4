#include "workbook/sheets.h"

namespace cahier {

void draw_how_to_use(Book&) {}

}  // namespace cahier
