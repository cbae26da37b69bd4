// A studio as a command meets it: read, with the request of each student.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "cli/request.h"
#include "inputs/studio.h"
#include "text/source.h"

namespace cahier {

// Whether a command was given a studio: a file, not standard input or a pipe, that is one.
bool is_studio_file(const std::string& path);

// Throws FileError, or InputError with every problem of the studio's file.
struct StudioFiles {
  explicit StudioFiles(const std::string& path);

  // What is asked for one student: the command line over the student's entry. Files are named from
  // the studio's folder; a log that is not there yet is left out.
  Request request_for(const Student& student, const Request& typed_request,
                      const TypedLine& typed) const;
  // Those logs that are not there yet.
  std::vector<std::string> logs_to_come(const Student& student) const;
  std::string path_of(const StudioFile& file) const;

  std::shared_ptr<const Source> source;
  Studio studio;
};

// What a student's workbook is called after: "mia-child", "jonas".
std::string stem_for(const Student& student, const Request& request, const TypedLine& typed);

}  // namespace cahier
