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
      diagnostics_.error(
          source_, node.at,
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

void refuse_unprintable(const Typefaces& typefaces, const std::string& path) {
  const Source source = Source::from_file(path);
  Diagnostics diagnostics;
  if (const auto root = parse_yaml(source, diagnostics))
    Search(typefaces, source, diagnostics).node(*root);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace cahier
