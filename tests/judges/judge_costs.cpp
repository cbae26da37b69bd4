// judge_costs CAHIER SCORES [timed]: each of the inputs made to do harm (the folder hostile beside
// SCORES) is imported or refused, in either form, with little memory and time, as their README
// asks; and the longest of the real scores is imported in a moment. "timed" is for a release: only
// there do the seconds count. Where a folder is missing, its part is skipped.

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

constexpr double kHostileSeconds = 1;          // of the processor
constexpr long kHostileKibibytes = 64 * 1024;  // more than a tiny score takes
constexpr double kLongestScoreSeconds = 0.3;   // of the processor
constexpr int kTries = 3;                      // of which the best counts: others run beside it
const char* const kOutput = "judged.out";
const char* const kMessages = "judged.err";

struct Cost {
  int exit = -1;  // -1 when a signal ended it
  double seconds = 0;
  long kibibytes = 0;  // the most that it held at a time
};

double seconds_of(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

// What it says goes to kMessages.
Cost cost_of(std::vector<std::string> command) {
  const pid_t child = fork();
  if (child == 0) {
    const int messages = open(kMessages, O_WRONLY | O_CREAT | O_TRUNC, 0600);
    const int nothing = open("/dev/null", O_WRONLY);
    if (messages < 0 || nothing < 0 || dup2(nothing, 1) < 0 || dup2(messages, 2) < 0) _exit(126);
    std::vector<char*> words;
    for (std::string& word : command) words.push_back(word.data());
    words.push_back(nullptr);
    execv(words.front(), words.data());
    _exit(127);
  }
  Cost cost;
  int status = 0;
  rusage used{};
  if (child < 0 || wait4(child, &status, 0, &used) != child) return cost;
  if (WIFEXITED(status)) cost.exit = WEXITSTATUS(status);
  cost.seconds = seconds_of(used.ru_utime) + seconds_of(used.ru_stime);
  cost.kibibytes = used.ru_maxrss;
  return cost;
}

class CostJudge {
 public:
  CostJudge(std::string cahier, bool timed) : cahier_(std::move(cahier)), timed_(timed) {
    std::ofstream("tiny.musicxml")
        << "<score-partwise><part-list><score-part id=\"P1\"><part-name>Piano</part-name>"
           "</score-part></part-list><part id=\"P1\"><measure number=\"1\"><note><pitch><step>C"
           "</step><octave>4</octave></pitch><duration>1</duration></note></measure></part>"
           "</score-partwise>\n";
    tiny_ = import("tiny.musicxml", {});
    if (tiny_.exit != 0) fail("a tiny score", "is not imported");
  }

  void judge_hostile(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder))
      if (entry.path().extension() != ".md") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    for (const fs::path& file : files) {
      judge_hostile_file(file, {});
      judge_hostile_file(file, {"--json"});
    }
    std::printf("%zu hostile scores: at most %.2f s and %ld KiB beyond the %ld of a tiny score\n",
                files.size(), most_seconds_, most_kibibytes_, tiny_.kibibytes);
  }

  void judge_longest(const fs::path& score) {
    Cost best = import(score, {});
    for (int more = 1; more < kTries; ++more)
      best.seconds = std::min(best.seconds, import(score, {}).seconds);
    std::printf("the longest score: %.2f s\n", best.seconds);
    if (best.exit != 0) fail(score.filename(), "is not imported");
    if (timed_ && best.seconds >= kLongestScoreSeconds)
      fail(score.filename(), "takes " + std::to_string(best.seconds) + " s to import");
  }

  bool failed() const { return failed_; }

 private:
  Cost import(const fs::path& score, const std::vector<std::string>& options) const {
    std::vector<std::string> command = {cahier_, "import", score, "-o", kOutput, "--replace"};
    command.insert(command.end(), options.begin(), options.end());
    fs::remove(kOutput);
    return cost_of(std::move(command));
  }

  void judge_hostile_file(const fs::path& file, const std::vector<std::string>& options) {
    Cost cost = import(file, options);
    if (cost.exit != 0 && cost.exit != 2)
      fail(file.filename(), "ends with " + std::to_string(cost.exit) + ", not with 0 or 2");
    if (cost.exit == 2 && fs::file_size(kMessages) == 0)
      fail(file.filename(), "is refused without a word");
    if (fs::exists(kOutput) != (cost.exit == 0))
      fail(file.filename(), cost.exit == 0 ? "leaves no file" : "is refused and leaves a file");
    for (int more = 1; more < kTries && cost.seconds >= kHostileSeconds; ++more)
      cost.seconds = std::min(cost.seconds, import(file, options).seconds);
    if (timed_ && cost.seconds >= kHostileSeconds)
      fail(file.filename(), "takes " + std::to_string(cost.seconds) + " s");
    const long beyond = cost.kibibytes - tiny_.kibibytes;
    if (beyond >= kHostileKibibytes)
      fail(file.filename(), "takes " + std::to_string(beyond) + " KiB more than a tiny score");
    most_seconds_ = std::max(most_seconds_, cost.seconds);
    most_kibibytes_ = std::max(most_kibibytes_, beyond);
  }

  void fail(const std::string& what, const std::string& how) {
    std::printf("%s %s\n", what.c_str(), how.c_str());
    failed_ = true;
  }

  std::string cahier_;
  bool timed_;
  Cost tiny_;
  double most_seconds_ = 0;
  long most_kibibytes_ = 0;
  bool failed_ = false;
};

}  // namespace

int main(int count, char** arguments) {
  if (count < 3) return 2;
  const char* named = std::getenv("CAHIER_SCORES");
  const fs::path scores = named ? fs::path(named) : fs::path(arguments[2]);
  CostJudge judge(arguments[1], count > 3 && std::string(arguments[3]) == "timed");
  const fs::path hostile = fs::weakly_canonical(scores).parent_path() / "hostile";
  if (fs::exists(hostile))
    judge.judge_hostile(hostile);
  else
    std::puts("skipped: the hostile scores are not here");
  if (const fs::path longest = scores / "kralik_einleitung.mxl"; fs::exists(longest))
    judge.judge_longest(longest);
  else
    std::puts("skipped: the real scores are not here");
  return judge.failed() ? 1 : 0;
}
