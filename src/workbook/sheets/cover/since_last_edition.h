// What has changed since the edition before, in plain words.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// Sentences for the cover, those that matter most first. REQUIRES: a later edition.
std::vector<std::string> since_last_edition(const Plan& plan, const Words& words);

}  // namespace cahier
