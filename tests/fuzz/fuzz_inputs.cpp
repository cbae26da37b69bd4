// Damages sound inputs, the same way every time, and gives them to the program's functions.
//   fuzz_inputs SOURCE FOUND         some seconds; fuzz.sh looks longer and further
//   fuzz_inputs --replay KEPT FOUND  gives them what once failed
//   fuzz_inputs --seeds SOURCE INTO  only writes the sound inputs, a folder for each target
// An input that fails is written to FOUND/TARGET-NUMBER.txt; move it to tests/fuzz/kept, and the
// normal tests replay it. The signals of a crash, and of an input that takes longer than ten
// seconds, are caught only to write the input.
#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include "mutate.h"
#include "sound_inputs.h"
#include "targets.h"

namespace {

namespace fs = std::filesystem;

// What the signal handler needs; it may call nothing that allocates.
struct AtWork {
  char path[1024] = {};
  const char* data = nullptr;
  std::size_t size = 0;
};
AtWork at_work;

void keep_and_die(int signal) {
  const int file = open(at_work.path, O_WRONLY | O_CREAT | O_TRUNC, 0644);
  if (file >= 0 && write(file, at_work.data, at_work.size) >= 0) close(file);
  constexpr char kSaid[] = "a crash or an endless input; it is written to ";
  if (write(2, kSaid, sizeof kSaid - 1) > 0 &&
      write(2, at_work.path, std::strlen(at_work.path)) > 0)
    static_cast<void>(write(2, "\n", 1) > 0);
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

// True when the target took the input without a fault.
bool take(const fuzz::Target& target, const std::string& input, const std::string& kept_as) {
  std::strncpy(at_work.path, kept_as.c_str(), sizeof at_work.path - 1);
  at_work.data = input.data();
  at_work.size = input.size();
  alarm(10);
  try {
    target.take(input);
    alarm(0);
    return true;
  } catch (const std::exception& error) {
    alarm(0);
    std::cout << target.name << ": " << error.what() << "; the input is " << kept_as << "\n";
  }
  std::ofstream(kept_as, std::ios::binary) << input;
  return false;
}

constexpr std::size_t kRounds = 200;
constexpr std::size_t kRoundsToPrint = 20;  // of as many inputs one is printed

int fuzz_all(const fs::path& source, const fs::path& found) {
  const fuzz::Inputs inputs = fuzz::sound_inputs(source);
  int failures = 0;
  std::size_t taken = 0;
  for (std::size_t round = 0; round < kRounds; ++round) {
    for (const fuzz::Target& target : fuzz::targets()) {
      if (target.prints && round % kRoundsToPrint != 0) continue;
      fuzz::Chance chance(round * 1000003 + target.name.size());
      const auto& sound = inputs.at(std::string(target.kind));
      const std::string& one = sound[chance.below(sound.size())];
      const std::string& other = sound[chance.below(sound.size())];
      const std::string input = round == 0 ? one : fuzz::damaged(one, other, chance);
      const fs::path kept_as =
          found / (std::string(target.name) + "-" + std::to_string(round) + ".txt");
      failures += take(target, input, kept_as.string()) ? 0 : 1;
      ++taken;
    }
  }
  std::cout << taken << " inputs, " << failures << " failed\n";
  return failures == 0 ? 0 : 1;
}

int write_seeds(const fs::path& source, const fs::path& folder) {
  const fuzz::Inputs inputs = fuzz::sound_inputs(source);
  for (const fuzz::Target& target : fuzz::targets()) {
    const fs::path into = folder / target.name;
    fs::create_directories(into);
    std::size_t number = 0;
    for (const std::string& input : inputs.at(std::string(target.kind)))
      std::ofstream(into / ("sound-" + std::to_string(++number)), std::ios::binary) << input;
  }
  return 0;
}

int replay(const fs::path& kept, const fs::path& found) {
  int failures = 0;
  std::size_t taken = 0;
  for (const fs::path& file : fuzz::sorted_files(kept)) {
    const std::string name = file.filename().string();
    for (const fuzz::Target& target : fuzz::targets()) {
      if (!name.starts_with(std::string(target.kind) + "-")) continue;
      failures += take(target, fuzz::read_file(file), (found / name).string()) ? 0 : 1;
      ++taken;
    }
  }
  std::cout << taken << " kept inputs, " << failures << " failed\n";
  return failures == 0 && taken > 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  for (const int signal : {SIGSEGV, SIGABRT, SIGFPE, SIGBUS, SIGILL, SIGALRM})
    std::signal(signal, keep_and_die);
  if (argc == 4 && std::string_view(argv[1]) == "--replay") return replay(argv[2], argv[3]);
  if (argc == 4 && std::string_view(argv[1]) == "--seeds") return write_seeds(argv[2], argv[3]);
  if (argc == 3) return fuzz_all(argv[1], argv[2]);
  std::cerr << "fuzz_inputs SOURCE FOUND, --replay KEPT FOUND, or --seeds SOURCE INTO\n";
  return 2;
}
