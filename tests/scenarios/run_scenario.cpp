// Runs one scenario file and says what came out otherwise.
//   run_scenario FILE CAHIER TEMPLATES FOLDER
// FOLDER is emptied first and holds the scenario's files; commands are run there by /bin/sh, with
// `cahier` on the path and nothing else in the environment than $TEMPLATES, the built-in templates'
// folder.
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>

#include "scenario.h"

namespace {

namespace fs = std::filesystem;

std::string read_file(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  if (!stream) throw std::runtime_error(path.string() + " is not there");
  return {std::istreambuf_iterator<char>(stream), {}};
}

void write_file(const fs::path& path, const std::string& text) {
  if (path.has_parent_path()) fs::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << text;
}

std::string in_quotes(const std::string& word) { return "'" + word + "'"; }

class Run {
 public:
  Run(const fs::path& cahier, const fs::path& templates, fs::path folder)
      : folder_(std::move(folder)) {
    environment_ = "env -i LANG=C TZ=UTC PATH=" + in_quotes(cahier.parent_path().string()) +
                   ":/usr/bin:/bin HOME=" + in_quotes(folder_.string()) +
                   " TEMPLATES=" + in_quotes(templates.string());
    out_ = folder_.string() + ".out";
    err_ = folder_.string() + ".err";
  }

  // True when everything was as expected.
  bool step(const scenario::Step& step) {
    const std::string script = folder_.string() + ".sh";
    write_file(script, step.command);
    const std::string line = "cd " + in_quotes(folder_.string()) + " && " + environment_ +
                             " /bin/sh " + in_quotes(script) + " >" + in_quotes(out_) + " 2>" +
                             in_quotes(err_) + " </dev/null";
    const int status = std::system(line.c_str());
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    bool good = compare("exit code", std::to_string(step.exit_code), std::to_string(code));
    if (step.out || step.exit_code >= 2)
      good = compare("output", step.out.value_or(""), read_file(out_)) && good;
    good = compare("error text", step.err.value_or(""), read_file(err_)) && good;
    for (const auto& [path, text] : step.files) {
      const fs::path file = folder_ / path;
      good = compare(path, text, fs::exists(file) ? read_file(file) : "(not there)") && good;
    }
    for (const std::string& path : step.absent) {
      if (!fs::exists(folder_ / path)) continue;
      std::cout << "--- " << path << " is there and should not be\n";
      good = false;
    }
    if (!good) std::cout << "--- after: " << step.command << "\n";
    return good;
  }

 private:
  static bool compare(const std::string& what, const std::string& expected,
                      const std::string& actual) {
    if (scenario::matches(expected, actual)) return true;
    std::cout << "--- " << what << " expected\n"
              << expected << "\n--- " << what << " found\n"
              << actual << "\n";
    return false;
  }

  fs::path folder_;
  std::string environment_, out_, err_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc != 5) {
    std::cerr << "run_scenario FILE CAHIER TEMPLATES FOLDER\n";
    return 2;
  }
  try {
    const scenario::Scenario scenario = scenario::read_scenario(read_file(argv[1]));
    const fs::path folder = fs::absolute(argv[4]);
    fs::remove_all(folder);
    fs::create_directories(folder);
    for (const auto& [path, text] : scenario.inputs) write_file(folder / path, text);
    Run run(fs::absolute(argv[2]), fs::absolute(argv[3]), folder);
    bool good = true;
    for (const scenario::Step& step : scenario.steps) good = run.step(step) && good;
    if (!good) std::cout << "which shows:\n" << scenario.shows;
    return good ? 0 : 1;
  } catch (const std::exception& error) {
    std::cout << argv[1] << ": " << error.what() << "\n";
    return 2;
  }
}
