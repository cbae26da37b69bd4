#include "text/source.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstring>

#include "text/errors.h"
#include "text/utf8.h"

namespace cahier {
namespace {

[[noreturn]] void refuse_to_read(const std::string& name, const std::string& reason) {
  throw FileError(fmt::format("cannot read {}: {}", name, reason));
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }

 private:
  const int number_;
};

// How long to wait for a pipe or a device by which nothing comes: a pipe in a folder may have
// nobody who writes to it.
constexpr std::chrono::milliseconds kPatience = std::chrono::seconds(5);

// A name for what is open already, so that somebody writes to it.
bool is_opened_by_shell(const std::string& path) {
  return path == "/dev/stdin" || path.starts_with("/dev/fd/") || path.starts_with("/proc/");
}

// Reads to the end. `patience` is how long to wait for more; negative: without limit.
std::string read_all(int descriptor, const std::string& name, std::size_t max_bytes,
                     std::chrono::milliseconds patience) {
  std::string text;
  std::array<char, 65536> buffer;
  for (;;) {
    pollfd waiting{descriptor, POLLIN, 0};
    const int ready = ::poll(&waiting, 1, static_cast<int>(patience.count()));
    if (ready == 0)
      refuse_to_read(name, fmt::format("it is no ordinary file, and nothing came from it for {} "
                                       "seconds",
                                       patience / std::chrono::seconds(1)));
    const ssize_t size = ready < 0 ? -1 : ::read(descriptor, buffer.data(), buffer.size());
    if (size < 0 && (errno == EINTR || errno == EAGAIN)) continue;
    if (size < 0) refuse_to_read(name, std::strerror(errno));
    if (size == 0) return text;
    text.append(buffer.data(), static_cast<std::size_t>(size));
    if (text.size() > max_bytes)
      refuse_to_read(name, fmt::format("it is larger than {} KiB", max_bytes / 1024));
  }
}

}  // namespace

Source::Source(std::string name, std::string text)
    : name_(std::move(name)), text_(std::move(text)), starts_{0} {
  if (text_.starts_with("\xEF\xBB\xBF")) text_.erase(0, 3);
  for (std::size_t at = 0; at < text_.size(); ++at) {
    const bool half_of_crlf = text_[at] == '\r' && at + 1 < text_.size() && text_[at + 1] == '\n';
    if (text_[at] == '\n' || (text_[at] == '\r' && !half_of_crlf)) starts_.push_back(at + 1);
  }
}

std::string read_bytes(const std::string& path, std::size_t max_bytes) {
  // Without O_NONBLOCK a pipe that nobody writes to could not even be opened.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY));
  if (file.number() < 0) refuse_to_read(path, std::strerror(errno));
  struct stat status {};
  if (::fstat(file.number(), &status) != 0) refuse_to_read(path, std::strerror(errno));
  if (S_ISDIR(status.st_mode)) refuse_to_read(path, "it is a folder, not a file");
  if (S_ISBLK(status.st_mode)) refuse_to_read(path, "it is a disk, not a file");
  const bool is_waited_for = is_opened_by_shell(path) || ::isatty(file.number()) != 0;
  return read_all(file.number(), path, max_bytes,
                  is_waited_for ? std::chrono::milliseconds(-1) : kPatience);
}

std::string read_bytes(std::istream& stream, const std::string& name, std::size_t max_bytes) {
  std::string text;
  std::array<char, 65536> buffer;
  while (stream) {
    stream.read(buffer.data(), buffer.size());
    text.append(buffer.data(), static_cast<std::size_t>(stream.gcount()));
    if (text.size() > max_bytes) {
      throw FileError(
          fmt::format("cannot read {}: it is larger than {} KiB", name, max_bytes / 1024));
    }
  }
  if (stream.bad()) throw FileError(fmt::format("cannot read {}: the read failed", name));
  return text;
}

Source Source::from_file(const std::string& path, std::size_t max_bytes) {
  return {path, read_bytes(path, max_bytes)};
}

Source Source::from_stream(std::istream& stream, const std::string& name, std::size_t max_bytes) {
  return {name, read_bytes(stream, name, max_bytes)};
}

std::string_view Source::line(int number) const {
  if (number < 1 || static_cast<std::size_t>(number) > starts_.size()) return {};
  const auto index = static_cast<std::size_t>(number - 1);
  const std::size_t end = index + 1 < starts_.size() ? starts_[index + 1] : text_.size();
  std::string_view line = std::string_view(text_).substr(starts_[index], end - starts_[index]);
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
  return line;
}

Place Source::place(std::size_t offset) const {
  offset = std::min(offset, text_.size());
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
  const std::size_t start = *(after - 1);
  const auto before = std::string_view(text_).substr(start, offset - start);
  return {static_cast<int>(after - starts_.begin()),
          static_cast<int>(count_characters(before)) + 1};
}

}  // namespace cahier
