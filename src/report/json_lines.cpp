#include "report/json_lines.h"

#include <fmt/format.h>

#include <cstdint>
#include <nlohmann/json.hpp>

#include "text/utf8.h"

namespace cahier {
namespace {

using Json = nlohmann::ordered_json;

class JsonWriter {
 public:
  explicit JsonWriter(const JsonLineBreaks& breaks) : breaks_(breaks) {}

  void write(const Json& json, const std::string& path) {
    if (!json.is_structured()) {
      scalar(json);
      return;
    }
    text_ += json.is_array() ? '[' : '{';
    std::string_view comma;
    for (const auto& [key, value] : json.items()) {
      const std::string at = path + (json.is_array() ? "[]" : "." + key);
      text_ += comma;
      if (!comma.empty()) space(at);
      comma = ",";
      if (json.is_object()) {
        scalar(key);
        text_ += ':';
        space(at + ":");
      }
      write(value, at);
    }
    text_ += json.is_array() ? ']' : '}';
  }

  std::string text() && { return std::move(text_); }

 private:
  void scalar(const Json& json) {
    // JSON itself demands escapes up to U+001F only; a terminal obeys more.
    for (const char32_t character :
         decode_utf8(json.dump(-1, ' ', false, Json::error_handler_t::replace)))
      text_ += is_control(character)
                   ? fmt::format("\\u{:04x}", static_cast<std::uint32_t>(character))
                   : encode_utf8(character);
  }

  void space(const std::string& at) {
    for (const auto& [indent, places] : breaks_)
      if (places.contains(at)) {
        text_ += "\n" + std::string(indent, ' ');
        return;
      }
    text_ += ' ';
  }

  const JsonLineBreaks& breaks_;
  std::string text_;
};

}  // namespace

std::string json_lines(const Json& json, const JsonLineBreaks& breaks) {
  JsonWriter writer(breaks);
  writer.write(json, "");
  return std::move(writer).text();
}

}  // namespace cahier
