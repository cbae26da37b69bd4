#include "text/yaml.h"

#include <fmt/core.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cstdint>
#include <sstream>
#include <unordered_map>

#include "text/limits.h"
#include "text/utf8.h"
#include "text/yaml_faults.h"

namespace cahier {
namespace {

// Thrown from the events when reading cannot go on; the error is already reported.
struct Unusable {};

// Marks come nearly in order; counting on from the last one keeps a long line from being counted
// from its beginning for each of its values.
class Places {
 public:
  explicit Places(const Source& source) : source_(source) {}

  Place at(std::size_t offset) {
    const std::string_view text = source_.text();
    offset = std::min(offset, text.size());
    const std::size_t from = std::min(offset, offset_);
    const std::string_view between = text.substr(from, std::max(offset, offset_) - from);
    if (between.find_first_of("\r\n") != std::string_view::npos) {
      place_ = source_.place(offset);
    } else {
      const int step = static_cast<int>(count_characters(between));
      place_.column += offset < offset_ ? -step : step;
    }
    offset_ = offset;
    return place_;
  }

 private:
  const Source& source_;
  std::size_t offset_ = 0;
  Place place_;
};

// yaml-cpp 0.7 makes single bytes, which are not UTF-8, of the codes \N and \_ (U+0085 and U+00A0).
// All else is valid: the source was.
std::string as_utf8(std::string text) {
  while (const auto broken = first_invalid_utf8(text))
    text.replace(*broken, 1, encode_utf8(static_cast<unsigned char>(text[*broken])));
  return text;
}

// Builds the tree from the events of yaml-cpp, and keeps its own limits: yaml-cpp has no limits
// that would protect the memory.
class TreeBuilder : public YAML::EventHandler {
 public:
  TreeBuilder(const Source& source, Diagnostics& diagnostics)
      : source_(source), diagnostics_(diagnostics), places_(source) {}

