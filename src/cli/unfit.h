// Refuses a workbook in which a text does not fit.
#pragma once

#include <vector>

#include "text/source.h"
#include "workbook/unfit_texts.h"

namespace cahier {

// Throws InputError for each text that leaves its page, and for each text of a words file that had
// to be cut and is longer than its English, at its place in `printed`. A title or a name that is
// cut in one place stands in full in another.
void refuse_unfit(const std::vector<UnfitText>& unfit, const std::vector<Source>& printed);

}  // namespace cahier
