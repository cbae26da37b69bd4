// The data of rules.mzn for one small work, cut in one way, within one allowance.
#pragma once

#include <iosfwd>
#include <string>

#include "cut_work.h"
#include "task_minutes.h"

namespace exact {

// Everything but the given plan.
void write_data(std::ostream& out, const SmallWork& work, const CutWork& cut,
                const TaskMinutes& minutes, int halves);

// No given plan.
void write_free(std::ostream& out);

// "name = [1, 2];", where there are several rows "name = array2d(0..1, 1..2, [1, 2, 3, 4]);" by the
// first and last index of each side.
void write_list(std::ostream& out, const std::string& name, const std::vector<int>& values);
void write_table(std::ostream& out, const std::string& name, int first_row, int first_column,
                 const std::vector<std::vector<int>>& rows);

// The practice days of the work, counted from the first day.
std::vector<int> practice_days(const SmallWork& work);

}  // namespace exact
