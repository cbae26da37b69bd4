#include "workbook/sheets.h"

namespace cahier {

void draw_day_panels(Book&) {}

}  // namespace cahier