  std::optional<YamlNode> take_root() { return std::move(root_); }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (++documents_ < 2) return;
    diagnostics_.error(source_, place(mark), "a second document begins here",
                       "a file holds one document: remove the line \"---\" and what follows it, or "
                       "put that into a file of its own");
    throw Unusable();
  }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_extras(mark, "", anchor);
    place_value(made(YamlNode::Kind::null, mark));
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    YamlNode node = made(YamlNode::Kind::null, mark);
    diagnostics_.error(source_, node.at, "references (a name after \"*\") are not allowed here",
                       "write the value out in full; if the star belongs to the text, put the text "
                       "in quotes");
    node.refused = true;
    place_value(std::move(node));
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_extras(mark, tag, anchor);
    YamlNode node = made(YamlNode::Kind::scalar, mark);
    node.quoted = tag == "!";
    check_closed(mark, node.at);
    if (value.size() > kMostTextBytes) {
      diagnostics_.error(source_, node.at,
                         fmt::format("this text is {} characters long", count_characters(value)),
                         fmt::format("shorten it; no text may be longer than {}", kMostTextBytes));
      node.refused = true;
    } else {
      node.text = as_utf8(value);
      refuse_controls(node);
    }
    place_value(std::move(node));
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(YamlNode::Kind::list, mark, tag, anchor);
  }
  void OnSequenceEnd() override { close(); }

  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(YamlNode::Kind::map, mark, tag, anchor);
  }
  void OnMapEnd() override { close(); }

 private:
  struct Frame {
    YamlNode node;
    std::optional<YamlNode> key;                     // of a map, until its value is read
    std::unordered_map<std::string, Place> earlier;  // keys seen so far
  };

  Place place(const YAML::Mark& mark) {
    return mark.is_null() ? Place{} : places_.at(static_cast<std::size_t>(mark.pos));
  }

  YamlNode made(YamlNode::Kind kind, const YAML::Mark& mark) {
    YamlNode node;
    node.kind = kind;
    node.at = place(mark);
    node.offset = static_cast<std::size_t>(std::max(0, mark.pos));
    if (++values_ > kMostValues) {
      diagnostics_.error(source_, node.at, "this file has too many values",
                         fmt::format("at most {} are read; is it the right file?", kMostValues));
      throw Unusable();
    }
    return node;
  }

  // A plain value has the tag "?" and a quoted one "!" without either having been written.
  void refuse_extras(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    const auto offset = static_cast<std::size_t>(std::max(0, mark.pos));
    const std::string& text = source_.text();
    const bool written = offset < text.size() && text[offset] == '!';
    if ((!tag.empty() && tag != "?" && tag != "!") || written) {
      diagnostics_.error(source_, place(mark), "tags (a word after \"!\") are not allowed here",
                         "leave the tag out; if the \"!\" belongs to the text, put the text in "
                         "quotes");
    }
    if (anchor != 0) {
      diagnostics_.error(source_, place(mark), "anchors (a name after \"&\") are not allowed here",
                         "leave the name out and write each value in full; if the \"&\" belongs to "
                         "the text, put the text in quotes");
    }
  }

  // yaml-cpp 0.7 takes the end of the file for the end of a text whose quotation mark is never
  // closed; everything below it would vanish into that text.
  void check_closed(const YAML::Mark& mark, Place at) {
    const std::string_view text = source_.text();
    const auto begin = static_cast<std::size_t>(std::max(0, mark.pos));
    const char quote = begin < text.size() ? text[begin] : '\0';
    if (quote != '"' && quote != '\'') return;
    for (std::size_t index = begin + 1; index < text.size(); ++index) {
      const bool doubled = quote == '\'' && text.substr(index).starts_with("''");
      if (doubled || (quote == '"' && text[index] == '\\')) {
        ++index;
      } else if (text[index] == quote) {
        return;
      }
    }
    diagnostics_.error(source_, at, "a quotation mark opened here is never closed",
                       "close the text with the same quotation mark");
    throw Unusable();
  }

  void refuse_controls(YamlNode& node) {
    const auto is_refused = [](char32_t each) {
      return is_control(each) && each != U'\n' && each != U'\t';
    };
    const std::vector<char32_t> characters = decode_utf8(node.text);
    const auto control = std::ranges::find_if(characters, is_refused);
    if (control == characters.end()) return;
    diagnostics_.error(source_, place_in(source_, node, is_refused),
                       fmt::format("an invisible control character (U+{:04X}) in a text",
                                   static_cast<std::uint32_t>(*control)),
                       "remove it, or write a space in its place");
    node.refused = true;
  }

  void open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag,
            YAML::anchor_t anchor) {
    refuse_extras(mark, tag, anchor);
    Frame frame{made(kind, mark), std::nullopt, {}};
    if (open_.size() >= kMostDepth) {
      diagnostics_.error(
          source_, frame.node.at, "lists are nested too deeply here",
          fmt::format("at most {} levels are read; is a bracket left open?", kMostDepth));
      throw Unusable();
    }
    open_.push_back(std::move(frame));
  }

  void close() {
    YamlNode node = std::move(open_.back().node);
    open_.pop_back();
    place_value(std::move(node));
  }

  void place_value(YamlNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
      return;
    }
    Frame& frame = open_.back();
    if (frame.node.kind == YamlNode::Kind::list) {
      frame.node.items.push_back(std::move(node));
    } else if (!frame.key) {
      check_key(frame, node);
      frame.key = std::move(node);
    } else {
      // A value left out is marked where the next one begins; point at its name instead.
      if (node.kind == YamlNode::Kind::null && node.at.line != frame.key->at.line) {
        node.at = frame.key->at;
      }
      const bool usable = frame.key->kind == YamlNode::Kind::scalar && !frame.key->refused;
      if (usable) frame.node.entries.push_back({std::move(*frame.key), std::move(node)});
      frame.key.reset();
    }
  }

  void check_key(Frame& frame, YamlNode& key) {
    if (key.refused) return;
    if (key.kind != YamlNode::Kind::scalar) {
      diagnostics_.error(source_, key.at, "missing name before the colon",
                         "write \"name: value\", as in \"bars: 1-16\"");
    } else if (key.text == "<<" && !key.quoted) {
      diagnostics_.error(source_, key.at, "merging (\"<<\") is not allowed here",
                         "write the values out in full");
      key.refused = true;
    } else if (const auto [entry, fresh] = frame.earlier.emplace(key.text, key.at); !fresh) {
      diagnostics_.error(source_, key.at,
                         fmt::format("\"{}\" is given twice; the other is on line {}", key.text,
                                     entry->second.line),
                         "keep one of the two");
    }
  }

  const Source& source_;
  Diagnostics& diagnostics_;
  Places places_;
  std::vector<Frame> open_;
  std::optional<YamlNode> root_;
  std::size_t values_ = 0;
  int documents_ = 0;
};

