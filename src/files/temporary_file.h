// A file that is written before it has its name.
#pragma once

#include <filesystem>
#include <string>

#include "files/file_calls.h"

namespace cahier {

// Lies in a folder without a name where the file system can do that, otherwise as
// .cahier-PID-N.part, which is removed whatever ends the program short of SIGKILL. Until it is
// placed nothing is to be seen of it, and its destructor leaves nothing. Errors are
// std::system_error.
class TemporaryFile {
 public:
  // First removes what dead processes left in `folder`. REQUIRES: `calls` lives as long.
  TemporaryFile(std::filesystem::path folder, const FileCalls& calls);
  ~TemporaryFile();
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  int descriptor() const { return descriptor_; }

  // Closes the file and gives it its name, which must be new; or puts it in the place of an older
  // file. After an error the name is as it was.
  void place_new(const std::filesystem::path& name);
  void place_over(const std::filesystem::path& name);

 private:
  void open_named();
  void close();
  void remove_part();

  const std::filesystem::path folder_;
  const FileCalls& calls_;
  int descriptor_ = -1;
  std::string part_;  // its temporary name; empty while it has none
};

}  // namespace cahier
