#include <fmt/format.h>

#include <vector>

#include "cli/say.h"
#include "cli/studio/commands.h"
#include "cli/studio/in_order.h"
#include "cli/studio/said.h"
#include "cli/studio/student_workbook.h"
#include "text/terminal.h"

namespace cahier {

// Each workbook is made as print makes it, and left.
int check_studio(const Request& request, const TypedLine& typed, const std::string& path,
                 Date today) {
  const StudioFiles files(path);
  const std::vector<Student>& students = files.studio.students;
  check_templates(request, typed);
  const StudentWork work(files, request, typed, today);
  std::vector<StudentWorkbook> made(students.size());
  const auto worker = [&] {
    auto typefaces = std::make_shared<std::optional<Typefaces>>();
    return [&, typefaces](std::size_t number) {
      made[number] = work.workbook(students[number], *typefaces);
    };
  };
  Said said;
  int worst = 0;
  in_order(students.size(), threads_for(request), worker, [&](std::size_t number) {
    const StudentWorkbook one = std::exchange(made[number], {});
    said.say(one);
    // Whether work fits is not a question of what is written wrong.
    if (one.exit_code >= 2) worst = std::max(worst, one.exit_code);
  });
  if (worst == 0)
    say_text(fmt::format("{}: OK, a studio of {} student{}\n", line_for_terminal(path),
                         students.size(), students.size() == 1 ? "" : "s"));
  return worst;
}

}  // namespace cahier
