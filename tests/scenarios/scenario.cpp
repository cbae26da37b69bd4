#include "scenario.h"

#include <sstream>
#include <stdexcept>
#include <string_view>

namespace scenario {
namespace {

constexpr std::string_view kAny = "…";
constexpr std::string_view kMark = "=== ";

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

bool line_matches(std::string_view expected, std::string_view actual) {
  const std::size_t any = expected.find(kAny);
  if (any == std::string_view::npos) return expected == actual;
  if (!actual.starts_with(expected.substr(0, any))) return false;
  const std::string_view rest = expected.substr(any + kAny.size());
  for (std::size_t begin = any; begin <= actual.size(); ++begin) {
    if (line_matches(rest, actual.substr(begin))) return true;
  }
  return false;
}

bool lines_match(const std::vector<std::string>& expected, std::size_t next_expected,
                 const std::vector<std::string>& actual, std::size_t next_actual) {
  for (; next_expected < expected.size(); ++next_expected, ++next_actual) {
    if (expected[next_expected] == kAny) {
      for (std::size_t at = next_actual; at <= actual.size(); ++at) {
        if (lines_match(expected, next_expected + 1, actual, at)) return true;
      }
      return false;
    }
    if (next_actual >= actual.size()) return false;
    if (!line_matches(expected[next_expected], actual[next_actual])) return false;
  }
  return next_actual == actual.size();
}

// Fills the scenario section by section.
class Reader {
 public:
  explicit Reader(const std::string& text) : lines_(lines_of(text)) {}

  Scenario read() {
    while (at_ < lines_.size() && lines_[at_].starts_with("#")) {
      scenario_.shows += lines_[at_++].substr(1) + "\n";
    }
    while (at_ < lines_.size()) {
      if (!lines_[at_].starts_with(kMark)) fail("expected a line that begins with \"=== \"");
      const std::string head = lines_[at_++].substr(kMark.size());
      section(head, body());
    }
    if (scenario_.steps.empty()) fail("no \"=== run\"");
    return std::move(scenario_);
  }

 private:
  std::string body() {
    std::string text;
    while (at_ < lines_.size() && !lines_[at_].starts_with(kMark)) text += lines_[at_++] + "\n";
    return text;
  }

  void section(const std::string& head, std::string text) {
    if (head == "run") {
      scenario_.steps.push_back({std::move(text), 0, {}, {}, {}, {}});
    } else if (head.starts_with("file ") && head.ends_with(" is")) {
      step().files.emplace_back(head.substr(5, head.size() - 8), std::move(text));
    } else if (head.starts_with("file ")) {
      scenario_.inputs.emplace_back(head.substr(5), std::move(text));
    } else if (head.starts_with("no file ")) {
      step().absent.push_back(head.substr(8));
    } else if (head.starts_with("exit ")) {
      step().exit_code = std::stoi(head.substr(5));
    } else if (head == "out") {
      step().out = std::move(text);
    } else if (head == "err") {
      step().err = std::move(text);
    } else {
      fail("no such section: " + head);
    }
  }

  Step& step() {
    if (scenario_.steps.empty()) fail("stands before the first \"=== run\"");
    return scenario_.steps.back();
  }

  [[noreturn]] void fail(const std::string& what) const {
    throw std::runtime_error("line " + std::to_string(at_) + ": " + what);
  }

  std::vector<std::string> lines_;
  std::size_t at_ = 0;
  Scenario scenario_;
};

}  // namespace

Scenario read_scenario(const std::string& text) { return Reader(text).read(); }

bool matches(const std::string& expected, const std::string& actual) {
  return lines_match(lines_of(expected), 0, lines_of(actual), 0);
}

}  // namespace scenario