// yaml-cpp does not take a CR alone for the end of a line. Every offset stays the same.
std::string with_line_feeds(std::string text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool half_of_crlf = at + 1 < text.size() && text[at + 1] == '\n';
    if (text[at] == '\r' && !half_of_crlf) text[at] = '\n';
  }
  return text;
}

// Where the sign stands with which a list in brackets has too many. yaml-cpp keeps all of such a
// list, some 250 bytes for each sign, before it hands on its first value. Quotation marks are not
// looked at: a list in brackets cannot hold a line that begins with a hyphen, so that each such
// line begins to count anew.
std::optional<std::size_t> one_sign_too_many(std::string_view text) {
  std::size_t signs = 0;
  bool line_begins = true;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char letter = text[at];
    if (letter == '\n') {
      line_begins = true;
      continue;
    }
    if (line_begins && letter == '-' && text.substr(at + 1).starts_with(' ')) signs = 0;
    if (letter != ' ') line_begins = false;
    const bool sign = letter == '[' || letter == '{' || letter == ',';
    if (sign && ++signs > kMostFlowSigns) return at;
  }
  return std::nullopt;
}

}  // namespace

const YamlNode* YamlNode::find(std::string_view key) const {
  for (const Entry& entry : entries) {
    if (entry.key.text == key) return &entry.value;
  }
  return nullptr;
}

std::optional<YamlNode> parse_yaml(const Source& source, Diagnostics& diagnostics) {
  if (source.text().size() > kMostFileBytes) {
    diagnostics.error(
        source, {1, 1}, "this file is too long",
        fmt::format("at most {} KiB are read; is it the right file?", kMostFileBytes / 1024));
    return std::nullopt;
  }
  if (!check_characters(source, diagnostics)) return std::nullopt;
  const std::string text = with_line_feeds(source.text());
  if (const auto at = one_sign_too_many(text)) {
    diagnostics.error(source, source.place(*at), "this list has too many brackets and commas",
                      fmt::format("at most {} are read; is it the right file?", kMostFlowSigns));
    return std::nullopt;
  }
  TreeBuilder builder(source, diagnostics);
  try {
    std::istringstream stream(text);
    YAML::Parser parser(stream);
    while (parser.HandleNextDocument(builder)) {
    }
  } catch (const Unusable&) {
    return std::nullopt;
  } catch (const YAML::Exception& fault) {
    report_yaml_fault(source, fault, diagnostics);
    return std::nullopt;
  }
  std::optional<YamlNode> root = builder.take_root();
  if (!root || (root->kind == YamlNode::Kind::null && !root->refused)) {
    // Without its line: a file of comments may be anybody's.
    Diagnostic empty;
    empty.file = source.name();
    empty.message = "the file is empty";
    empty.hint = "write lines such as \"bars: 48\"";
    diagnostics.add(empty);
    return std::nullopt;
  }
  return root;
}

}  // namespace cahier
