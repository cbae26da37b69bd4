// YAML as a tree that remembers where everything stood, stricter than YAML itself:
// no anchors, no aliases, no tags, no duplicate keys, one document, limited depth and size.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

struct YamlNode {
  enum class Kind { null, scalar, list, map };
  struct Entry;

  Kind kind = Kind::null;
  std::string text;      // of a scalar
  bool quoted = false;   // a scalar in quotes is never a number or null
  bool refused = false;  // already reported (an alias, a text too long): say nothing more about it
  Place at;
  std::size_t offset = 0;       // of `at` in the text of the source
  std::vector<YamlNode> items;  // of a list
  std::vector<Entry> entries;   // of a map, in file order

  // The value under `key`, or nullptr.
  const YamlNode* find(std::string_view key) const;
};

struct YamlNode::Entry {
  YamlNode key;
  YamlNode value;
};

// Parses one document. No text of the tree holds a control character other than a line feed or a
// tab (see is_control). Adds a diagnostic for every error and returns nullopt when the text is
// not usable at all (syntax error, not UTF-8, empty, too deep); duplicate keys, anchors and tags
// are errors, but the tree is still returned so that more errors can be reported in the same run.
std::optional<YamlNode> parse_yaml(const Source& source, Diagnostics& diagnostics);

// Where the first character that `is_meant` stands in a scalar: as itself, or as a backslash code
// in double quotes. node.at where that cannot be told, as for the line ends of a text on several
// lines.
Place place_in(const Source& source, const YamlNode& node,
               const std::function<bool(char32_t)>& is_meant);

// The text of a scalar (spaces at its ends dropped), of `most` characters at most, not blank,
// without control characters; else nullopt after a diagnostic. `what` names it in messages: "a
// part's name".
std::optional<std::string> yaml_text(const Source& source, const YamlNode& node,
                                     std::string_view what, std::size_t most,
                                     Diagnostics& diagnostics);

// A whole number or a decimal number of a scalar that is not quoted, with nothing after it. They
// add no diagnostic: the caller knows whether it is an error.
std::optional<long long> yaml_whole(const YamlNode& node);
std::optional<double> yaml_number(const YamlNode& node);

// yes, no, true, false, on, off, in any of the three letter cases of YAML 1.1.
std::optional<bool> yaml_yes_no(std::string_view text);

// Reads the fields of one map, and remembers which keys were asked for.
// Every getter returns nullopt when the key is absent, or when the value is wrong (after adding
// a diagnostic that says what was expected).
class YamlFields {
 public:
  // REQUIRES: source, node and diagnostics outlive this object. When `node` is not a map an
  // error is added and every field reads as absent.
  YamlFields(const Source& source, const YamlNode& node, Diagnostics& diagnostics);

  const YamlNode* node(std::string_view key);
  // A text of `most` characters at most, not blank, without control characters; spaces at its ends
  // are dropped. A number counts as a text.
  std::optional<std::string> text(std::string_view key, std::size_t most = 500);
  std::optional<int> whole(std::string_view key, int least, int most);
  std::optional<double> number(std::string_view key, double least, double most);
  std::optional<bool> yes_no(std::string_view key);
  // The items; a single value that is no list counts as a list of one.
  std::vector<const YamlNode*> list(std::string_view key);
  void missing(std::string_view key, std::string hint);

  // Reports every key that was never asked for, with a did-you-mean among those that were.
  // Call it last.
  void refuse_unknown();

  // Counts a key as known without reading it.
  void accept(std::string_view key) { asked_.emplace_back(key); }
  // True when this is a map without the key: then missing() is the right error.
  bool lacks(std::string_view key) const { return is_map() && !node_.find(key); }
  bool is_map() const { return node_.kind == YamlNode::Kind::map; }
  // Where to point when the whole map is meant.
  Place at() const { return node_.at; }

  const Source& source() const { return source_; }
  Diagnostics& diagnostics() const { return diagnostics_; }

 private:
  const Source& source_;
  const YamlNode& node_;
  Diagnostics& diagnostics_;
  std::vector<std::string> asked_;
};

}  // namespace cahier
