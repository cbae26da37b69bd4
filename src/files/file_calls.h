// The system calls of writing a file, so that tests can make each of them fail.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <functional>

namespace cahier {

// Each returns and sets errno like the system call of the same name.
struct FileCalls {
  std::function<ssize_t(int descriptor, const void* data, std::size_t size)> write;
  std::function<int(int descriptor)> sync;
  std::function<int(int descriptor)> close;
  std::function<int(const char* from, const char* to)> rename;
  // A file in a folder that has no name yet, open for writing; -1 where there is no such thing.
  std::function<int(const char* folder)> open_unnamed;
  // Gives a file without a name its name, which must be new.
  std::function<int(int descriptor, const char* to)> link;
  static FileCalls system();
};

}  // namespace cahier
