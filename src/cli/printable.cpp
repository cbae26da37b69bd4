#include "cli/printable.h"

#include <fmt/format.h>

#include <set>

#include "text/errors.h"
#include "text/utf8.h"
#include "text/yaml.h"

namespace cahier {
namespace {

class Search {
 public:
  Search(const Typefaces& typefaces, const Source& source, Diagnostics& diagnostics)
      : typefaces_(typefaces), source_(source), diagnostics_(diagnostics) {}

  void node(const YamlNode& node) {
    if (node.kind == YamlNode::Kind::scalar) text(node);
    for (const YamlNode& item : node.items) this->node(item);
    for (const YamlNode::Entry& entry : node.entries) this->node(entry.value);
  }

 private:
  void text(const YamlNode& node) {
    for (const Face face : {Face::sans, Face::sans_bold}) text(node, face);
  }

  void text(const YamlNode& node, Face face) {
    for (const char32_t character : typefaces_.missing(node.text, face)) {
      if (is_control(character)) continue;  // the readers refuse it, with what they know of it
      if (!named_.insert(character).second) continue;
      const auto is_it = [=](char32_t each) { return each == character; };
      diagnostics_.error(
          source_, place_in(source_, node, is_it),
          fmt::format("the character {} ({}) cannot be printed: the typefaces have no shape for it",
                      encode_utf8(character), code_point_name(character)),
          "write it in Latin, Greek or Cyrillic letters, or leave it out");
    }
  }

  const Typefaces& typefaces_;
  const Source& source_;
  Diagnostics& diagnostics_;
  std::set<char32_t> named_;
};

}  // namespace

void name_unprintable(const Typefaces& typefaces, const Source& source, Diagnostics& diagnostics) {
  Diagnostics named_by_its_reader;
  if (const auto root = parse_yaml(source, named_by_its_reader))
    Search(typefaces, source, diagnostics).node(*root);
}

void refuse_unprintable(const Typefaces& typefaces, const std::vector<Source>& sources) {
  Diagnostics diagnostics;
  for (const Source& source : sources) name_unprintable(typefaces, source, diagnostics);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace cahier
