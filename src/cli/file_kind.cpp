#include "cli/file_kind.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "inputs/read_programme.h"
#include "log/read_log.h"
#include "text/yaml.h"
#include "text/yaml_faults.h"

namespace cahier {
namespace {

struct Sign {
  std::string_view key;
  FileKind kind;
};

// Keys that hardly any other file has; "key", "level" or "date" alone say nothing. The first one
// that a file has decides.
constexpr std::array<Sign, 16> kSigns = {{{"programme", FileKind::programme},
                                          {"studio", FileKind::studio},
                                          {"title", FileKind::piece},
                                          {"sheets", FileKind::packet},
                                          {"repetitions", FileKind::method},
                                          {"spacing", FileKind::method},
                                          {"chunk most", FileKind::method},
                                          {"weekdays", FileKind::words},
                                          {"months", FileKind::words},
                                          {"bars", FileKind::piece},
                                          {"tempo", FileKind::piece},
                                          {"meter", FileKind::piece},
                                          {"sections", FileKind::piece},
                                          {"composer", FileKind::piece},
                                          {"instrument", FileKind::piece},
                                          {"score", FileKind::piece}}};

bool is_log_entry(const YamlNode& entry) {
  constexpr std::array<std::string_view, 5> kKeys = {"date", "edition", "done", "learned",
                                                     "recalled"};
  return std::ranges::any_of(kKeys, [&](std::string_view key) { return entry.find(key); });
}

FileKind kind_of_tree(const YamlNode& root) {
  if (is_log(root))
    return std::ranges::any_of(root.items, is_log_entry) ? FileKind::log : FileKind::stranger;
  for (const Sign& sign : kSigns)
    if (root.find(sign.key)) return sign.kind;
  return FileKind::stranger;
}

// Whether a line begins with a key and a colon, after the marks of a list or a map.
bool begins_with(std::string_view line, std::string_view key) {
  const std::size_t begin = line.find_first_not_of(" \t-{\"'");
  if (begin == std::string_view::npos) return false;
  line.remove_prefix(begin);
  if (!line.starts_with(key)) return false;
  line.remove_prefix(key.size());
  return line.starts_with(':') || line.starts_with("\":") || line.starts_with(" :");
}

FileKind kind_of_lines(const Source& source) {
  const int lines = source.place(source.text().size()).line;
  for (int number = 1; number <= lines; ++number) {
    const std::string_view line = source.line(number);
    if (line.find_first_of("-") == line.find_first_not_of(" ") &&
        (begins_with(line, "date") || begins_with(line, "edition")))
      return FileKind::log;
    for (const Sign& sign : kSigns)
      if (begins_with(line, sign.key)) return sign.kind;
  }
  return FileKind::stranger;
}

// Only blank lines and comments.
bool is_empty(const Source& source) {
  const int lines = source.place(source.text().size()).line;
  for (int number = 1; number <= lines; ++number) {
    const std::string_view line = source.line(number);
    const std::size_t begin = line.find_first_not_of(" \t");
    if (begin != std::string_view::npos && line[begin] != '#') return false;
  }
  return true;
}

// Whether it looks like MusicXML, compressed or not.
bool is_score(const Source& source) {
  const std::string_view head = std::string_view(source.text()).substr(0, 2000);
  return head.starts_with("PK\x03\x04") || head.find("<score-partwise") != std::string_view::npos ||
         head.find("<score-timewise") != std::string_view::npos;
}

std::string hint_for(const Source& source, std::string_view expected) {
  if (is_score(source))
    return "if it is a score, make a piece file from it: cahier import " + source.name() +
           " -o piece.yaml";
  if (expected.find("piece") != std::string_view::npos)
    return "a piece has lines such as title: Lantern Study and bars: 48";
  if (expected == called(FileKind::log))
    return "a log has lines such as - {date: 2027-01-05, done: [1, 2], minutes: 14}";
  return "copy a file of the same folder in the program's own templates, and change that";
}

}  // namespace

FileKind kind_of(const Source& source) {
  Diagnostics ignored;
  const std::optional<YamlNode> root = parse_yaml(source, ignored);
  return root ? kind_of_tree(*root) : kind_of_lines(source);
}

std::string_view called(FileKind kind) {
  switch (kind) {
    case FileKind::piece:
      return "a piece";
    case FileKind::programme:
      return "a programme";
    case FileKind::studio:
      return "a studio";
    case FileKind::log:
      return "a log";
    case FileKind::method:
      return "a method";
    case FileKind::packet:
      return "a packet";
    case FileKind::words:
      return "a language of words";
    case FileKind::stranger:
      break;
  }
  return "none of these";
}

bool admit(const Source& source, std::string_view expected, Diagnostics& diagnostics) {
  if (kind_of(source) != FileKind::stranger || is_empty(source)) return true;
  Diagnostics of_characters;
  Diagnostic refused;
  refused.file = source.name();
  refused.message = fmt::format("this file is not {}", expected);
  refused.hint = hint_for(source, expected);
  if (!is_score(source) && !check_characters(source, of_characters)) {
    refused = of_characters.all().front();
    refused.source_line.clear();
  }
  diagnostics.add(refused);
  return false;
}

}  // namespace cahier
