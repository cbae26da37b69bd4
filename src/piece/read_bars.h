// Bars, ranges and names as a piece file writes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "piece/bar_range.h"
#include "text/diagnostics.h"
#include "text/yaml.h"

namespace cahier {

// "17" for one bar, else "17–20" with an en dash.
std::string bars_text(const BarRange& bars);

// "bar 17 is …" or "bars 17–20 are …": `verb` follows one bar, `verbs` several.
std::string bars_phrase(const BarRange& bars, std::string_view verb, std::string_view verbs);

// "1-16", "1–16" (en dash) or "17"; nullopt for anything else, and for a range that runs backward.
std::optional<BarRange> parse_bars(std::string_view text);

// What the bars of a file are checked against. `last` is 0 while the number of bars is not known:
// then only the beginning is checked.
struct Extent {
  int first = 1;
  int last = 0;
};

// The range in `node`; nullopt after a diagnostic when it is not a range or lies outside the piece.
// `what` names it: "the bars of this section".
std::optional<BarRange> read_bars(const Source& source, const YamlNode& node, std::string_view what,
                                  const Extent& extent, Diagnostics& diagnostics);

// A single bar number, in the same way.
std::optional<int> read_bar(const Source& source, const YamlNode& node, std::string_view what,
                            const Extent& extent, Diagnostics& diagnostics);

// The field `key` of a map, required: its absence is an error.
std::optional<BarRange> require_bars(YamlFields& fields, std::string_view key,
                                     const Extent& extent);
std::optional<int> require_bar(YamlFields& fields, std::string_view key, const Extent& extent);

}  // namespace cahier
