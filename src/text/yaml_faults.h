// What can be wrong with a text before it is YAML at all, in words for people who do not know YAML.
#pragma once

#include "text/diagnostics.h"
#include "text/source.h"

namespace YAML {
class Exception;
}

namespace cahier {

// True when every character may stand in a YAML file. Otherwise adds an error for the first one
// that may not: not UTF-8, UTF-16, or a control character.
bool check_characters(const Source& source, Diagnostics& diagnostics);

// Adds one error for a syntax error that yaml-cpp found, in our own words.
void report_yaml_fault(const Source& source, const YAML::Exception& fault,
                       Diagnostics& diagnostics);

}  // namespace cahier
