// A library to be loaded before a program (LD_PRELOAD): makes one of its calls of open, write,
// fsync, close, rename or linkat fail, or ends the program just before that call.
//   FAULT_CALL  the name of the call that fails or is waited for, or "any"
//   FAULT_AT    which of these calls, from 1
//   FAULT_KILL  the number of a signal to send instead of failing
//   FAULT_MARK  a file that is made when the fault happened
//   FAULT_NAMED makes every opening of a file without a name fail, as on a file system without them
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/syscall.h>
#include <sys/types.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace {

template <typename Call>
Call real(const char* name) {
  return reinterpret_cast<Call>(::dlsym(RTLD_NEXT, name));
}

// True when this call must fail.
bool fault(const char* call) {
  static long seen = 0;
  const char* wanted = std::getenv("FAULT_CALL");
  const char* at = std::getenv("FAULT_AT");
  if (!wanted || !at || (std::strcmp(wanted, "any") != 0 && std::strcmp(wanted, call) != 0))
    return false;
  if (++seen != std::atol(at)) return false;
  if (const char* mark = std::getenv("FAULT_MARK"))
    ::syscall(SYS_close, ::syscall(SYS_openat, AT_FDCWD, mark, O_CREAT | O_WRONLY, 0666));
  if (const char* signal = std::getenv("FAULT_KILL")) {
    ::raise(std::atoi(signal));
    return false;
  }
  errno = EIO;
  return true;
}

int open_by(const char* name, const char* path, int flags, mode_t mode) {
  if (fault("open")) return -1;
  if ((flags & O_TMPFILE) == O_TMPFILE && std::getenv("FAULT_NAMED")) {
    errno = EOPNOTSUPP;
    return -1;
  }
  return real<int (*)(const char*, int, ...)>(name)(path, flags, mode);
}

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
  va_end(rest);
  return open_by("open", path, flags, mode);
}

int open64(const char* path, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
  va_end(rest);
  return open_by("open64", path, flags, mode);
}

ssize_t write(int descriptor, const void* data, size_t size) {
  // Only half of it is written before the disk fails.
  if (fault("write")) {
    ::syscall(SYS_write, descriptor, data, size / 2);
    errno = EIO;
    return -1;
  }
  return ::syscall(SYS_write, descriptor, data, size);
}

int fsync(int descriptor) {
  return fault("fsync") ? -1 : static_cast<int>(::syscall(SYS_fsync, descriptor));
}

int close(int descriptor) {
  const bool fails = fault("close");
  const auto result = static_cast<int>(::syscall(SYS_close, descriptor));
  if (fails) errno = EIO;
  return fails ? -1 : result;
}

int rename(const char* from, const char* to) noexcept {
  return fault("rename") ? -1 : static_cast<int>(::syscall(SYS_rename, from, to));
}

int renameat2(int from_folder, const char* from, int to_folder, const char* to,
              unsigned int flags) noexcept {
  return fault("rename")
             ? -1
             : static_cast<int>(::syscall(SYS_renameat2, from_folder, from, to_folder, to, flags));
}

int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) noexcept {
  return fault("linkat")
             ? -1
             : static_cast<int>(::syscall(SYS_linkat, from_folder, from, to_folder, to, flags));
}
}
