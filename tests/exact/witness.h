// A plan that the solver found, written out task by task for the judge of plans.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "cut_work.h"
#include "task_minutes.h"

namespace exact {

// The breaches that tests/judges finds in the solver's plan, read from `answer`. `plan` is what the
// program says of the same work: its calendar and sections.
// Throws std::runtime_error when there is no plan in the answer.
std::vector<std::string> breaches_of_answer(std::istream& answer, judge::Plan plan,
                                            const SmallWork& work, const CutWork& cut,
                                            const TaskMinutes& minutes);

}  // namespace exact
