// One target for libFuzzer: its name stands in CAHIER_TARGET. Run by fuzz.sh.
#include <cstdint>
#include <cstdlib>
#include <iostream>

#include "targets.h"

namespace {

const fuzz::Target& chosen() {
  const char* name = std::getenv("CAHIER_TARGET");
  for (const fuzz::Target& target : fuzz::targets())
    if (name != nullptr && target.name == name) return target;
  std::cerr << "CAHIER_TARGET must be one of:";
  for (const fuzz::Target& target : fuzz::targets()) std::cerr << " " << target.name;
  std::cerr << "\n";
  std::exit(2);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Target& target = chosen();
  target.take({reinterpret_cast<const char*>(data), size});
  return 0;
}
