#include "files/atomic_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
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
    case EEXIST:
      return "it already exists";
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
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
  if (descriptor < 0) refuse_to_write(path, errno);
  const int error = write_all(descriptor, bytes, calls);
  const int close_error = calls.close(descriptor) == 0 ? 0 : errno;
  if (error != 0 || close_error != 0) refuse_to_write(path, error != 0 ? error : close_error);
}

// The directory's entry, too, should survive a power cut; not every file system can promise it.
void sync_directory(const fs::path& directory) {
  const int descriptor = ::open(directory.empty() ? "." : directory.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

// Gives a new file the owner and the mode of the one that it replaces. 0, or the error number.
int take_after(int descriptor, const struct stat& older) {
  struct stat status {};
  if (::fstat(descriptor, &status) != 0) return errno;
  const bool is_others = status.st_uid != older.st_uid || status.st_gid != older.st_gid;
  if (is_others && ::fchown(descriptor, older.st_uid, older.st_gid) != 0) return errno;
  return ::fchmod(descriptor, older.st_mode & 07777) == 0 ? 0 : errno;
}

}  // namespace

void refuse_to_write(const std::string& path, int error) {
  throw FileError(fmt::format("{}: cannot be written: {}", path, reason(error)));
}

PendingFile::PendingFile(std::string path, const std::string& bytes, Existing existing)
    : PendingFile(std::move(path), bytes, existing, FileCalls::system()) {}

PendingFile::PendingFile(std::string path, const std::string& bytes, Existing existing,
                         FileCalls calls)
    : path_(std::move(path)), calls_(std::move(calls)) {
  struct stat status {};
  is_there_ = ::stat(path_.c_str(), &status) == 0;
  if (!is_there_ && errno != ENOENT) refuse_to_write(path_, errno);
  if (is_there_ && S_ISDIR(status.st_mode)) refuse_to_write(path_, EISDIR);
  if (is_there_ && !S_ISREG(status.st_mode)) {
    for_device_ = bytes;
    return;
  }
  if (is_there_ && existing == Existing::refused) refuse_to_write(path_, EEXIST);
  std::error_code unresolved;
  target_ = is_there_ ? fs::canonical(path_, unresolved) : fs::path(path_);
  if (unresolved) refuse_to_write(path_, unresolved.value());
  try {
    file_.emplace(target_.parent_path(), calls_);
  } catch (const std::system_error& error) {
    refuse_to_write(path_, error.code().value());
  }
  const int error = is_there_ ? take_after(file_->descriptor(), status) : 0;
  if (error != 0) refuse_to_write(path_, error);
  write(bytes);
}

void PendingFile::write(const std::string& bytes) {
  const int descriptor = file_->descriptor();
  if (const int error = write_all(descriptor, bytes, calls_); error != 0)
    refuse_to_write(path_, error);
  // A file system without fsync (a pipe-like mount) says EINVAL; nothing more can be done there.
  if (calls_.sync(descriptor) != 0 && errno != EINVAL) refuse_to_write(path_, errno);
}

void PendingFile::commit() {
  if (!file_) return write_directly(path_, for_device_, calls_);
  try {
    if (is_there_)
      file_->place_over(target_);
    else
      file_->place_new(target_);
  } catch (const std::system_error& error) {
    file_.reset();
    refuse_to_write(path_, error.code().value());
  }
  sync_directory(target_.parent_path());
}

}  // namespace cahier
