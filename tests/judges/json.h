// A small reader of JSON (RFC 8259), for checking what the program writes without its own code.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace judge {

class Json {
 public:
  enum class Kind { null, truth, number, text, list, object };

  // Throws std::runtime_error with the offset of the first fault; anything after the value but
  // white space is one.
  static Json parse(std::string_view text);

  Kind kind() const { return kind_; }
  bool is_null() const { return kind_ == Kind::null; }
  // Each throws std::runtime_error when the value is of another kind, at() when the key is absent.
  bool truth() const;
  double number() const;
  int whole() const;
  const std::string& text() const;
  const std::vector<Json>& list() const;
  const Json& at(const std::string& key) const;
  bool has(const std::string& key) const { return members_.contains(key); }

 private:
  friend class JsonReader;

  void require(Kind kind, std::string_view name) const;

  Kind kind_ = Kind::null;
  bool truth_ = false;
  double number_ = 0;
  std::string text_;
  std::vector<Json> items_;
  std::map<std::string, Json> members_;
};

}  // namespace judge
