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
    for (const char32_t character : typefaces_.missing(node.text, Face::sans_bold)) {
      if (!named_.insert(character).second) continue;
      const std::string name = code_point_name(character);
      if (is_control(character))
        diagnostics_.error(
            source_, node.at,
            fmt::format("this text contains a line break, a tab or an invisible character ({})",
                        name),
            "write it on one line, in visible characters");
      else
        diagnostics_.error(
            source_, node.at,
            fmt::format("the character {} ({}) cannot be printed: the typefaces have no shape for "
                        "it",
                        encode_utf8(character), name),
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
