#include "task_minutes.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

namespace exact {
namespace {

// The traditional scale: by 2, 3, 4, 6 and 8 (Grove's Dictionary, first edition, vol. 2 p. 320 for
// the range).
double mark_below(double tempo) {
  struct Stretch {
    int first, last, step;
  };
  constexpr Stretch kScale[] = {
      {40, 60, 2}, {63, 72, 3}, {76, 120, 4}, {126, 144, 6}, {152, 208, 8}};
  if (tempo < 40) return std::max(10.0, std::floor(tempo));
  int below = 40;
  for (const Stretch& stretch : kScale)
    for (int mark = stretch.first; mark <= stretch.last; mark += stretch.step)
      if (mark <= tempo) below = mark;
  return below;
}

int half_minutes(double minutes) {
  return std::max(1, static_cast<int>(std::ceil(minutes * 2 - 1e-9)));
}

}  // namespace

Numbers read_numbers(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path);
  Numbers numbers;
  for (std::string line; std::getline(file, line);) {
    const std::size_t key_end = line.find(": {value: ");
    if (key_end == std::string::npos || line[0] == '#') continue;
    std::string values = line.substr(key_end + 10);
    values = values.substr(0, values.find(", source"));
    std::replace_if(
        values.begin(), values.end(), [](char c) { return c == '[' || c == ']' || c == ','; }, ' ');
    std::vector<double>& list = numbers[line.substr(0, key_end)];
    for (const char* at = values.c_str();;) {
      char* end = nullptr;
      const double value = std::strtod(at, &end);
      if (end == at) break;
      list.push_back(value);
      at = end;
    }
  }
  return numbers;
}

TaskMinutes::TaskMinutes(const SmallWork& work, const Numbers& method)
    : work_(work), method_(method) {}

double TaskMinutes::number(const std::string& key) const { return by_level(key, 1); }

double TaskMinutes::by_level(const std::string& key, int level) const {
  const auto found = method_.find(key);
  if (found == method_.end() || static_cast<int>(found->second.size()) < level)
    throw std::runtime_error("the method has no number \"" + key + "\"");
  return found->second[static_cast<std::size_t>(level - 1)];
}

double TaskMinutes::playing(const Bars& bars, double share) const {
  double minutes = 0;
  for (int bar = bars.first; bar <= bars.last; ++bar)
    minutes += (bar == 0 ? work_.pickup_quarters : work_.quarters) /
               (work_.tempo_at(bar) * work_.beat_quarters);
  const double tempo = work_.tempo_at(bars.first);
  return share >= 1 ? minutes : minutes * tempo / mark_below(tempo * share);
}

int TaskMinutes::learn(const Bars& bars, int level) const {
  const double once =
      playing(bars, by_level("learn tempo", level)) * by_level("learn stumble", level) +
      number("learn pause") / 60;
  const int steps = work_.parts == 1 ? 1 : work_.parts + 1;
  return half_minutes(number("setup") / 60 + steps * work_.repetitions * once);
}

double TaskMinutes::once(const Bars& bars, int level, const std::string& tempo) const {
  const double share =
      std::min(1.0, number(tempo) * by_level("learn tempo", level) / by_level("learn tempo", 2));
  return number("setup") / 60 + playing(bars, share) * number("recall stumble");
}

int TaskMinutes::from_memory(const Bars& bars, int level, const std::string& tempo) const {
  return half_minutes(once(bars, level, tempo));
}

int TaskMinutes::slow_pass(const Bars& bars, int level) const {
  const double passages = (bars.last - bars.first + 1) / number("chunk most");
  const double holds = std::pow(1 - by_level("slip chance", level), passages);
  return half_minutes(once(bars, level, "slow tempo") * (2 - holds));
}

int TaskMinutes::starts(int count) const {
  return count == 0 ? 0 : half_minutes(count * number("cue start seconds") / 60);
}

int TaskMinutes::run_through() const {
  return half_minutes(number("run setup") / 60 + playing({work_.first_bar(), work_.bars}, 1));
}

}  // namespace exact
