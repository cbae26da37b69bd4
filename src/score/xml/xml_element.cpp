#include "score/xml/xml_element.h"

#include <charconv>
#include <cmath>

namespace cahier {
namespace {

template <typename Number>
std::optional<Number> parsed(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  Number number{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (text.empty() || error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return number;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::optional<double> xml_number(std::string_view text) {
  const std::optional<double> number = parsed<double>(text);
  return number && std::isfinite(*number) ? number : std::nullopt;
}

std::optional<int> xml_whole(std::string_view text) { return parsed<int>(text); }

std::vector<XmlElement> XmlElement::children() const {
  std::vector<XmlElement> found;
  for (const pugi::xml_node node : node_.children())
    if (node.type() == pugi::node_element) found.emplace_back(*source_, node);
  return found;
}

std::vector<XmlElement> XmlElement::children(const char* name) const {
  std::vector<XmlElement> found;
  for (const pugi::xml_node node : node_.children(name)) found.emplace_back(*source_, node);
  return found;
}

std::string XmlElement::text() const { return std::string(trimmed(node_.child_value())); }

std::string XmlElement::attribute(const char* name) const {
  return std::string(trimmed(node_.attribute(name).value()));
}

bool XmlElement::says_yes(const char* attribute) const {
  return std::string_view(node_.attribute(attribute).value()) == "yes";
}

std::size_t XmlElement::offset() const {
  const std::ptrdiff_t found = node_.offset_debug();
  if (found <= 0) return 0;
  return static_cast<std::size_t>(found) - 1;  // the sign before the name
}

void XmlElement::refuse(std::string message, std::string hint, std::string where) const {
  source_->refuse(offset(), std::move(message), std::move(hint), std::move(where));
}

}  // namespace cahier
