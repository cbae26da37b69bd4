// One line on a terminal for whoever waits for a long search: what it is trying.
#pragma once

#include <unistd.h>

#include <chrono>
#include <string>
#include <string_view>

#include "plan/schedule/effort.h"
#include "text/words.h"

namespace cahier {

// Says nothing where the stream is no terminal, nor before the search has taken a while. The line
// is erased when the search is over.
class WaitingLine : public SearchWatch {
 public:
  using Clock = std::chrono::steady_clock;

  // `search` is the key of what is said until a change is tried. REQUIRES: `words` outlives this
  // object.
  WaitingLine(const Words& words, std::string_view search, int stream = STDERR_FILENO,
              Clock::duration patience = std::chrono::seconds{1});
  ~WaitingLine() override;
  WaitingLine(const WaitingLine&) = delete;
  WaitingLine& operator=(const WaitingLine&) = delete;

  void tries(const std::string& change) override;
  void goes_on() override;

 private:
  void show(const std::string& line);

  const Words& words_;
  std::string search_;
  int stream_;
  bool on_terminal_;
  Clock::time_point next_;  // when the line may change
  std::string change_;
  std::string shown_;
};

}  // namespace cahier
