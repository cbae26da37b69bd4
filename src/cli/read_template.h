// A template, read and checked.
#pragma once

#include <string>
#include <string_view>

#include "cli/file_kind.h"
#include "text/diagnostics.h"
#include "text/errors.h"
#include "text/templates.h"

namespace cahier {

// Reads a template of a kind, "methods", "packets" or "words", with `read`, and throws InputError
// with every problem found.
template <typename Read>
auto read_checked(const Source& source, std::string_view kind, Read read) {
  Diagnostics diagnostics;
  if (!admit(source,
             kind == "methods"   ? "a method"
             : kind == "packets" ? "a packet"
                                 : "a language of words",
             diagnostics))
    throw InputError(diagnostics.all());
  auto result = read(source, diagnostics);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
  return result;
}

// The same for the template of a name.
template <typename Read>
auto read_template(const Templates& templates, std::string_view kind, const std::string& name,
                   Read read) {
  return read_checked(templates.read(kind, name), kind, read);
}

}  // namespace cahier
