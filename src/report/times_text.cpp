#include "report/times_text.h"

#include "text/phrasing.h"

namespace cahier {

std::string times_text(const Words& words, const std::vector<int>& times, int of) {
  const int count = static_cast<int>(times.size());
  if (count == 0 || count == of) return {};
  if (of == 2) return words.say(times.front() == 1 ? "times.first" : "times.second");
  if (count == 1 && times.front() == of) return words.say("times.last");
  if (count == of - 1 && times.back() == of - 1) return words.say("times.all_but_last");
  if (count == 1) return words.say("times.one", {{"number", times.front()}});
  std::vector<std::string> numbers;
  for (const int time : times) numbers.push_back(std::to_string(time));
  return words.say("times.listed", {{"numbers", list_text(words, numbers)}});
}

}  // namespace cahier
