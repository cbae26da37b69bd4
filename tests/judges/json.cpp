#include "json.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace judge {

class JsonReader {
 public:
  explicit JsonReader(std::string_view text) : text_(text) {}

  Json whole_text() {
    Json value = read();
    skip();
    if (at_ != text_.size()) fail("something after the end");
    return value;
  }

 private:
  Json read() {
    skip();
    Json value;
    if (take("null")) return value;
    if (take("true") || take("false")) {
      value.kind_ = Json::Kind::truth;
      value.truth_ = text_[at_ - 2] == 'u';
    } else if (take("[")) {
      value.kind_ = Json::Kind::list;
      while (!closed("]", value.items_.empty())) value.items_.push_back(read());
    } else if (take("{")) {
      value.kind_ = Json::Kind::object;
      while (!closed("}", value.members_.empty())) member(value);
    } else if (take("\"")) {
      value.kind_ = Json::Kind::text;
      value.text_ = rest_of_text();
    } else {
      value.kind_ = Json::Kind::number;
      value.number_ = read_number();
    }
    return value;
  }

  void member(Json& value) {
    skip();
    if (!take("\"")) fail("a member without a name");
    std::string name = rest_of_text();
    skip();
    if (!take(":")) fail("a name without a colon");
    if (!value.members_.emplace(name, read()).second) fail("a name given twice");
  }

  // True after the closing sign; takes the comma otherwise.
  bool closed(std::string_view sign, bool first) {
    skip();
    if (take(sign)) return true;
    if (!first && !take(",")) fail("a comma is missing");
    return false;
  }

  std::string rest_of_text() {
    std::string text;
    while (true) {
      if (at_ == text_.size()) fail("a text without an end");
      const char letter = text_[at_++];
      if (letter == '"') return text;
      if (static_cast<unsigned char>(letter) < 0x20) fail("a control character in a text");
      text += letter == '\\' ? escaped() : letter;
    }
  }

  // Characters written as \u are only compared with themselves here: those past ASCII become "?".
  char escaped() {
    if (at_ == text_.size()) fail("a text without an end");
    switch (const char letter = text_[at_++]) {
      case 'n':
        return '\n';
      case 't':
        return '\t';
      case 'r':
        return '\r';
      case 'b':
        return '\b';
      case 'f':
        return '\f';
      case '"':
      case '\\':
      case '/':
        return letter;
      case 'u': {
        unsigned code = 0;
        const char* begin = text_.data() + at_;
        if (at_ + 4 > text_.size() || std::from_chars(begin, begin + 4, code, 16).ptr != begin + 4)
          fail("a wrong \\u");
        at_ += 4;
        return code < 128 ? static_cast<char>(code) : '?';
      }
      default:
        fail("an unknown escape");
    }
  }

  double read_number() {
    double number = 0;
    const auto read = std::from_chars(text_.data() + at_, text_.data() + text_.size(), number);
    if (read.ec != std::errc() || !std::isfinite(number)) fail("no value");
    at_ = static_cast<std::size_t>(read.ptr - text_.data());
    return number;
  }

  bool take(std::string_view sign) {
    if (!text_.substr(at_).starts_with(sign)) return false;
    at_ += sign.size();
    return true;
  }

  void skip() { at_ = std::min(text_.find_first_not_of(" \t\r\n", at_), text_.size()); }

  [[noreturn]] void fail(const std::string& what) const {
    throw std::runtime_error("JSON at " + std::to_string(at_) + ": " + what);
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

Json Json::parse(std::string_view text) { return JsonReader(text).whole_text(); }

void Json::require(Kind kind, std::string_view name) const {
  if (kind_ != kind) throw std::runtime_error("JSON: a value that is no " + std::string(name));
}

bool Json::truth() const {
  require(Kind::truth, "truth");
  return truth_;
}

double Json::number() const {
  require(Kind::number, "number");
  return number_;
}

int Json::whole() const {
  if (number() != std::floor(number()))
    throw std::runtime_error("JSON: a number that is not whole");
  return static_cast<int>(number_);
}

const std::string& Json::text() const {
  require(Kind::text, "text");
  return text_;
}

const std::vector<Json>& Json::list() const {
  require(Kind::list, "list");
  return items_;
}

const Json& Json::at(const std::string& key) const {
  require(Kind::object, "object");
  const auto member = members_.find(key);
  if (member == members_.end()) throw std::runtime_error("JSON: no \"" + key + "\"");
  return member->second;
}

}  // namespace judge
