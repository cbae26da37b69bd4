#include "text/templates.h"

#include <fmt/core.h>

#include <algorithm>
#include <filesystem>

#include "text/did_you_mean.h"
#include "text/errors.h"

namespace cahier {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kEnding = ".yaml";

// A name is a file's name and nothing else: no folder, no way up and out of the directory.
bool is_plain_name(std::string_view name) {
  return !name.empty() && name.front() != '.' &&
         name.find_first_of(std::string_view("/\\\0", 3)) == std::string_view::npos;
}

std::string file_name(std::string_view kind, std::string_view name) {
  return fmt::format("{}/{}{}", kind, name, kEnding);
}

std::string_view singular(std::string_view kind) {
  return kind == "methods" ? "method" : kind == "packets" ? "packet" : "language of words";
}

}  // namespace

Templates::Templates(std::string directory) : directory_(std::move(directory)) {
  if (directory_.empty()) return;
  std::error_code problem;
  if (fs::is_directory(directory_, problem)) return;
  const bool exists = fs::exists(directory_, problem);
  throw FileError(fmt::format("cannot read templates from {}: {}", directory_,
                              exists ? "it is not a folder" : "there is no such folder"));
}

Source Templates::read(std::string_view kind, std::string_view name) const {
  const std::string wanted = file_name(kind, name);
  if (is_plain_name(name)) {
    if (!directory_.empty()) {
      const fs::path path = fs::path(directory_) / wanted;
      std::error_code problem;
      if (fs::exists(path, problem)) return Source::from_file(path.string());
    }
    for (const BuiltIn& built_in : built_in_templates()) {
      if (built_in.name == wanted) {
        return Source(fmt::format("built-in {}", wanted), std::string(built_in.text));
      }
    }
  }
  const std::vector<std::string> known = names(kind);
  Diagnostic unknown;
  unknown.file = directory_.empty() ? "built-in templates" : directory_;
  unknown.message = fmt::format("there is no {} called \"{}\"{}", singular(kind), name,
                                did_you_mean(name, known));
  for (const std::string& each : known) {
    unknown.hint += (unknown.hint.empty() ? "known: " : ", ") + each;
  }
  throw InputError({unknown});
}

std::vector<std::string> Templates::names(std::string_view kind) const {
  std::vector<std::string> all;
  const std::string prefix = fmt::format("{}/", kind);
  for (const BuiltIn& built_in : built_in_templates()) {
    const std::string_view name = built_in.name;
    if (name.starts_with(prefix) && name.ends_with(kEnding)) {
      const std::size_t length = name.size() - prefix.size() - kEnding.size();
      all.emplace_back(name.substr(prefix.size(), length));
    }
  }
  if (!directory_.empty()) {
    std::error_code problem;
    fs::directory_iterator entries(fs::path(directory_) / kind, problem);
    for (; !problem && entries != fs::directory_iterator(); entries.increment(problem)) {
      const fs::path& path = entries->path();
      const std::string name = path.stem().string();
      if (path.extension() == kEnding && is_plain_name(name)) all.push_back(name);
    }
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

}  // namespace cahier
