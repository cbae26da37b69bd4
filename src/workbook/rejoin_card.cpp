#include "workbook/sheets.h"

namespace cahier {

void draw_rejoin_card(Book&) {}

}  // namespace cahier
