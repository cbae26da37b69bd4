// The templates (methods, packets, words): built into the program, replaceable file by file.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/source.h"

namespace cahier {

struct BuiltIn {
  std::string_view name;  // "methods/steady.yaml"
  std::string_view text;
};
const std::vector<BuiltIn>& built_in_templates();

class Templates {
 public:
  // `directory` may be empty: only what is built in is used. Throws FileError when anything there
  // cannot be read, InputError when it holds what would be ignored (hidden files aside).
  explicit Templates(std::string directory = {});

  // The file of the directory when it is there, else the built-in one. `kind` is "methods",
  // "packets" or "words". Throws InputError with a did-you-mean when neither is there.
  Source read(std::string_view kind, std::string_view name) const;

  // Every name of a kind, sorted, built in or in the directory.
  std::vector<std::string> names(std::string_view kind) const;

 private:
  std::string directory_;
};

}  // namespace cahier
