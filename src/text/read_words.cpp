// Reads a language and checks it against the built-in English.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <regex>
#include <set>
#include <stdexcept>

#include "text/did_you_mean.h"
#include "text/templates.h"
#include "text/utf8.h"
#include "text/words.h"
#include "text/yaml.h"

namespace cahier {
namespace {

constexpr std::size_t kLongestText = 2000;  // characters

bool is_name(std::string_view name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char letter) {
    return (letter >= 'a' && letter <= 'z') || letter == '_';
  });
}

// The names in braces; nullopt when a brace stands alone or holds no name.
std::optional<std::set<std::string>> placeholders(std::string_view text) {
  std::set<std::string> names;
  while (true) {
    const auto brace = text.find_first_of("{}");
    if (brace == std::string_view::npos) return names;
    const auto close = text.find('}', brace);
    if (text[brace] == '}' || close == std::string_view::npos) return std::nullopt;
    const std::string_view name = text.substr(brace + 1, close - brace - 1);
    if (!is_name(name)) return std::nullopt;
    names.emplace(name);
    text.remove_prefix(close + 1);
  }
}

// The tag of a language goes into the PDF: well formed by RFC 5646, section 2.1, without its
// grandfathered tags.
bool is_language_tag(const std::string& text) {
  static const std::regex kTag(
      "([a-z]{2,3}(-[a-z]{3}){0,3}|[a-z]{4,8})(-[a-z]{4})?(-([a-z]{2}|[0-9]{3}))?"
      "(-([a-z0-9]{5,8}|[0-9][a-z0-9]{3}))*(-[0-9a-wyz](-[a-z0-9]{2,8})+)*(-x(-[a-z0-9]{1,8})+)?"
      "|x(-[a-z0-9]{1,8})+",
      std::regex::icase);
  constexpr std::size_t kLongestTag = 60;
  return text.size() <= kLongestTag && std::regex_match(text, kTag);
}

// Lists that are indexed must keep their length; other lists are paragraphs.
bool is_counted_list(std::string_view key) {
  return key.starts_with("months.") || key.starts_with("weekdays.");
}

}  // namespace

class WordsReader {
 public:
  // `english` is nullptr for the English itself.
  WordsReader(const Source& source, Diagnostics& diagnostics, const Words* english)
      : source_(source), diagnostics_(diagnostics), english_(english) {}

  Words read() {
    const auto root = parse_yaml(source_, diagnostics_);
    if (!root) return {};
    if (root->kind != YamlNode::Kind::map) {
      diagnostics_.error(source_, root->at, "words must be groups of keys",
                         "write \"group:\", and under it \"key: text\"");
      return {};
    }
    for (const auto& group : root->entries) read_group(group);
    if (english_ != nullptr) name_missing(*root);
    return std::move(words_);
  }

 private:
  void read_group(const YamlNode::Entry& group) {
    if (english_ != nullptr && groups().count(group.key.text) == 0) {
      diagnostics_.error(
          source_, group.key.at,
          fmt::format("unknown group \"{}\"{}", group.key.text,
                      ++unknown_ <= Diagnostics::kMostKept
                          ? did_you_mean(group.key.text, {groups().begin(), groups().end()})
                          : ""));
      return;
    }
    if (group.value.kind != YamlNode::Kind::map) {
      diagnostics_.error(source_, group.value.at,
                         fmt::format("\"{}\" must hold keys and texts", group.key.text));
      return;
    }
    for (const auto& entry : group.value.entries)
      read_entry(fmt::format("{}.{}", group.key.text, entry.key.text), entry);
  }

  void read_entry(const std::string& key, const YamlNode::Entry& entry) {
    const Words::Entry* like = nullptr;
    if (english_ != nullptr) {
      const auto found = english_->entries_.find(key);
      if (found == english_->entries_.end()) {
        diagnostics_.error(
            source_, entry.key.at,
            fmt::format(
                "unknown key \"{}\"{}", key,
                ++unknown_ <= Diagnostics::kMostKept ? did_you_mean(key, english_->keys()) : ""));
        return;
      }
      like = &found->second;
    }
    Words::Entry read;
    read.is_list = entry.value.kind == YamlNode::Kind::list;
    // Kept even when its value is invalid, so that it is not reported as missing as well.
    Words::Entry& kept = words_.entries_[key];
    if (like != nullptr && read.is_list != like->is_list) {
      diagnostics_.error(source_, entry.value.at,
                         fmt::format("\"{}\" must be {}", key,
                                     like->is_list ? "a list of texts" : "one text, not a list"));
      return;
    }
    if (read.is_list) {
      for (const YamlNode& item : entry.value.items) read_text(key, item, like, read);
      check_length(key, entry.value, like);
    } else {
      read_text(key, entry.value, like, read);
    }
    kept = std::move(read);
  }

