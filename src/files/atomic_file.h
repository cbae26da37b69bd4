// Writing a file whole or not at all.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "files/file_calls.h"
#include "files/temporary_file.h"

namespace cahier {

enum class Existing { refused, replaced };

// A file that is written and forced to the disk, and has not got its name yet: between the two a
// command says what it has done, and where nobody can hear it, nothing changes.
class PendingFile {
 public:
  // Writes `bytes` beside `path` (through a symbolic link, beside what the link names). A file
  // that is there is kept in owner and mode when it is replaced. A `path` that is a device or a
  // pipe is written to by commit(). Throws FileError that names the path and the system's reason.
  PendingFile(std::string path, const std::string& bytes, Existing existing);
  PendingFile(std::string path, const std::string& bytes, Existing existing, FileCalls calls);

  // Gives the file its name. Throws FileError; then, as without commit(), an older file at the
  // path is unchanged, and nothing else is left in the folder.
  void commit();

 private:
  void write(const std::string& bytes);

  const std::string path_;
  const FileCalls calls_;
  std::filesystem::path target_;
  std::optional<TemporaryFile> file_;  // none for a device or a pipe
  std::string for_device_;
  bool is_there_ = false;
};

// An error about a file to be written, by errno: "PATH: cannot be written: REASON".
[[noreturn]] void refuse_to_write(const std::string& path, int error);

}  // namespace cahier
