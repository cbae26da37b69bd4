#include "inputs/read_studio.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "piece/read_practice.h"
#include "text/limits.h"
#include "text/small_letters.h"

namespace cahier {
namespace {

constexpr std::size_t kLongestPath = 1000;
constexpr std::size_t kLongestNote = 200;

std::vector<StudioFile> read_paths(YamlFields& fields, std::string_view key,
                                   const std::string& what) {
  std::vector<StudioFile> files;
  for (const YamlNode* node : fields.list(key)) {
    const auto path = yaml_text(fields.source(), *node, what, kLongestPath, fields.diagnostics());
    if (!path) continue;
    if (std::ranges::any_of(files, [&](const StudioFile& one) { return one.path == *path; }))
      fields.diagnostics().error(fields.source(), node->at,
                                 fmt::format("{} is listed twice", *path), "list each file once");
    files.push_back({*path, node->at});
  }
  return files;
}

Packing read_packing(YamlFields& fields) {
  Packing packing;
  packing.packet = fields.text("packet").value_or("");
  if (!packing.packet.empty()) packing.packet_at = fields.node("packet")->at;
  const auto paper = fields.text("paper");
  if (!paper) return packing;
  packing.paper = parse_page_size(*paper);
  if (!packing.paper)
    fields.diagnostics().error(fields.source(), fields.node("paper")->at,
                               fmt::format("\"{}\" is not valid for \"paper\"", *paper),
                               "write a4, letter or a5");
  return packing;
}

void read_name(YamlFields& fields, Student& student) {
  if (fields.lacks("name")) fields.missing("name", "write for example name: Mia");
  student.name = fields.text("name", kLongestName).value_or("");
  if (student.name.empty()) return;
  student.at = fields.node("name")->at;
  student.file_name = as_file_name(student.name);
  if (student.name.find('/') != std::string::npos)
    fields.diagnostics().error(fields.source(), student.at,
                               "a student's name cannot have a slash: it becomes a file's name",
                               "leave the slash out");
  else if (student.file_name.empty())
    fields.diagnostics().error(fields.source(), student.at,
                               "this name has no letter that a file's name could be made of",
                               "write a name with letters or figures");
}

Student read_student(const Source& source, const YamlNode& node, Diagnostics& diagnostics) {
  YamlFields fields(source, node, diagnostics);
  Student student;
  student.at = node.at;
  if (!fields.is_map()) return student;
  read_name(fields, student);
  student.pieces = read_paths(fields, "piece", "the name of a piece's file");
  if (fields.lacks("piece")) fields.missing("piece", "write for example piece: mia.yaml");
  if (student.pieces.size() > kMostPieces)
    diagnostics.error(source, fields.node("piece")->at,
                      fmt::format("a student can have at most {} pieces", kMostPieces),
                      "leave some for later");
  student.logs = read_paths(fields, "log", "the name of a log");
  student.occasion = read_shared_occasion(fields);
  student.practice = read_wishes(fields);
  student.packing = read_packing(fields);
  student.note = fields.text("note", kLongestNote).value_or("");
  fields.refuse_unknown();
  return student;
}

std::string stem_of(const Student& student) {
  return student.packing.packet.empty() ? student.file_name
                                        : student.file_name + "-" + student.packing.packet;
}

// Two workbooks would have one file.
void refuse_equal_names(const Source& source, const std::vector<Student>& students,
                        Diagnostics& diagnostics) {
  for (auto two = students.begin(); two != students.end(); ++two) {
    if (two->file_name.empty()) continue;
    const auto one = std::find_if(students.begin(), two, [&](const Student& before) {
      return before.file_name == two->file_name || stem_of(before) == stem_of(*two);
    });
    if (one == two) continue;
    diagnostics.error(
        source, two->at,
        fmt::format("\"{}\" and \"{}\" of line {} make the same file name, {}.pdf", two->name,
                    one->name, one->at.line,
                    one->file_name == two->file_name ? one->file_name : stem_of(*one)),
        "write one of them otherwise, with another name or initial");
  }
}

std::vector<Student> read_students(YamlFields& fields) {
  std::vector<Student> students;
  const auto nodes = fields.list("students");
  if (nodes.empty()) fields.missing("students", "list them, as in - {name: Mia, piece: mia.yaml}");
  if (nodes.size() > kMostStudents) {
    fields.diagnostics().error(fields.source(), fields.node("students")->at,
                               fmt::format("a studio can have at most {} students", kMostStudents),
                               "split it into two studios");
    return students;
  }
  const Diagnostics::Within link(fields.diagnostics(), "while reading \"students\"");
  for (const YamlNode* node : nodes)
    students.push_back(read_student(fields.source(), *node, fields.diagnostics()));
  refuse_equal_names(fields.source(), students, fields.diagnostics());
  return students;
}

}  // namespace

Packing Packing::over(const Packing& fallback) const {
  Packing both = *this;
  if (both.packet.empty()) {
    both.packet = fallback.packet;
    both.packet_at = fallback.packet_at;
  }
  if (!both.paper) both.paper = fallback.paper;
  return both;
}

std::string as_file_name(std::string_view name) {
  std::string made;
  for (const char letter : in_small_letters(name)) {
    const bool stays = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') ||
                       static_cast<unsigned char>(letter) >= 0x80;
    if (stays)
      made += letter;
    else if (!made.empty() && made.back() != '-')
      made += '-';
  }
  if (made.ends_with('-')) made.pop_back();
  return made;
}

std::optional<Studio> read_studio(const Source& source, Diagnostics& diagnostics) {
  const int errors_before = diagnostics.error_count();
  const std::size_t said_before = diagnostics.all().size();
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return std::nullopt;
  YamlFields fields(source, *root, diagnostics);
  Studio studio;
  studio.title = fields.text("studio").value_or("");
  const Occasion occasion = read_shared_occasion(fields);
  Wishes practice;
  if (const YamlNode* node = fields.node("practice"))
    practice = read_practice(source, *node, diagnostics);
  const Packing packing = read_packing(fields);
  studio.students = read_students(fields);
  fields.refuse_unknown();
  diagnostics.sort_by_place(said_before);
  if (diagnostics.error_count() > errors_before) return std::nullopt;
  for (Student& student : studio.students) {
    student.occasion = student.occasion.over(occasion);
    student.occasion.student = student.name;
    student.practice = student.practice.over(practice);
    student.packing = student.packing.over(packing);
  }
  return studio;
}

}  // namespace cahier
