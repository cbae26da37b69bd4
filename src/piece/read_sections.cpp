#include "piece/read_sections.h"

#include <fmt/core.h>

#include <algorithm>
#include <unordered_map>

namespace cahier {
namespace {

constexpr std::size_t kLongestName = 60;

// `phrases: 4` means phrases of four bars from the section's start, the last one shorter. A pickup
// belongs to the first.
std::vector<BarRange> even_phrases(const BarRange& bars, long long length) {
  std::vector<BarRange> phrases;
  for (long long first = bars.first; first <= bars.last;) {
    const long long begin = std::max(first, 1LL);
    const long long last = std::min<long long>(begin + length - 1, bars.last);
    phrases.push_back({static_cast<int>(first), static_cast<int>(last)});
    first = last + 1;
  }
  return phrases;
}

std::string in_no_phrase(const BarRange& bars, std::string_view section) {
  return fmt::format("{} in no phrase of section \"{}\"", bars_phrase(bars, "is", "are"), section);
}

// The bars a phrase list must cover: bar 0 may be left to the first phrase.
void check_tiling(YamlFields& fields, const Section& section, std::vector<BarRange>& phrases,
                  const std::vector<Place>& places) {
  const Source& source = fields.source();
  int expected = section.bars.first;
  for (std::size_t index = 0; index < phrases.size(); ++index) {
    BarRange& phrase = phrases[index];
    if (index == 0 && expected == 0 && phrase.first == 1) phrase.first = 0;
    if (phrase.first > expected) {
      fields.diagnostics().error(
          source, places[index], in_no_phrase({expected, phrase.first - 1}, section.name),
          "phrases follow each other without a gap, from the section's first bar to its last");
      return;
    }
    if (phrase.first < expected) {
      const bool outside = phrase.first < section.bars.first;
      fields.diagnostics().error(
          source, places[index],
          outside ? fmt::format("phrase {} begins before section \"{}\", which begins at bar {}",
                                bars_text(phrase), section.name, section.bars.first)
                  : fmt::format("bar {} of section \"{}\" is in two phrases", phrase.first,
                                section.name),
          "phrases follow each other in order, each beginning one bar after the last has ended");
      return;
    }
    expected = phrase.last + 1;
  }
  if (expected == section.bars.last + 1) return;
  fields.diagnostics().error(
      source, places.back(),
      expected <= section.bars.last
          ? in_no_phrase({expected, section.bars.last}, section.name)
          : fmt::format("phrase {} runs past section \"{}\", which ends with bar {}",
                        bars_text(phrases.back()), section.name, section.bars.last),
      "phrases follow each other without a gap, from the section's first bar to its last");
}

std::vector<BarRange> read_phrases(YamlFields& fields, const Section& section, const Extent& extent,
                                   bool bars_known) {
  const YamlNode* node = fields.node("phrases");
  if (!node) return {};
  if (node->kind == YamlNode::Kind::scalar) {
    const auto length = yaml_whole(*node);
    if (length && *length >= 1 && *length <= 10000) {
      return bars_known ? even_phrases(section.bars, *length) : std::vector<BarRange>{};
    }
  }
  if (node->kind != YamlNode::Kind::list || node->items.empty()) {
    fields.diagnostics().error(
        fields.source(), node->at, "\"phrases\" must be a list of bars, or a number of bars",
        "write for example phrases: [1-8, 9-16], or phrases: 4 for phrases of four bars");
    return {};
  }
  std::vector<BarRange> phrases;
  std::vector<Place> places;
  for (const YamlNode& item : node->items) {
    const auto phrase =
        read_bars(fields.source(), item, "the bars of a phrase", extent, fields.diagnostics());
    if (!phrase) continue;
    phrases.push_back(*phrase);
    places.push_back(item.at);
  }
  if (phrases.size() != node->items.size() || !bars_known) return {};
  check_tiling(fields, section, phrases, places);
  return phrases;
}

WrittenSection gap_section(const BarRange& bars, Place at) {
  WrittenSection gap;
  gap.section.name = bars_text(bars);
  gap.section.bars = bars;
  gap.name_at = gap.bars_at = gap.same_as_at = at;
  return gap;
}

void report_disorder(const Source& source, const WrittenSection& written, const Section& before,
                     Diagnostics& diagnostics) {
  const Section& section = written.section;
  const bool overlap = section.bars.overlaps(before.bars);
  diagnostics.error(source, written.bars_at,
                    fmt::format("section \"{}\" (bars {}) {} section \"{}\" (bars {})",
                                section.name, bars_text(section.bars),
                                overlap ? "overlaps" : "is listed after, but begins before,",
                                before.name, bars_text(before.bars)),
                    "list the sections in bar order, each beginning after the last has ended");
}

void check_names(const Source& source, const std::vector<WrittenSection>& written,
                 Diagnostics& diagnostics) {
  std::unordered_map<std::string, int> lines;
  for (const WrittenSection& each : written) {
    const auto [earlier, fresh] = lines.emplace(each.section.name, each.name_at.line);
    if (fresh) continue;
    diagnostics.error(source, each.name_at,
                      fmt::format("two sections are called \"{}\"; the other is on line {}",
                                  each.section.name, earlier->second),
                      "give each section a name of its own, as in \"A\" and \"A again\"");
  }
}

std::optional<WrittenSection> read_section(const Source& source, const YamlNode& item,
                                           const Extent& extent, Diagnostics& diagnostics) {
  YamlFields fields(source, item, diagnostics);
  const YamlNode* name = item.find("name");
  const bool quotable = name && name->kind == YamlNode::Kind::scalar && !name->text.empty();
  const Diagnostics::Within link(
      diagnostics, quotable ? fmt::format("while reading section \"{}\"", name->text.substr(0, 200))
                            : "while reading a section without a name");
  WrittenSection written;
  Section& section = written.section;
  const auto text = fields.text("name", kLongestName);
  if (fields.lacks("name")) {
    fields.missing("name", "give it a name, as in name: A");
  }
  if (const YamlNode* node = fields.node("name")) written.name_at = node->at;
  const auto bars = require_bars(fields, "bars", extent);
  if (const YamlNode* node = fields.node("bars")) written.bars_at = node->at;
  section.name = text.value_or("");
  section.bars = bars.value_or(BarRange{});
  section.phrases = read_phrases(fields, section, extent, bars.has_value());
  section.level = fields.whole("level", 1, 5);
  if (const YamlNode* node = fields.node("same as")) {
    written.same_as_at = node->at;
    section.same_as = read_bars(source, *node, "the bars of \"same as\"", extent, diagnostics);
  }
  fields.refuse_unknown();
  if (!text || !bars) return std::nullopt;
  return written;
}

}  // namespace

std::vector<WrittenSection> read_sections(YamlFields& fields, const Extent& extent) {
  std::vector<WrittenSection> all;
  for (const YamlNode* item : fields.list("sections")) {
    auto section = read_section(fields.source(), *item, extent, fields.diagnostics());
    if (section) all.push_back(std::move(*section));
  }
  return all;
}

std::vector<WrittenSection> complete_sections(const Source& source,
                                              std::vector<WrittenSection> written,
                                              const Extent& extent, bool all_read,
                                              Diagnostics& diagnostics) {
  check_names(source, written, diagnostics);
  std::vector<WrittenSection> all;
  int expected = extent.first;
  const auto fill_gap = [&](int last, Place at) {
    if (last < expected) return;
    const BarRange gap{expected, last};
    if (all_read) {
      diagnostics.warning(source, at,
                          bars_phrase(gap, "is in no section; it becomes a section of its own",
                                      "are in no section; they become a section of their own"),
                          "add a section here, or extend one beside it");
    }
    all.push_back(gap_section(gap, at));
  };
  for (WrittenSection& each : written) {
    BarRange& bars = each.section.bars;
    if (all.empty() && extent.first == 0 && bars.first == 1) {
      bars.first = 0;
      if (!each.section.phrases.empty()) each.section.phrases.front().first = 0;
    }
    if (bars.first < expected) {
      report_disorder(source, each, all.back().section, diagnostics);
      expected = std::max(expected, bars.last + 1);
      continue;
    }
    fill_gap(bars.first - 1, each.bars_at);
    expected = bars.last + 1;
    all.push_back(std::move(each));
  }
  if (!all.empty()) fill_gap(extent.last, all.back().bars_at);
  return all;
}

}  // namespace cahier
