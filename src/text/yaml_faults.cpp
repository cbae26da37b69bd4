#include "text/yaml_faults.h"

#include <fmt/core.h>
#include <yaml-cpp/exceptions.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "text/utf8.h"

namespace cahier {
namespace {

struct Wording {
  std::string_view theirs;  // how yaml-cpp's message begins
  std::string_view message;
  std::string_view hint;
};

constexpr std::string_view kQuoteHint =
    "if it belongs to the text, put the whole text in quotes: title: \"Waltz: the second\"";

const std::array<Wording, 17> kWordings = {{
    {YAML::ErrorMsg::TAB_IN_INDENTATION, "a tab where spaces are needed",
     "begin indented lines with spaces, never with a tab"},
    {YAML::ErrorMsg::EOF_IN_SCALAR, "a quotation mark opened here or above is never closed",
     "close the text with the same quotation mark"},
    {YAML::ErrorMsg::DOC_IN_SCALAR, "a quotation mark opened above is never closed",
     "close the text with the same quotation mark"},
    {YAML::ErrorMsg::END_OF_MAP_FLOW, "a brace \"{\" is not closed, or a comma is missing",
     "write {name: value, name: value}"},
    {YAML::ErrorMsg::END_OF_SEQ_FLOW, "a bracket \"[\" is not closed, or a comma is missing",
     "write [one, two, three]"},
    {YAML::ErrorMsg::FLOW_END, "a bracket or brace closed here was never opened",
     "remove it, or open it with \"[\" or \"{\" before"},
    {YAML::ErrorMsg::END_OF_MAP, "this line does not fit the lines above it",
     "write \"name: value\", and begin lines that belong together at the same column"},
    {YAML::ErrorMsg::END_OF_SEQ, "this line does not fit the list above it",
     "begin each line of a list with \"- \", all at the same column"},
    {YAML::ErrorMsg::BLOCK_ENTRY, "a list cannot begin here",
     "put the \"- \" on a line of its own below the name it belongs to"},
    {YAML::ErrorMsg::MAP_KEY, "a name cannot come here",
     "write \"name: value\", one on each line, all at the same column"},
    {YAML::ErrorMsg::MAP_VALUE, "a second colon in the middle of a value",
     "write one on each line, at the same column; if the colon belongs to the text, put the whole "
     "text in quotes: title: \"Waltz: the second\""},
    {YAML::ErrorMsg::INVALID_ESCAPE, "a backslash before a letter that cannot follow it",
     "write two backslashes for one, or use single quotes"},
    {YAML::ErrorMsg::INVALID_HEX, "an incomplete backslash code", "write the letter itself"},
    {YAML::ErrorMsg::INVALID_UNICODE, "a backslash code that is not a character",
     "write the letter itself"},
    {YAML::ErrorMsg::UNKNOWN_TOKEN, "a value cannot begin with this character", kQuoteHint},
    {YAML::ErrorMsg::UNKNOWN_ANCHOR, "references (a name after \"*\") are not allowed here",
     "write the value out in full; if the star belongs to the text, put the text in quotes"},
    {YAML::ErrorMsg::CHAR_IN_BLOCK, "text cannot follow \"|\" or \">\" on the same line",
     "begin the text on the next line"},
}};

// The place of the first tab that indents a line with something on it, up to line `last`.
std::optional<Place> indenting_tab(const Source& source, int last) {
  for (int number = 1; number <= last; ++number) {
    const std::string_view line = source.line(number);
    const std::size_t begins = line.find_first_not_of(" \t");
    if (begins == std::string_view::npos || line[begins] == '#') continue;
    const std::size_t tab = line.substr(0, begins).find('\t');
    if (tab != std::string_view::npos) return Place{number, static_cast<int>(tab) + 1};
  }
  return std::nullopt;
}

bool is_first_colon(const Source& source, Place at) {
  const std::string_view line = source.line(at.line);
  const std::size_t colon = line.find(':');
  return colon != std::string_view::npos &&
         count_characters(line.substr(0, colon)) + 1 == static_cast<std::size_t>(at.column);
}

// A byte order mark of UTF-16, or every other byte a zero, as such a file without a mark has.
bool looks_like_utf16(std::string_view text) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return true;
  const std::string_view head = text.substr(0, 64);
  const auto zeros = std::count(head.begin(), head.end(), '\0');
  return head.size() >= 4 && static_cast<std::size_t>(zeros) * 5 >= head.size() * 2;
}

}  // namespace

bool check_characters(const Source& source, Diagnostics& diagnostics) {
  const std::string& text = source.text();
  if (looks_like_utf16(text)) {
    Diagnostic fault;
    fault.file = source.name();
    fault.message = "this file is not UTF-8 but looks like UTF-16";
    fault.hint = "save the file as UTF-8";
    diagnostics.add(fault);
    return false;
  }
  const auto invalid = first_invalid_utf8(text);
  const auto is_refused = [](char each) {
    const auto byte = static_cast<unsigned char>(each);
    return (byte < 0x20 && each != '\t' && each != '\n' && each != '\r') || byte == 0x7F;
  };
  const auto control = std::find_if(text.begin(), text.end(), is_refused);
  const auto control_at = static_cast<std::size_t>(control - text.begin());
  if (invalid && *invalid < control_at) {
    diagnostics.error(source, source.place(*invalid),
                      fmt::format("the byte {:02X} here is not UTF-8",
                                  static_cast<unsigned char>(text[*invalid])),
                      "save the file as UTF-8");
    return false;
  }
  if (control == text.end()) return true;
  diagnostics.error(source, source.place(control_at),
                    fmt::format("an invisible control character (number {})",
                                static_cast<int>(static_cast<unsigned char>(*control))),
                    "remove it; if the whole file looks strange, it is not a text file");
  return false;
}

void report_yaml_fault(const Source& source, const YAML::Exception& fault,
                       Diagnostics& diagnostics) {
  const Place at = fault.mark.is_null()
                       ? Place{}
                       : source.place(static_cast<std::size_t>(std::max(0, fault.mark.pos)));
  if (const auto tab = indenting_tab(source, at.line + 1)) {
    diagnostics.error(source, *tab, "a tab where spaces are needed",
                      "begin indented lines with spaces, never with a tab");
    return;
  }
  const std::string_view theirs = fault.msg;
  // The longest beginning wins: "end of map flow not found" is not "end of map not found".
  const Wording* best = nullptr;
  for (const Wording& wording : kWordings) {
    if (theirs.starts_with(wording.theirs) &&
        (!best || wording.theirs.size() > best->theirs.size())) {
      best = &wording;
    }
  }
  if (best && best->theirs == YAML::ErrorMsg::MAP_VALUE && is_first_colon(source, at)) {
    diagnostics.error(
        source, at, "a line \"name: value\" does not fit here",
        "is the colon after the name missing on the line above, or this line indented "
        "too far?");
    return;
  }
  if (best) {
    diagnostics.error(source, at, std::string(best->message), std::string(best->hint));
    return;
  }
  diagnostics.error(source, at, "this line cannot be read",
                    "write \"name: value\", indented with spaces; put a text with unusual signs in "
                    "quotes");
}

}  // namespace cahier
