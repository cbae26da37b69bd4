#include "text/templates.h"

#include <fmt/core.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>

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

constexpr std::array<std::string_view, 3> kKinds = {"methods", "packets", "words"};

// What a folder holds, sorted, without hidden files. Throws FileError when it cannot be read.
std::vector<fs::path> entries_of(const fs::path& folder) {
  std::vector<fs::path> all;
  std::error_code problem;
  fs::directory_iterator entries(folder, problem);
  for (; !problem && entries != fs::directory_iterator(); entries.increment(problem))
    if (!entries->path().filename().string().starts_with('.')) all.push_back(entries->path());
  if (problem)
    throw FileError(
        fmt::format("cannot read templates from {}: {}", folder.string(), problem.message()));
  std::ranges::sort(all);
  return all;
}

Diagnostic strange_at(const fs::path& path, std::string message, std::string hint) {
  Diagnostic strange;
  strange.file = path.string();
  strange.message = std::move(message);
  strange.hint = std::move(hint);
  return strange;
}

Diagnostic strange_folder(const fs::path& path, const std::string& name) {
  return strange_at(
      path,
      fmt::format("\"{}\" does not belong in a folder of templates{}", name,
                  did_you_mean(name, {kKinds.begin(), kKinds.end()})),
      "it holds the folders methods, packets and words, and nothing else; rename this or move it "
      "elsewhere");
}

// Nothing for a template. Throws FileError for one that cannot be opened.
std::optional<Diagnostic> strange_file(const fs::path& path) {
  if (path.extension() != kEnding)
    return strange_at(path, "this is no template: the name of one ends in .yaml",
                      path.extension() == ".yml" ? "rename it to end in .yaml"
                                                 : "rename it or move it elsewhere");
  std::error_code problem;
  const fs::file_type type = fs::status(path, problem).type();
  const auto refuse = [&](std::string_view why) {
    throw FileError(fmt::format("cannot read {}: {}", path.string(), why));
  };
  if (type == fs::file_type::not_found) refuse("the link leads to no file");
  if (problem) refuse(problem.message());
  if (type == fs::file_type::directory) refuse("it is a folder, not a file");
  if (type != fs::file_type::regular) refuse("it is not a regular file");
  if (access(path.c_str(), R_OK) != 0) refuse(std::strerror(errno));
  return std::nullopt;
}

std::string_view singular(std::string_view kind) {
  return kind == "methods" ? "method" : kind == "packets" ? "packet" : "language of words";
}

}  // namespace

Templates::Templates(std::string directory) : directory_(std::move(directory)) {
  if (directory_.empty()) return;
  std::error_code problem;
  if (!fs::is_directory(directory_, problem))
    throw FileError(fmt::format(
        "cannot read templates from {}: {}", directory_,
        fs::exists(directory_, problem) ? "it is not a folder" : "there is no such folder"));
  std::vector<Diagnostic> strange;
  for (const fs::path& path : entries_of(directory_)) {
    const std::string name = path.filename().string();
    if (std::ranges::find(kKinds, name) == kKinds.end()) {
      strange.push_back(strange_folder(path, name));
      continue;
    }
    if (!fs::is_directory(path, problem))
      throw FileError(fmt::format(
          "cannot read templates from {}: {}", path.string(),
          fs::exists(path, problem) ? "it is not a folder" : "the link leads to no folder"));
    for (const fs::path& file : entries_of(path))
      if (auto diagnostic = strange_file(file)) strange.push_back(std::move(*diagnostic));
  }
  if (!strange.empty()) throw InputError(strange);
}

Source Templates::read(std::string_view kind, std::string_view name) const {
  const std::string wanted = file_name(kind, name);
  if (is_plain_name(name)) {
    if (!directory_.empty()) {
      const fs::path path = fs::path(directory_) / wanted;
      std::error_code problem;
      if (fs::symlink_status(path, problem).type() != fs::file_type::not_found)
        return Source::from_file(path.string());
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
