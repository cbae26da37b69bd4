// A workbook longer than cahier prints.
#pragma once

#include <stdexcept>

namespace cahier {

// Thrown when a book would have more than kMostPages. what() says so to the user.
class TooManyPages : public std::runtime_error {
 public:
  TooManyPages();
};

}  // namespace cahier
