// cahier: from a piece and a date to a printed workbook for playing from memory.
#include <algorithm>
#include <chrono>
#include <csignal>
#include <string>
#include <vector>

#include "cli/run/run.h"
#include "cli/say.h"

int main(int argc, char** argv) {
  cahier::keep_closed_streams();
  // A limit on the size of files is an error like any other, and is reported.
  std::signal(SIGXFSZ, SIG_IGN);
  // The only clock of the program: the first day of practice when none is given. Local time, so
  // that an evening's plan begins on that evening's date.
  const auto now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  const auto today = std::chrono::sys_days(std::chrono::year(local.tm_year + 1900) /
                                           (local.tm_mon + 1) / local.tm_mday);
  // Not even the program's name is certain to be there.
  return cahier::run(std::vector<std::string>(argv + std::min(argc, 1), argv + argc), today);
}
