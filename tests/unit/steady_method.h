// The built-in method, for tests.
#pragma once

#include "catch.h"
#include "practice/read_method.h"
#include "text/templates.h"

namespace cahier::sample {

inline const Method& steady() {
  static const Method method = [] {
    Diagnostics diagnostics;
    Method read = read_method(Templates().read("methods", "steady"), "steady", diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    return read;
  }();
  return method;
}

}  // namespace cahier::sample
