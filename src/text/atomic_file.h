// Writing a file whole or not at all.
#pragma once

#include <sys/types.h>

#include <functional>
#include <string>

namespace cahier {

// The system calls that may fail halfway; tests put failing ones in their place. Each returns
// and sets errno like the system call of the same name.
struct FileCalls {
  std::function<ssize_t(int descriptor, const void* data, std::size_t size)> write;
  std::function<int(int descriptor)> sync;
  std::function<int(int descriptor)> close;
  std::function<int(const char* from, const char* to)> rename;
  static FileCalls system();
};

// Writes `bytes` beside `path` under a temporary name, forces it to the disk, and only then
// renames it to `path` (through a symbolic link, to what the link names). After any failure the
// temporary file is gone, an older file at `path` is unchanged, and FileError names the path and
// the system's reason. A `path` that is a device or a pipe is written to directly.
void write_whole(const std::string& path, const std::string& bytes);
void write_whole(const std::string& path, const std::string& bytes, const FileCalls& calls);

// Writes a new file, and forces it to the disk. An existing file is left alone: FileError says so.
// After any other failure the new file is gone, and FileError names the path and
// the system's reason.
void write_new(const std::string& path, const std::string& bytes);
void write_new(const std::string& path, const std::string& bytes, const FileCalls& calls);

}  // namespace cahier
