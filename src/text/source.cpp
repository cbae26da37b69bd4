#include "text/source.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "text/errors.h"
#include "text/utf8.h"

namespace cahier {

Source::Source(std::string name, std::string text)
    : name_(std::move(name)), text_(std::move(text)), starts_{0} {
  if (text_.starts_with("\xEF\xBB\xBF")) text_.erase(0, 3);
  for (std::size_t at = 0; at < text_.size(); ++at) {
    const bool half_of_crlf = text_[at] == '\r' && at + 1 < text_.size() && text_[at + 1] == '\n';
    if (text_[at] == '\n' || (text_[at] == '\r' && !half_of_crlf)) starts_.push_back(at + 1);
  }
}

Source Source::from_file(const std::string& path, std::size_t max_bytes) {
  std::error_code ignored;
  if (std::filesystem::is_directory(path, ignored)) {
    throw FileError(fmt::format("cannot read {}: it is a folder, not a file", path));
  }
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    const std::string reason = errno != 0 ? std::strerror(errno) : "it could not be opened";
    throw FileError(fmt::format("cannot read {}: {}", path, reason));
  }
  return from_stream(file, path, max_bytes);
}

Source Source::from_stream(std::istream& stream, const std::string& name, std::size_t max_bytes) {
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
  return Source(name, std::move(text));
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
