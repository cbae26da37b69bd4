// The line for whoever waits, on a terminal made for the test (posix_openpt, POSIX.1-2017).
#include "cli/waiting_line.h"

#include <fcntl.h>

#include <cstdlib>
#include <thread>

#include "catch.h"
#include "plan/search/remedies.h"
#include "sample_plan.h"
#include "text/utf8.h"

namespace cahier {
namespace {

using namespace std::chrono_literals;

// Both ends of a terminal: what is written to `far` is read as a screen would get it.
class SampleTerminal {
 public:
  SampleTerminal() : near_(::posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK)) {
    REQUIRE(near_ >= 0);
    REQUIRE(::grantpt(near_) == 0);
    REQUIRE(::unlockpt(near_) == 0);
    far_ = ::open(::ptsname(near_), O_RDWR | O_NOCTTY);
    REQUIRE(far_ >= 0);
  }
  ~SampleTerminal() {
    ::close(far_);
    ::close(near_);
  }

  int far() const { return far_; }
  std::string screen() const {
    std::string text;
    char part[4096];
    for (ssize_t got = 0; (got = ::read(near_, part, sizeof part)) > 0;)
      text.append(part, static_cast<std::size_t>(got));
    return text;
  }

 private:
  int near_;
  int far_ = -1;
};

constexpr std::string_view kLooking = "Looking for what would make it fit …";

}  // namespace

TEST_CASE("a search that takes a while says on a terminal what it tries, and erases it") {
  const SampleTerminal terminal;
  {
    WaitingLine line(english_words(), "waiting.remedies", terminal.far(), 0s);
    CHECK(terminal.screen().empty());
    line.goes_on();
    CHECK(terminal.screen() == "\r" + std::string(kLooking));
    line.tries("--minutes 22");
    line.goes_on();  // too soon to be read
    CHECK(terminal.screen().empty());
    std::this_thread::sleep_for(300ms);
    line.goes_on();
    CHECK(terminal.screen() == "\rLooking for what would make it fit: trying --minutes 22 …");
  }
  CHECK(terminal.screen() == "\r" + std::string(57, ' ') + "\r");
}

TEST_CASE("a search that is soon over says nothing, nor does one whose words nobody sees") {
  const SampleTerminal terminal;
  {
    WaitingLine line(english_words(), "waiting.plan", terminal.far());
    line.goes_on();
  }
  CHECK(terminal.screen().empty());
  int ends[2];
  REQUIRE(::pipe2(ends, O_NONBLOCK) == 0);
  {
    WaitingLine line(english_words(), "waiting.plan", ends[1], 0s);
    line.goes_on();
  }
  char byte = 0;
  CHECK(::read(ends[0], &byte, 1) < 0);
  ::close(ends[0]);
  ::close(ends[1]);
}

TEST_CASE("a line stays beside the terminal's edge, and holds nothing that moves the cursor") {
  const SampleTerminal terminal;
  WaitingLine line(english_words(), "waiting.remedies", terminal.far(), 0s);
  line.tries(std::string(100, 'x') + "\n");
  line.goes_on();
  CHECK(count_characters(terminal.screen()) == 80);  // 79 and the return before them
  line.goes_on();
}

TEST_CASE("remedies tell which change they try, and every search that it goes on") {
  struct Counting : SearchWatch {
    void tries(const std::string& change) override { changes.push_back(change); }
    void goes_on() override { ++steps; }
    std::vector<std::string> changes;
    int steps = 0;
  };
  const std::vector<Piece> pieces = {sample::piece("title: A\nbars: 16\nlevel: 4\n")};
  const Terms terms =
      settle(sample::date("2027-03-01"), sample::date("2027-03-06"), {}, sample::steady());
  Counting plan_watch;
  Effort of_plan(kMostEffort, &plan_watch);
  CHECK_FALSE(make_plan(pieces, terms, of_plan).fits);
  CHECK(plan_watch.steps > 0);
  CHECK(plan_watch.changes.empty());
  Counting watch;
  Effort of_remedies(kMostEffort, &watch);
  const std::vector<Remedy> found = remedies(pieces, terms, std::nullopt, of_remedies);
  CHECK(watch.steps > 0);
  for (const Remedy& remedy : found) {
    CAPTURE(remedy.say);
    CHECK(std::find(watch.changes.begin(), watch.changes.end(), remedy.say) != watch.changes.end());
  }
}

}  // namespace cahier
