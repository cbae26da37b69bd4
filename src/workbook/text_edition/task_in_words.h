// A task in words: what a sighted player finds in its row of a day's panel.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// What is said besides what the task itself tells.
struct SaidOfTask {
  bool explained = false;     // what its drill means
  bool if_unlearned = false;  // to learn its bars where they are not
};

// Paragraphs of a line each: drill, bars and code; then what is to be done, how often and how fast;
// then what else is to be kept in mind. `number` is its place in the day.
std::vector<std::string> task_in_words(const Words& words, const Plan& plan, const Task& task,
                                       int number, SaidOfTask said);

}  // namespace cahier
