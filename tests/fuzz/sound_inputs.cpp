#include "sound_inputs.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <utility>

#include "../scenarios/scenario.h"
#include "../unit/zipped.h"

namespace fuzz {
namespace {

namespace fs = std::filesystem;

// What a file in a folder of that name holds; without such a folder, what it begins with tells.
std::string kind_of(const std::string& path, const std::string& text) {
  for (const auto& [folder, kind] :
       {std::pair{"words/", "words"}, {"packets/", "packet"}, {"methods/", "method"}})
    if (path.find(folder) != std::string::npos) return kind;
  if (path.ends_with(".musicxml")) return "score";
  if (text.starts_with("-")) return "log";
  return text.find("programme:") != std::string::npos ? "programme" : "piece";
}

// The words after "cahier", each on a line of its own; empty where the shell is needed to read
// them.
std::string arguments_of(std::string command) {
  while (command.ends_with('\n')) command.pop_back();
  if (!command.starts_with("cahier ") ||
      command.find_first_of("|<>$`\\;&*/\n") != std::string::npos)
    return {};
  std::string lines;
  char quoted = 0;
  for (const char sign : command.substr(7)) {
    if (quoted != 0 ? sign == quoted : sign == '\'' || sign == '"')
      quoted = quoted != 0 ? 0 : sign;
    else
      lines += sign == ' ' && quoted == 0 ? '\n' : sign;
  }
  return lines + "\n";
}

void add_scenarios(const fs::path& folder, Inputs& inputs) {
  for (const fs::path& file : sorted_files(folder)) {
    if (file.extension() != ".txt" || file.filename() == "CMakeLists.txt") continue;
    const scenario::Scenario shown = scenario::read_scenario(read_file(file));
    for (const auto& [path, text] : shown.inputs) inputs[kind_of(path, text)].push_back(text);
    for (const scenario::Step& step : shown.steps) {
      const std::string arguments = arguments_of(step.command);
      if (!arguments.empty()) inputs["arguments"].push_back(arguments);
    }
  }
}

}  // namespace

std::string read_file(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<fs::path> sorted_files(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder)) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

Inputs sound_inputs(const fs::path& source) {
  Inputs inputs;
  for (const auto& [folder, kind] : {std::pair{"examples", "piece"},
                                     {"tests/judges/pieces", "piece"},
                                     {"templates/methods", "method"},
                                     {"templates/packets", "packet"},
                                     {"templates/words", "words"}})
    for (const fs::path& file : sorted_files(source / folder))
      if (file.extension() == ".yaml") inputs[kind].push_back(read_file(file));
  add_scenarios(source / "tests/scenarios", inputs);
  // KIND-….txt
  for (const char* folder : {"sound", "kept"})
    for (const fs::path& file : sorted_files(source / "tests/fuzz" / folder)) {
      const std::string name = file.filename().string();
      inputs[name.substr(0, name.find('-'))].push_back(read_file(file));
    }
  for (const std::string& score : inputs.at("score"))
    inputs["archive"].push_back(cahier::written::zipped(
        {{"META-INF/container.xml", cahier::written::container("score.xml")},
         {"score.xml", score}}));
  return inputs;
}

}  // namespace fuzz
