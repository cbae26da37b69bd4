#include "files/temporary_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <optional>
#include <system_error>

namespace cahier {
namespace {

namespace fs = std::filesystem;

constexpr int kMostNames = 100;
constexpr std::array kEndingSignals = {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGPIPE};

[[noreturn]] void fail(int error) { throw std::system_error(error, std::generic_category()); }

// While it lives, signals wait: a file is not left half placed.
class SignalsHeld {
 public:
  SignalsHeld() {
    sigset_t ending;
    ::sigemptyset(&ending);
    for (const int signal : kEndingSignals) ::sigaddset(&ending, signal);
    ::pthread_sigmask(SIG_BLOCK, &ending, &before_);
  }
  ~SignalsHeld() { ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;

 private:
  sigset_t before_;
};

// A signal's handler can reach nothing but globals: the file it must remove, or "". Changed only
// while signals are held.
std::array<char, PATH_MAX> removed_by_signal;

extern "C" void remove_and_end(int signal) {
  if (removed_by_signal[0] != '\0') ::unlink(removed_by_signal.data());
  ::signal(signal, SIG_DFL);
  ::raise(signal);
}

void remove_on_signals(const std::string& path) {
  removed_by_signal.fill('\0');
  path.copy(removed_by_signal.data(), removed_by_signal.size() - 1);
  for (const int signal : kEndingSignals) {
    struct sigaction action {};
    ::sigaction(signal, nullptr, &action);
    // One that is ignored, as under nohup, stays ignored.
    if (action.sa_handler != (path.empty() ? remove_and_end : SIG_DFL)) continue;
    action.sa_handler = path.empty() ? SIG_DFL : remove_and_end;
    ::sigaction(signal, &action, nullptr);
  }
}

std::string part_name(const fs::path& folder, int number) {
  return (folder / fmt::format(".cahier-{}-{}.part", ::getpid(), number)).string();
}

// The process that a temporary name belongs to, or nothing when the name is not one.
std::optional<pid_t> process_of(const std::string& name) {
  int process = 0, number = 0, length = 0;
  const int read = std::sscanf(name.c_str(), ".cahier-%9d-%9d.part%n", &process, &number, &length);
  if (read != 2 || length == 0 || static_cast<std::size_t>(length) != name.size() || process <= 0)
    return std::nullopt;
  return process;
}

// Removes the temporary files of processes that are no more. Those of another machine or container
// that shares the folder are known by their lock, those of another user are left alone.
void sweep(const fs::path& folder) {
  std::error_code ended;
  fs::directory_iterator entries(folder, ended);
  for (; !ended && entries != fs::directory_iterator(); entries.increment(ended)) {
    const auto process = process_of(entries->path().filename().string());
    if (!process || (*process != ::getpid() && ::kill(*process, 0) == 0)) continue;
    const int descriptor =
        ::open(entries->path().c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) continue;
    struct stat status {};
    if (::fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode) &&
        status.st_uid == ::geteuid() && ::flock(descriptor, LOCK_EX | LOCK_NB) == 0)
      ::unlink(entries->path().c_str());
    ::close(descriptor);
  }
}

int open_in_folder(const char* folder) {
  const int descriptor = ::open(folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666);
  // Without /proc the file could not be given its name.
  if (descriptor >= 0 && ::access(fmt::format("/proc/self/fd/{}", descriptor).c_str(), F_OK) != 0) {
    ::close(descriptor);
    errno = ENOTSUP;
    return -1;
  }
  return descriptor;
}

int link_descriptor(int descriptor, const char* to) {
  const std::string from = fmt::format("/proc/self/fd/{}", descriptor);
  return ::linkat(AT_FDCWD, from.c_str(), AT_FDCWD, to, AT_SYMLINK_FOLLOW);
}

// 0 or -1. Not every file system has a renaming that spares an existing file, or hard links.
int rename_to_new(const char* from, const char* to, const FileCalls& calls) {
  if (::renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE) == 0) return 0;
  if (errno != EINVAL && errno != ENOSYS) return -1;
  struct stat status {};
  if (::lstat(to, &status) == 0) {
    errno = EEXIST;
    return -1;
  }
  return calls.rename(from, to);
}

}  // namespace

FileCalls FileCalls::system() {
  return {::write, ::fsync, ::close, std::rename, open_in_folder, link_descriptor};
}

TemporaryFile::TemporaryFile(fs::path folder, const FileCalls& calls)
    : folder_(folder.empty() ? fs::path(".") : std::move(folder)), calls_(calls) {
  sweep(folder_);
  descriptor_ = calls_.open_unnamed(folder_.c_str());
  if (descriptor_ < 0) open_named();
  // For those who sweep. A file system without locks has no sweeping either.
  ::flock(descriptor_, LOCK_EX | LOCK_NB);
}

TemporaryFile::~TemporaryFile() {
  if (descriptor_ >= 0) ::close(descriptor_);
  remove_part();
}

void TemporaryFile::open_named() {
  const SignalsHeld held;
  for (int number = 0; descriptor_ < 0; ++number) {
    const std::string name = part_name(folder_, number);
    descriptor_ = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor_ < 0 && (errno != EEXIST || number == kMostNames)) fail(errno);
    part_ = name;
  }
  remove_on_signals(part_);
}

// Reports what writing did not; the file counts as closed either way.
void TemporaryFile::close() {
  const int number = descriptor_;
  descriptor_ = -1;
  if (calls_.close(number) != 0) fail(errno);
}

void TemporaryFile::remove_part() {
  if (part_.empty()) return;
  const SignalsHeld held;
  ::unlink(part_.c_str());
  remove_on_signals("");
  part_.clear();
}

void TemporaryFile::place_new(const fs::path& name) {
  const SignalsHeld held;
  if (!part_.empty()) {
    close();
    if (rename_to_new(part_.c_str(), name.c_str(), calls_) != 0) fail(errno);
    remove_on_signals("");
    part_.clear();
    return;
  }
  if (calls_.link(descriptor_, name.c_str()) != 0) fail(errno);
  try {
    close();
  } catch (const std::system_error&) {
    ::unlink(name.c_str());
    throw;
  }
}

void TemporaryFile::place_over(const fs::path& name) {
  const SignalsHeld held;
  for (int number = 0; part_.empty(); ++number) {
    const std::string part = part_name(folder_, number);
    if (calls_.link(descriptor_, part.c_str()) == 0)
      part_ = part;
    else if (errno != EEXIST || number == kMostNames)
      fail(errno);
  }
  close();
  if (calls_.rename(part_.c_str(), name.c_str()) != 0) fail(errno);
  remove_on_signals("");
  part_.clear();
}

}  // namespace cahier
