// Damages sound inputs, the same way every time, and gives them to the program's functions.
//   fuzz_inputs SOURCE FOUND       some seconds; with CAHIER_LONG=1 in the environment a good
//   minute fuzz_inputs --replay KEPT FOUND
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
#include <map>

#include "mutate.h"
#include "targets.h"

namespace {

namespace fs = std::filesystem;
using Inputs = std::map<std::string, std::vector<std::string>, std::less<>>;

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

Inputs sound_inputs(const fs::path& source) {
  Inputs inputs;
  for (const char* folder : {"examples", "tests/judges/pieces"})
    for (const fs::path& file : sorted_files(source / folder))
      if (file.extension() == ".yaml") inputs["piece"].push_back(read_file(file));
  inputs["piece"].push_back(
      "title: All\nbars: 24\npickup: 1\nmeter: 3/4\nkey: A minor\ntempo: 132\nbeat: quarter\n"
      "level: 3\nparts: [right hand, left hand]\nchanges:\n  - {bar: 9, meter: 6/8, tempo: 60}\n"
      "sections:\n  - {name: A, bars: 1-8, phrases: [1-4, 5-8]}\n  - {name: B, bars: 9-16, level: "
      "5}\n  - {name: A again, bars: 17-24, same as: 1-8}\nlook-alikes: [{bars: [1-4, 9-12], fork: "
      "[3, 11]}]\nrepeats: [{bars: 1-8, times: 2}]\nmarks: [{bar: 9, note: \"loud\"}]\ncues: [5]\n"
      "hard: [{bars: 11-12, level: 5}]\npractice:\n  minutes: {mon: 15, sat: 30}\n  days off: "
      "[sun]\n  temper: yes\n");
  inputs["print"] = inputs["piece"];
  inputs["programme"] = {
      "programme: An evening\nby: 2027-06-01\nfrom: 2027-01-04\npieces: [a.yaml, "
      "b.yaml]\npractice: "
      "{minutes: 30, days off: [sun]}\n"};
  inputs["log"] = {
      "- edition: 1\n  from: 2027-01-04\n  by: 2027-03-20\n  minutes: 15\n  cues: [1, 9, 17]\n  "
      "tasks:\n    0104-1: {learn: 1-4, chunk: A1, minutes: 5.5}\n    0105-1: {recall: 1-4}\n    "
      "0105-2: {cue_starts: [1, 3], throws: 4}\n- {date: 2027-01-04, done: [1], minutes: 14}\n"
      "- {date: 2027-01-05, done: all, slips: [2], starts: {hit: [1], miss: [1, 3]}}\n"
      "- {date: 2027-01-05, learned: {bars 5-24: {minutes: 9}}, recalled: [bars 1-8, 9]}\n"
      "- {date: 2027-01-06, run: [{slips: [17, 20], rejoined: [21], recorded: yes}, {slips: "
      "none}]}\n",
      "- {edition: 1, from: 2027-01-04, by: 2027-02-20}\n- {date: 2027-01-04, done: all}\n- {date: "
      "2027-01-05, done: [0105-1], learned: A2, slips: 3}\n- {edition: 2, from: 2027-01-11}\n- "
      "{date: 2027-01-12, starts: {hit: 1}, recalled: bars 1-8, piece: 1}\n",
      "- {date: 2027-02-01, learned: bars 1-24}\n- {edition: 1, from: 2027-01-04, keep: yes}\n"};
  for (const auto& [target, folder] :
       {std::pair{"method", "methods"}, {"packet", "packets"}, {"words", "words"}})
    for (const fs::path& file : sorted_files(source / "templates" / folder))
      inputs[target].push_back(read_file(file));
  inputs["arguments"] = {
      "print\npiece.yaml\n--by\n2027-03-20\n--from=2027-01-04\n--minutes\nmon:15,sat:30\n--days-"
      "off\n"
      "sun,2027-02-14,2027-02-20..2027-02-23\n--paper\nletter\n--staff=9.5\n--packet\nwall\n-o\nx."
      "pdf\n--anyway\n",
      "plan\npiece.yaml\n--by=2027-03-20\n--json\n--why\n--blocks\n2\n--lesson\nthu\n--order\n"
      "hardest-first\n--temper=weak\n--new-to-performing\nyes\n--repetitions\n3\n--chunk-bars=6\n--"
      "method\nsteady\n",
      "report\npiece.yaml\n-\n--log\na.yaml\n--log=b.yaml\n--week\n2027-01-06\n--keep=2027-06-01\n",
      "check\na.yaml\nb.yaml\n--templates\nown\n", "new\n-o\nmine.yaml\n--help\n--version\n"};
  return inputs;
}

int fuzz_all(const fs::path& source, const fs::path& found) {
  const Inputs inputs = sound_inputs(source);
  const bool is_long = std::getenv("CAHIER_LONG") != nullptr;
  const auto until = std::chrono::steady_clock::now() + std::chrono::seconds(is_long ? 60 : 1000);
  const std::size_t rounds = is_long ? 1000000 : 200;
  int failures = 0;
  std::size_t taken = 0;
  for (std::size_t round = 0; round < rounds && std::chrono::steady_clock::now() < until; ++round) {
    for (const fuzz::Target& target : fuzz::targets()) {
      if (target.name == "print" && round % 20 != 0) continue;
      fuzz::Chance chance(round * 1000003 + target.name.size());
      const auto& sound = inputs.find(target.name)->second;
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

int replay(const fs::path& kept, const fs::path& found) {
  int failures = 0;
  std::size_t taken = 0;
  for (const fs::path& file : sorted_files(kept)) {
    const std::string name = file.filename().string();
    for (const fuzz::Target& target : fuzz::targets()) {
      if (!name.starts_with(std::string(target.name) + "-")) continue;
      failures += take(target, read_file(file), (found / name).string()) ? 0 : 1;
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
  if (argc == 3) return fuzz_all(argv[1], argv[2]);
  std::cerr << "fuzz_inputs SOURCE FOUND, or fuzz_inputs --replay KEPT FOUND\n";
  return 2;
}
