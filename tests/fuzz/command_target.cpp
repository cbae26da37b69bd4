#include "command_target.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdexcept>

#include "cli/run/run.h"

namespace fuzz {
namespace {

namespace fs = std::filesystem;

constexpr int kRunsInAFolder = 100;
constexpr int kInternalError = 4;

constexpr std::pair<const char*, const char*> kFiles[] = {
    {"piece.yaml", "title: Piece\nbars: 12\nmeter: 3/4\nsections: [{name: A, bars: 1-8}]\n"},
    {"a.yaml", "title: A\nbars: 8\nlevel: 4\n"},
    {"b.yaml", "programme: An evening\npieces: [piece.yaml, a.yaml]\n"},
    {"log.yaml",
     "- {edition: 1, from: 2027-01-04, by: 2027-03-01}\n"
     "- {date: 2027-01-04, done: all, minutes: 12}\n"}};

// Holds the folder and the standard streams of this process while a command runs.
class Place {
 public:
  Place() : folder_(fs::temp_directory_path() / ("cahier-fuzz-" + std::to_string(getpid()))) {
    const int nothing = open("/dev/null", O_RDWR | O_CLOEXEC);
    for (int stream = 0; stream < 3; ++stream) {
      streams_[stream] = dup(stream);
      dup2(nothing, stream);
    }
    close(nothing);
    if (runs_++ % kRunsInAFolder == 0) fs::remove_all(folder_);
    fs::create_directories(folder_);
    for (const auto& [name, text] : kFiles) std::ofstream(folder_ / name) << text;
    before_ = fs::current_path();
    fs::current_path(folder_);
  }
  ~Place() {
    std::cout.flush();
    fs::current_path(before_);
    for (int stream = 0; stream < 3; ++stream) {
      dup2(streams_[stream], stream);
      close(streams_[stream]);
    }
  }
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;

 private:
  static inline int runs_ = 0;
  fs::path folder_;
  fs::path before_;
  std::array<int, 3> streams_{};
};

}  // namespace

std::vector<std::string> lines_of(const std::string& input) {
  std::vector<std::string> lines;
  std::istringstream stream(input);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

void run_command_line(const std::string& input) {
  if (input.find('/') != std::string::npos || input.find("..\n") != std::string::npos) return;
  const std::vector<std::string> arguments = lines_of(input);
  int code = 0;
  {
    const Place place;
    code = cahier::run(arguments, *cahier::parse_date("2027-01-04"));
  }
  if (code < 0 || code >= kInternalError)
    throw std::logic_error("the command ended with " + std::to_string(code));
}

}  // namespace fuzz
