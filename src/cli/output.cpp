#include "cli/output.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>

#include "paper/own_pdf.h"
#include "text/errors.h"
#include "workbook/text_edition/text_edition.h"

namespace cahier {
namespace {

constexpr std::size_t kMostPdfBytes = 256u << 20;
constexpr std::string_view kReplaceHint = "choose another name, or add --replace";

[[noreturn]] void refuse(const std::string& path, const std::string& why, std::string_view hint) {
  throw FileError(fmt::format("{}: not written: {}; {}", path, why, hint));
}

bool is_same(const struct stat& output, const std::string& input) {
  struct stat status {};
  const int found =
      input == kTerminal ? ::fstat(STDIN_FILENO, &status) : ::stat(input.c_str(), &status);
  return found == 0 && status.st_dev == output.st_dev && status.st_ino == output.st_ino;
}

// Root may write anything, so that its protection must be read from the mode.
bool is_write_protected(const std::string& path, const struct stat& status) {
  if (::geteuid() == 0) return (status.st_mode & (S_IWUSR | S_IWGRP | S_IWOTH)) == 0;
  return ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0;
}

std::string read_existing(const std::string& path) {
  try {
    return Source::from_file(path, kMostPdfBytes).text();
  } catch (const FileError&) {
    return {};
  }
}

}  // namespace

Output::Output(std::string path, Replaces replaces, bool replace, std::vector<std::string> inputs,
               std::string packet)
    : path_(std::move(path)),
      replaces_(replaces),
      replace_(replace),
      inputs_(std::move(inputs)),
      packet_(std::move(packet)) {
  check();
}

void Output::write(const std::string& bytes) { file_.emplace(path_, bytes, check()); }

Existing Output::check() const {
  struct stat status {};
  if (::stat(path_.c_str(), &status) != 0) {
    if (errno == ENOENT && ::lstat(path_.c_str(), &status) == 0)
      refuse(path_, "it is a symbolic link to a file that is not there", "choose another name");
    return Existing::refused;
  }
  if (S_ISDIR(status.st_mode)) refuse_to_write(path_, EISDIR);
  if (!S_ISREG(status.st_mode)) return Existing::replaced;
  for (const std::string& input : inputs_)
    if (is_same(status, input))
      refuse(path_,
             input == path_ ? "it is also read"
                            : fmt::format("it is the same file as {}, which is read",
                                          input == kTerminal ? "standard input" : input),
             "choose another name");
  if (is_write_protected(path_, status))
    refuse(path_, "it is write-protected", "choose another name, or permit writing first");
  if (replace_) return Existing::replaced;
  if (replaces_ == Replaces::nothing) refuse(path_, "it already exists", kReplaceHint);
  const std::string there = read_existing(path_);
  const bool is_own =
      replaces_ == Replaces::own_pdf ? is_own_pdf(there) : there.starts_with(kTextEditionMark);
  if (!is_own)
    refuse(path_, "it already exists and is not a workbook as cahier made it", kReplaceHint);
  if (replaces_ == Replaces::own_pdf && !packet_.empty() && is_of_other_packet(there, packet_))
    refuse(path_, fmt::format("it is a workbook of another packet than {}", packet_), kReplaceHint);
  if (status.st_nlink > 1)
    refuse(path_,
           fmt::format("it has {} names (hard links), and the others would keep the older workbook",
                       status.st_nlink),
           kReplaceHint);
  return Existing::replaced;
}

bool is_standard_output(const std::string& path) {
  return path == kTerminal || path == "/dev/stdout";
}

std::vector<std::string> input_paths(const Request& request, const Inputs& inputs) {
  std::vector<std::string> paths = request.files;
  paths.insert(paths.end(), inputs.scores.begin(), inputs.scores.end());
  paths.insert(paths.end(), request.logs.begin(), request.logs.end());
  for (const Source& source : inputs.printed) paths.push_back(source.name());
  if (request.templates.empty()) return paths;
  const std::filesystem::path folder = request.templates;
  paths.push_back((folder / "methods" / (request.method + ".yaml")).string());
  paths.push_back((folder / "packets" / (request.packet + ".yaml")).string());
  paths.push_back((folder / "words" / (request.language + ".yaml")).string());
  return paths;
}

}  // namespace cahier
