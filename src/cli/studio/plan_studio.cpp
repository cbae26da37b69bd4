#include <fmt/format.h>

#include <vector>

#include "cli/read_terms.h"
#include "cli/say.h"
#include "cli/studio/commands.h"
#include "cli/studio/in_order.h"
#include "cli/studio/said.h"
#include "cli/studio/student_workbook.h"
#include "text/diagnostics.h"
#include "text/errors.h"

namespace cahier {
namespace {

// A plan of one student has more to tell than a line.
void refuse_plan_options(const TypedLine& typed) {
  for (const std::string_view option :
       {"--json", "--why", "--spacing", "--traps", "--log", "--student"})
    if (const auto place = typed.option(option)) {
      Diagnostics diagnostics;
      diagnostics.error(typed.source(), *place,
                        fmt::format("{} is for one student, not for a studio", option),
                        "for one student: cahier plan and the file of that student's piece");
      throw InputError(diagnostics.all());
    }
}

std::string line_of(const Student& student, const Plan& plan) {
  std::string text = fmt::format("{}: {} to {}, {:.0f} minutes", student.name, iso(plan.from),
                                 iso(plan.by - days{1}), plan.minutes_total());
  if (plan.fits) return text + "\n";
  double left_over = 0;
  for (const Unplaced& work : plan.unplaced) left_over += work.minutes;
  text += fmt::format(", {:.0f} minutes of work do not fit", left_over);
  if (!plan.remedies.empty()) text += fmt::format("; with {} they do", plan.remedies.front().say);
  return text + "\n";
}

}  // namespace

int plan_studio(const Request& request, const TypedLine& typed, Date today) {
  refuse_plan_options(typed);
  const StudioFiles files(request.files.front());
  const std::vector<Student>& students = files.studio.students;
  check_templates(request, typed);
  const StudentWork work(files, request, typed, today);
  std::vector<StudentPlan> planned(students.size());
  const auto worker = [&] {
    return [&](std::size_t number) { planned[number] = work.plan(students[number]); };
  };
  Said said;
  Progress progress;
  int worst = 0;
  in_order(students.size(), threads_for(request), worker, [&](std::size_t number) {
    progress.clear();
    const StudentPlan one = std::exchange(planned[number], {});
    said.say(one);
    if (one.found) {
      if (!one.found->warnings.empty()) say_err(students[number].name + ": " + one.found->warnings);
      say_text(line_of(students[number], one.found->plan));
    } else {
      say_text(students[number].name + ": no plan\n");
    }
    worst = std::max(worst, one.exit_code);
    progress.show(fmt::format("planned {} of {}", number + 1, students.size()));
  });
  return worst;
}

}  // namespace cahier
