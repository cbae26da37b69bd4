#include "piece/read_music.h"

#include <fmt/core.h>

#include <algorithm>

#include "text/did_you_mean.h"

namespace cahier {
namespace {

constexpr double kSlowest = 10;
constexpr double kFastest = 400;
constexpr std::size_t kMostParts = 4;
constexpr std::size_t kLongestPart = 40;
constexpr std::size_t kMostStaves = 4;

const std::vector<std::string>& beat_words() {
  static const std::vector<std::string> words = {"eighth",         "dotted eighth", "quarter",
                                                 "dotted quarter", "half",          "dotted half"};
  return words;
}

std::string joined(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

std::optional<Beat> read_beat(YamlFields& fields) {
  const auto text = fields.text("beat");
  if (!text) return std::nullopt;
  const auto beat = parse_beat(*text);
  if (!beat) {
    fields.diagnostics().error(
        fields.source(), fields.node("beat")->at,
        fmt::format("\"{}\" is not a valid beat{}", *text, did_you_mean(*text, beat_words())),
        fmt::format("write one of: {}", joined(beat_words())));
  }
  return beat;
}

std::optional<std::vector<std::string>> read_parts(YamlFields& fields) {
  const YamlNode* node = fields.node("parts");
  if (!node) return std::nullopt;
  const auto items = fields.list("parts");
  Diagnostics& diagnostics = fields.diagnostics();
  if (items.empty() || items.size() > kMostParts) {
    if (node->kind != YamlNode::Kind::null) {
      diagnostics.error(
          fields.source(), node->at,
          fmt::format("a piece has 1 to {} parts, found {}", kMostParts, items.size()),
          "write for example parts: [right hand, left hand]");
    }
    return std::nullopt;
  }
  std::vector<std::string> parts;
  for (const YamlNode* item : items) {
    const auto part =
        yaml_text(fields.source(), *item, "the name of a part", kLongestPart, diagnostics);
    if (!part) continue;
    if (std::find(parts.begin(), parts.end(), *part) != parts.end()) {
      diagnostics.error(fields.source(), item->at,
                        fmt::format("two parts are called \"{}\"", *part),
                        "give each part a name of its own");
      continue;
    }
    parts.push_back(*part);
  }
  return parts.size() == items.size() ? std::optional(parts) : std::nullopt;
}

std::optional<std::vector<Clef>> read_staves(YamlFields& fields) {
  const YamlNode* node = fields.node("staves");
  if (!node) return std::nullopt;
  const auto items = fields.list("staves");
  Diagnostics& diagnostics = fields.diagnostics();
  if (items.empty() || items.size() > kMostStaves) {
    if (node->kind != YamlNode::Kind::null) {
      diagnostics.error(
          fields.source(), node->at,
          fmt::format("a piece has 1 to {} staves, found {}", kMostStaves, items.size()),
          "write their clefs from the top, for example staves: [treble, bass]");
    }
    return std::nullopt;
  }
  std::vector<Clef> staves;
  for (const YamlNode* item : items) {
    const auto text = yaml_text(fields.source(), *item, "a clef", kLongestPart, diagnostics);
    if (!text) continue;
    if (const auto clef = parse_clef(*text)) {
      staves.push_back(*clef);
      continue;
    }
    diagnostics.error(
        fields.source(), item->at,
        fmt::format("\"{}\" is not a valid clef{}", *text, did_you_mean(*text, clef_words())),
        fmt::format("known: {}", joined(clef_words())));
  }
  return staves.size() == items.size() ? std::optional(staves) : std::nullopt;
}

}  // namespace

std::optional<Meter> read_meter(YamlFields& fields) {
  const auto text = fields.text("meter");
  if (!text) return std::nullopt;
  const auto meter = parse_meter(*text);
  if (!meter) {
    fields.diagnostics().error(fields.source(), fields.node("meter")->at,
                               fmt::format("\"{}\" is not a valid meter", *text),
                               "write it in numbers, as in 3/4, 6/8 or 2+3/8");
  }
  return meter;
}

std::optional<Key> read_key(YamlFields& fields) {
  const auto text = fields.text("key");
  if (!text) return std::nullopt;
  const auto key = parse_key(*text);
  if (!key) {
    fields.diagnostics().error(fields.source(), fields.node("key")->at,
                               fmt::format("\"{}\" is not a valid key", *text),
                               "write it as in \"A minor\", \"B flat major\" or \"F# minor\", or "
                               "as a count, \"2 flats\"; at most seven sharps or flats");
  }
  return key;
}

std::optional<Tempo> read_tempo(YamlFields& fields, Beat usual) {
  const auto beat = read_beat(fields);
  const auto per_minute = fields.number("tempo", kSlowest, kFastest);
  if (!fields.lacks("beat") && fields.lacks("tempo")) {
    if (const YamlNode* node = fields.node("beat")) {
      fields.diagnostics().error(fields.source(), node->at,
                                 "\"beat\" says what a tempo counts, but there is no tempo",
                                 "add for example tempo: 96, or remove \"beat\"");
    }
  }
  if (!per_minute) return std::nullopt;
  return Tempo{*per_minute, beat.value_or(usual)};
}

double read_pickup(YamlFields& fields, const Meter& meter) {
  const YamlNode* node = fields.node("pickup");
  if (!node) return 0;
  const auto beats = yaml_number(*node);
  if (beats && *beats > 0 && *beats < meter.count()) return *beats;
  const bool number = beats.has_value();
  fields.diagnostics().error(
      fields.source(), node->at,
      number ? fmt::format("a pickup of {} does not fit: a bar of {} has {} beats", *beats,
                           meter.text(), meter.count())
             : std::string("\"pickup\" must be a number of beats"),
      "count the beats before bar 1, more than 0 and fewer than a bar; without any, remove the "
      "line");
  return 0;
}

Instrument read_instrument(YamlFields& fields) {
  Instrument instrument;
  if (const auto name = fields.text("instrument")) {
    if (const Instrument* known = find_instrument(*name)) {
      instrument = *known;
    } else {
      fields.diagnostics().error(fields.source(), fields.node("instrument")->at,
                                 fmt::format("unknown instrument \"{}\"{}", *name,
                                             did_you_mean(*name, instrument_names())),
                                 fmt::format("known: {}", joined(instrument_names())));
    }
  }
  if (const auto parts = read_parts(fields)) instrument.parts = *parts;
  if (const auto staves = read_staves(fields)) instrument = with_staves(instrument, *staves);
  return instrument;
}

std::vector<Change> read_changes(YamlFields& fields, const Meter& meter,
                                 const std::optional<Tempo>& tempo, const Extent& extent) {
  std::vector<Change> changes;
  Diagnostics& diagnostics = fields.diagnostics();
  Beat counted = tempo ? tempo->beat : natural_beat(meter);
  bool tempo_before = tempo.has_value();
  for (const YamlNode* item : fields.list("changes")) {
    const Diagnostics::Within link(diagnostics, "while reading \"changes\"");
    YamlFields inner(fields.source(), *item, diagnostics);
    const auto bar = require_bar(inner, "bar", extent);
    Change change;
    change.meter = read_meter(inner);
    change.key = read_key(inner);
    const bool fresh_beat = change.meter && (!tempo_before || !inner.lacks("tempo"));
    change.tempo = read_tempo(inner, fresh_beat ? natural_beat(*change.meter) : counted);
    if (change.tempo || fresh_beat) {
      counted = change.tempo ? change.tempo->beat : natural_beat(*change.meter);
    }
    tempo_before = tempo_before || change.tempo.has_value();
    inner.refuse_unknown();
    if (inner.lacks("meter") && inner.lacks("key") && inner.lacks("tempo")) {
      diagnostics.error(fields.source(), item->at, "this change changes nothing",
                        "give it a meter, a key or a tempo, as in {bar: 25, meter: 2/4}");
    }
    if (!bar) continue;
    if (!changes.empty() && *bar <= changes.back().bar) {
      diagnostics.error(fields.source(), inner.node("bar")->at,
                        fmt::format("the change at bar {} is listed after the one at bar {}", *bar,
                                    changes.back().bar),
                        "list the changes in bar order, one for each bar");
      continue;
    }
    change.bar = *bar;
    changes.push_back(change);
  }
  return changes;
}

}  // namespace cahier
