// A text file in memory, with its name, so that messages can quote its lines.
#pragma once

#include <istream>
#include <string>
#include <string_view>
#include <vector>

#include "text/place.h"

namespace cahier {

// The whole content of a file. Throws FileError when it cannot be opened or read, or is larger than
// `max_bytes`.
std::string read_bytes(const std::string& path, std::size_t max_bytes);
// What is left of a stream, with the same limit.
std::string read_bytes(std::istream& stream, const std::string& name, std::size_t max_bytes);

class Source {
 public:
  static constexpr std::size_t kMostBytes = 4u << 20;

  // `name` is what messages call the file; `text` is its whole content. A leading byte order mark
  // of UTF-8 is dropped, so that column 1 is the first character one sees.
  Source(std::string name, std::string text);

  // Reads a file. Throws FileError when it cannot be opened or read, or is larger than
  // `max_bytes`.
  static Source from_file(const std::string& path, std::size_t max_bytes = kMostBytes);
  // Reads what is left of a stream, with the same limit.
  static Source from_stream(std::istream& stream, const std::string& name,
                            std::size_t max_bytes = kMostBytes);

  const std::string& name() const { return name_; }
  const std::string& text() const { return text_; }

  // The line without its end; empty past the last line.
  std::string_view line(int number) const;

  // Where the byte at `offset` stands. Lines end at LF, CR LF or CR; an offset past the end is the
  // place after the last character.
  Place place(std::size_t offset) const;

 private:
  std::string name_;
  std::string text_;
  std::vector<std::size_t> starts_;
};

}  // namespace cahier
