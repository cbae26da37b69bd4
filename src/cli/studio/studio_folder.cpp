#include "cli/studio/studio_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "text/diagnostics.h"
#include "text/errors.h"

namespace cahier {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kStayHint =
    "move or copy it into the folder, or add --allow-outside where it is meant to be read there";

// Links followed as far as there is something; with a name that no folder has where that fails.
fs::path real_path(const fs::path& path) {
  std::error_code failed;
  const fs::path absolute = fs::absolute(path, failed);
  const fs::path real = failed ? fs::path() : fs::weakly_canonical(absolute, failed);
  return failed ? fs::path() : real;
}

bool is_inside(const StudioFiles& files, const std::string& path) {
  const fs::path folder = real_path(fs::path(files.source->name())).parent_path();
  const fs::path file = real_path(path);
  const auto parted = std::mismatch(folder.begin(), folder.end(), file.begin(), file.end());
  return !file.empty() && parted.first == folder.end();
}

}  // namespace

void refuse_outside(const StudioFiles& files, const Student& student) {
  Diagnostics diagnostics;
  for (const std::vector<StudioFile>* all : {&student.pieces, &student.logs})
    for (const StudioFile& file : *all)
      if (!is_inside(files, files.path_of(file)))
        diagnostics.error(*files.source, file.at,
                          fmt::format("{} is outside the studio's folder", file.path),
                          std::string(kStayHint));
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

void refuse_outside(const StudioFiles& files, const Student& student, const Inputs& inputs) {
  Diagnostics diagnostics;
  const auto refuse = [&](const std::string& path) {
    if (!is_inside(files, path))
      diagnostics.error(*files.source, student.pieces.front().at,
                        fmt::format("{}, which this names, is outside the studio's folder", path),
                        std::string(kStayHint));
  };
  for (const std::string& path : inputs.scores) refuse(path);
  for (const std::string& path : inputs.piece_files) refuse(path);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace cahier
