// The built-in templates of a build with CAHIER_ALTER: the method is read from the file that
// CAHIER_METHOD names, where it is set.
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "text/templates.h"

namespace cahier {

// As generated from templates/.
const std::vector<BuiltIn>& unaltered_templates();

const std::vector<BuiltIn>& built_in_templates() {
  static const std::string method = [] {
    const char* const path = std::getenv("CAHIER_METHOD");
    if (!path) return std::string();
    std::ifstream file(path);
    std::string text(std::istreambuf_iterator<char>(file), {});
    // Else everything would seem to survive.
    if (text.empty()) {
      std::cerr << "CAHIER_METHOD: cannot read " << path << "\n";
      std::abort();
    }
    return text;
  }();
  static const std::vector<BuiltIn> all = [] {
    std::vector<BuiltIn> templates = unaltered_templates();
    for (BuiltIn& one : templates)
      if (one.name == "methods/steady.yaml" && !method.empty()) one.text = method;
    return templates;
  }();
  return all;
}

}  // namespace cahier