  void read_text(const std::string& key, const YamlNode& node, const Words::Entry* like,
                 Words::Entry& into) {
    if (node.refused) return;
    if (node.kind == YamlNode::Kind::map || node.kind == YamlNode::Kind::list)
      return diagnostics_.error(source_, node.at, fmt::format("\"{}\" must be text", key));
    if (node.text.find_first_not_of(" \n\t") == std::string::npos)
      return diagnostics_.error(source_, node.at, fmt::format("\"{}\" must not be empty", key));
    if (std::ranges::any_of(decode_utf8(node.text), is_control))
      return diagnostics_.error(
          source_, place_in(source_, node, is_control),
          fmt::format("\"{}\" contains a line break, a tab or an invisible character", key),
          "write it on one line, in visible characters");
    if (count_characters(node.text) > kLongestText)
      return diagnostics_.error(
          source_, node.at, fmt::format("\"{}\" is longer than {} characters", key, kLongestText));
    const auto names = placeholders(node.text);
    if (!names)
      return diagnostics_.error(
          source_, node.at,
          fmt::format("\"{}\" has a brace without the name of a placeholder", key),
          "write a placeholder as {bars}; there are no other braces");
    if (key == "book.language" && !is_language_tag(node.text))
      return diagnostics_.error(source_, node.at,
                                fmt::format("\"{}\" is not the tag of a language", node.text),
                                "write letters, digits and hyphens, as in en, de-AT or sr-Latn");
    if (like != nullptr) check_placeholders(key, node, *names, *like);
    into.texts.push_back(node.text);
  }

  void check_placeholders(const std::string& key, const YamlNode& node,
                          const std::set<std::string>& names, const Words::Entry& like) {
    std::set<std::string> known;
    for (const std::string& text : like.texts) known.merge(placeholders(text).value());
    for (const std::string& name : names)
      if (known.count(name) == 0)
        diagnostics_.error(source_, node.at,
                           fmt::format("\"{}\" has no placeholder {{{}}}{}", key, name,
                                       did_you_mean(name, {known.begin(), known.end()})));
  }

  void check_length(const std::string& key, const YamlNode& list, const Words::Entry* like) {
    if (list.items.empty())
      diagnostics_.error(source_, list.at, fmt::format("\"{}\" must not be empty", key));
    else if (like != nullptr && is_counted_list(key) && list.items.size() != like->texts.size())
      diagnostics_.error(source_, list.at,
                         fmt::format("\"{}\" has {} texts; {} are needed", key, list.items.size(),
                                     like->texts.size()));
  }

  void name_missing(const YamlNode& root) {
    for (const auto& [key, entry] : english_->entries_) {
      if (words_.entries_.count(key) > 0) continue;
      const YamlNode* group = root.find(key.substr(0, key.find('.')));
      diagnostics_.error(source_, group != nullptr ? group->at : Place{},
                         fmt::format("missing key \"{}\"", key),
                         fmt::format("in English: {}", entry.texts.front()));
    }
  }

  const std::set<std::string>& groups() {
    if (groups_.empty())
      for (const auto& [key, entry] : english_->entries_)
        groups_.insert(key.substr(0, key.find('.')));
    return groups_;
  }

  const Source& source_;
  Diagnostics& diagnostics_;
  const Words* english_;
  Words words_;
  std::set<std::string> groups_;
  int unknown_ = 0;  // keys and groups; beyond Diagnostics::kMostKept they are only counted
};

Words read_words(const Source& source, Diagnostics& diagnostics) {
  return WordsReader(source, diagnostics, &english_words()).read();
}

const Words& english_words() {
  static const Words english = [] {
    const auto& templates = built_in_templates();
    const auto found = std::find_if(templates.begin(), templates.end(),
                                    [](const BuiltIn& one) { return one.name == "words/en.yaml"; });
    if (found == templates.end()) throw std::logic_error("words/en.yaml is not built in");
    const Source source("words/en.yaml", std::string(found->text));
    Diagnostics diagnostics;
    Words words = WordsReader(source, diagnostics, nullptr).read();
    if (diagnostics.has_errors()) throw std::logic_error(compose(diagnostics.all().front()));
    return words;
  }();
  return english;
}

}  // namespace cahier
