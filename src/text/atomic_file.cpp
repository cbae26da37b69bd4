#include "text/atomic_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <system_error>

#include "text/errors.h"

namespace cahier {

namespace {

namespace fs = std::filesystem;

std::string reason(int error) {
  switch (error) {
    case ENOSPC:
      return "no space left";
    case EDQUOT:
      return "the disk quota is used up";
    case EFBIG:
      return "the file would be larger than the system allows";
    case ENOENT:
      return "there is no such directory";
    case ENOTDIR:
      return "part of the path is a file, not a directory";
    case EISDIR:
      return "it is a directory";
    case EACCES:
    case EPERM:
      return "writing there is not permitted";
    case EROFS:
      return "the disk is read-only";
    case ENAMETOOLONG:
      return "the name is too long";
    default:
      return std::generic_category().message(error);
  }
}

[[noreturn]] void fail(const std::string& path, int error) {
  throw FileError(fmt::format("{}: cannot be written: {}", path, reason(error)));
}

// An open file that is closed whatever happens, and whose close can be checked.
class Descriptor {
 public:
  Descriptor(int number, const FileCalls& calls) : number_(number), calls_(calls) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;

  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }
  // 0, or the error number. The file counts as closed either way.
  int close() {
    const int number = number_;
    number_ = -1;
    return calls_.close(number) == 0 ? 0 : errno;
  }

 private:
  int number_;
  const FileCalls& calls_;
};

class RemovedUnlessKept {
 public:
  explicit RemovedUnlessKept(std::string path) : path_(std::move(path)) {}
  ~RemovedUnlessKept() {
    if (!path_.empty()) ::unlink(path_.c_str());
  }
  RemovedUnlessKept(const RemovedUnlessKept&) = delete;
  RemovedUnlessKept& operator=(const RemovedUnlessKept&) = delete;
  void keep() { path_.clear(); }

 private:
  std::string path_;
};

// 0, or the error number.
int write_all(int descriptor, const std::string& bytes, const FileCalls& calls) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t written = calls.write(descriptor, bytes.data() + done, bytes.size() - done);
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    if (written == 0) return ENOSPC;
    done += static_cast<std::size_t>(written);
  }
  return 0;
}

void write_directly(const std::string& path, const std::string& bytes, const FileCalls& calls) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC), calls);
  if (!file.is_open()) fail(path, errno);
  const int error = write_all(file.number(), bytes, calls);
  const int close_error = file.close();
  if (error != 0 || close_error != 0) fail(path, error != 0 ? error : close_error);
}

// An unused name in the same directory, with a file opened under it.
struct Temporary {
  std::string path;
  int descriptor = -1;
};

Temporary open_beside(const fs::path& target, mode_t mode) {
  for (int attempt = 0;; ++attempt) {
    const std::string path =
        (target.parent_path() / fmt::format(".cahier-{}-{}.part", ::getpid(), attempt)).string();
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (descriptor >= 0 || errno != EEXIST || attempt == 100) return {path, descriptor};
  }
}

// The directory's entry, too, should survive a power cut; not every file system can promise it.
void sync_directory(const fs::path& directory) {
  const int descriptor = ::open(directory.empty() ? "." : directory.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

FileCalls FileCalls::system() { return {::write, ::fsync, ::close, std::rename}; }

void write_whole(const std::string& path, const std::string& bytes) {
  write_whole(path, bytes, FileCalls::system());
}

void write_whole(const std::string& path, const std::string& bytes, const FileCalls& calls) {
  struct stat status {};
  const bool is_there = ::stat(path.c_str(), &status) == 0;
  if (!is_there && errno != ENOENT) fail(path, errno);
  if (is_there && S_ISDIR(status.st_mode)) fail(path, EISDIR);
  if (is_there && !S_ISREG(status.st_mode)) return write_directly(path, bytes, calls);

  std::error_code unresolved;
  fs::path target = is_there ? fs::canonical(path, unresolved) : fs::path(path);
  if (unresolved) fail(path, unresolved.value());

  const Temporary temporary = open_beside(target, 0666);
  if (temporary.descriptor < 0) fail(path, errno);
  RemovedUnlessKept leftover(temporary.path);
  Descriptor file(temporary.descriptor, calls);
  if (is_there && ::fchmod(file.number(), status.st_mode & 07777) != 0) fail(path, errno);
  if (const int error = write_all(file.number(), bytes, calls); error != 0) fail(path, error);
  // A file system without fsync (a pipe-like mount) says EINVAL; nothing more can be done there.
  if (calls.sync(file.number()) != 0 && errno != EINVAL) fail(path, errno);
  if (const int error = file.close(); error != 0) fail(path, error);
  if (calls.rename(temporary.path.c_str(), target.c_str()) != 0) fail(path, errno);
  leftover.keep();
  sync_directory(target.parent_path());
}

void write_new(const std::string& path, const std::string& bytes) {
  write_new(path, bytes, FileCalls::system());
}

void write_new(const std::string& path, const std::string& bytes, const FileCalls& calls) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666), calls);
  if (!file.is_open() && errno == EEXIST)
    throw FileError(path + " already exists; choose another name, or remove it first");
  if (!file.is_open()) fail(path, errno);
  RemovedUnlessKept leftover(path);
  if (const int error = write_all(file.number(), bytes, calls); error != 0) fail(path, error);
  if (calls.sync(file.number()) != 0 && errno != EINVAL) fail(path, errno);
  if (const int error = file.close(); error != 0) fail(path, error);
  leftover.keep();
  sync_directory(fs::path(path).parent_path());
}

}  // namespace cahier
