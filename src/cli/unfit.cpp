#include "cli/unfit.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <span>
#include <string>

#include "text/errors.h"
#include "text/templates.h"
#include "text/yaml.h"

namespace cahier {
namespace {

constexpr std::size_t kMostLines = 20;   // looked up; to find where a line comes from takes time
constexpr std::size_t kLeastShared = 8;  // bytes of a line that tell where it comes from

// The length of the longest run of bytes that both hold.
std::size_t longest_shared(std::string_view one, std::string_view other) {
  std::vector<std::size_t> before(other.size() + 1), now(other.size() + 1);
  std::size_t longest = 0;
  for (const char letter : one) {
    for (std::size_t at = 0; at < other.size(); ++at) {
      now[at + 1] = letter == other[at] ? before[at] + 1 : 0;
      longest = std::max(longest, now[at + 1]);
    }
    std::swap(before, now);
  }
  return longest;
}

struct Found {
  const Source* source = nullptr;
  Place at;
  std::string key;
  std::string text;
  std::size_t shared = 0;
};

// The texts of the files, each with its key.
class Texts {
 public:
  explicit Texts(const std::vector<Source>& printed) {
    for (const Source& source : printed) {
      Diagnostics named_by_its_reader;
      if (const auto root = parse_yaml(source, named_by_its_reader)) add(source, *root, "");
    }
  }

  // The text that most of `line` comes from; its source is nullptr where there is none.
  Found origin(std::string_view line) const {
    Found best;
    for (const Found& text : texts_) {
      const std::size_t shared = longest_shared(line, text.text);
      if (shared <= best.shared) continue;
      best = text;
      best.shared = shared;
    }
    if (best.shared < std::max(kLeastShared, line.size() / 3)) best.source = nullptr;
    return best;
  }

  const std::vector<Found>& all() const { return texts_; }

 private:
  void add(const Source& source, const YamlNode& node, const std::string& key) {
    if (node.kind == YamlNode::Kind::scalar)
      texts_.push_back({&source, node.at, key, node.text, 0});
    for (const YamlNode& item : node.items) add(source, item, key);
    for (const YamlNode::Entry& entry : node.entries)
      add(source, entry.value, key.empty() ? entry.key.text : key + "." + entry.key.text);
  }

  std::vector<Found> texts_;
};

// By key, the length in bytes of the longest English text.
std::map<std::string, std::size_t> english_lengths() {
  std::map<std::string, std::size_t> lengths;
  const std::vector<Source> english = {Templates().read("words", "en")};
  const Texts texts(english);
  for (const Found& text : texts.all())
    lengths[text.key] = std::max(lengths[text.key], text.text.size());
  return lengths;
}

}  // namespace

void refuse_unfit(const std::vector<UnfitText>& unfit, const std::vector<Source>& printed) {
  if (unfit.empty()) return;
  Diagnostics diagnostics;
  const Texts texts(printed);
  const std::map<std::string, std::size_t> english = english_lengths();
  // Whether a text is one of the words, and longer than its English.
  const auto outgrows_english = [&](const Found& text) {
    const auto length = english.find(text.key);
    return length != english.end() && text.text.size() > length->second;
  };
  std::set<std::string> named;
  for (const UnfitText& one : std::span(unfit).first(std::min(unfit.size(), kMostLines))) {
    const bool is_cut = one.kind == UnfitText::Kind::cut;
    const Found found = texts.origin(one.line);
    if (is_cut && (!found.source || !outgrows_english(found))) continue;
    if (!named.insert(found.source ? found.key : one.line).second) continue;
    constexpr std::string_view kHint = "shorten it, or print on larger paper";
    if (found.source)
      diagnostics.error(
          *found.source, found.at,
          fmt::format("\"{}\" is too long: it does not fit on page {}", found.key, one.page),
          std::string(kHint));
    else
      diagnostics.error(printed.back(), {1, 1},
                        fmt::format("\"{}\" does not fit on page {}", one.line, one.page),
                        std::string(kHint));
  }
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace cahier
