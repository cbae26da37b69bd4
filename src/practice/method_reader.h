// The fields of a method file, each with its bounds and its source.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "practice/method.h"
#include "text/yaml.h"

namespace cahier {

// Reads the fields of a method one by one; each names its key, its bounds and where it goes.
class MethodReader {
 public:
  MethodReader(const Source& source, const YamlNode& root, Diagnostics& diagnostics)
      : source_(source), diagnostics_(diagnostics), fields_(source, root, diagnostics) {}

  std::string about() { return fields_.text("about").value_or(""); }

  void number(std::string_view key, double& target, double least, double most);

  void whole(std::string_view key, int& target, int least, int most);

  // `example` is a list within the bounds.
  void by_level(std::string_view key, ByLevel& target, double least, double most,
                std::string_view example);

  void spacing(std::vector<Method::Spacing>& target);

  // Days, in falling order.
  void falling_days(std::string_view key, std::vector<int>& target, int most);

  void runs_apart(std::vector<Method::RunsApart>& target);

  // For a rule between two fields; it is told at `key`. Nothing is said where either has a fault of
  // its own.
  void require(bool holds, std::string_view key, std::string_view other, std::string message);

  void finish() { fields_.refuse_unknown(); }

 private:
  // The value beside a source; nullptr, with an error, when either is not there.
  const YamlNode* sourced(std::string_view key);

  // Whether the number can be used.
  bool take(const YamlNode& node, std::string_view key, double& target, double least, double most);

  bool take_whole(const YamlNode& node, std::string_view key, int& target, int least, int most);

  const Source& source_;
  Diagnostics& diagnostics_;
  YamlFields fields_;
  std::set<std::string, std::less<>> faulty_;  // keys without a number that can be used
};

}  // namespace cahier
