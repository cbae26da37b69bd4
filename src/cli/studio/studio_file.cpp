#include "cli/studio/studio_file.h"

#include <filesystem>

#include "cli/file_kind.h"
#include "inputs/read_studio.h"
#include "text/diagnostics.h"
#include "text/errors.h"

namespace cahier {
namespace {

namespace fs = std::filesystem;

bool is_there(const std::string& path) {
  std::error_code none;
  return fs::symlink_status(path, none).type() != fs::file_type::not_found;
}

Studio read_whole(const Source& source) {
  Diagnostics diagnostics;
  std::optional<Studio> studio = read_studio(source, diagnostics);
  if (!studio) throw InputError(diagnostics.all());
  return std::move(*studio);
}

}  // namespace

bool is_studio_file(const std::string& path) {
  std::error_code none;
  if (path == kTerminal || !fs::is_regular_file(path, none)) return false;
  try {
    return kind_of(Source::from_file(path)) == FileKind::studio;
  } catch (const FileError&) {
    return false;  // whoever reads it next says why
  }
}

StudioFiles::StudioFiles(const std::string& path)
    : source(std::make_shared<const Source>(Source::from_file(path))),
      studio(read_whole(*source)) {}

std::string StudioFiles::path_of(const StudioFile& file) const {
  const std::string path = (fs::path(source->name()).parent_path() / file.path).string();
  return path == kTerminal ? "./" + path : path;
}

Request StudioFiles::request_for(const Student& student, const Request& typed_request,
                                 const TypedLine& typed) const {
  Request request = typed_request;
  request.files.clear();
  for (const StudioFile& piece : student.pieces) request.files.push_back(path_of(piece));
  for (const StudioFile& log : student.logs)
    if (const std::string path = path_of(log); is_there(path)) request.logs.push_back(path);
  request.wishes = typed_request.wishes.over(student.practice);
  if (!typed.option("--packet") && !student.packing.packet.empty())
    request.packet = student.packing.packet;
  if (!typed.option("--paper") && student.packing.paper) request.paper = *student.packing.paper;
  request.studio = FromStudio{source, student.at, student.occasion, student.note};
  return request;
}

std::vector<std::string> StudioFiles::logs_to_come(const Student& student) const {
  std::vector<std::string> paths;
  for (const StudioFile& log : student.logs)
    if (std::string path = path_of(log); !is_there(path)) paths.push_back(std::move(path));
  return paths;
}

std::string stem_for(const Student& student, const Request& request, const TypedLine& typed) {
  const bool is_chosen = typed.option("--packet") || !student.packing.packet.empty();
  return is_chosen && !request.as_text ? student.file_name + "-" + request.packet
                                       : student.file_name;
}

}  // namespace cahier
