// One element of a score's XML, which knows its place in the file.
#pragma once

#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "score/xml/score_text.h"

namespace cahier {

// May be empty, which is what child() returns where there is none: an empty one has no name, no
// text and no children.
class XmlElement {
 public:
  XmlElement() = default;
  // REQUIRES: `source` and the tree of `node` outlive this object.
  XmlElement(const ScoreText& source, pugi::xml_node node) : source_(&source), node_(node) {}

  explicit operator bool() const { return static_cast<bool>(node_); }
  std::string_view name() const { return node_.name(); }
  bool is(std::string_view name) const { return name == node_.name(); }
  XmlElement none() const { return {*source_, pugi::xml_node()}; }
  XmlElement child(const char* name) const { return {*source_, node_.child(name)}; }
  bool has(const char* name) const { return static_cast<bool>(node_.child(name)); }
  std::vector<XmlElement> children() const;                  // elements only
  std::vector<XmlElement> children(const char* name) const;  // those of one name

  // Without blanks at its ends; empty where there is none.
  std::string text() const;
  std::string attribute(const char* name) const;
  bool has_attribute(const char* name) const { return static_cast<bool>(node_.attribute(name)); }
  // "yes" is true; all else is false.
  bool says_yes(const char* attribute) const;

  std::size_t offset() const;  // of its tag, in the text
  // Throws InputError that points here.
  [[noreturn]] void refuse(std::string message, std::string hint, std::string where = {}) const;

 private:
  const ScoreText* source_ = nullptr;
  pugi::xml_node node_;
};

// A number written as in 12, -1 or 0.5; nullopt for anything else.
std::optional<double> xml_number(std::string_view text);
std::optional<int> xml_whole(std::string_view text);

// Text without blanks at its ends.
std::string_view trimmed(std::string_view text);

}  // namespace cahier
