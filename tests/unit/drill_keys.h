// The keys of the catalogue that the program composes from a drill's row.
#pragma once

#include <set>
#include <string>

#include "practice/drill.h"

namespace cahier::sample {

inline std::set<std::string> keys_of(const DrillFacts& facts) {
  const std::string word(facts.word);
  std::set<std::string> keys = {"how_to_use." + word, "task.means_" + word};
  const auto counted = [&](const std::string& key) {
    keys.insert(key + "_one");
    keys.insert(key + "_other");
  };
  switch (facts.covers) {
    case Covers::chunk:
    case Covers::bars:
      keys.insert({"drills." + word, "task." + word});
      break;
    case Covers::piece:
      counted("drills." + word);
      keys.insert("task." + word);
      break;
    case Covers::starts:
      keys.insert("drills." + word + "_in");
      counted("task." + word);
      break;
  }
  if (facts.drill == Drill::learn)
    keys.insert(std::string(facts.counted));
  else
    counted(std::string(facts.counted));
  return keys;
}

}  // namespace cahier::sample
