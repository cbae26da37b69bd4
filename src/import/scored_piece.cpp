#include "import/scored_piece.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <utility>

#include "import/bar_of_element.h"
#include "import/printable_score.h"
#include "import/write_piece.h"
#include "piece/forks.h"
#include "piece/read_piece.h"
#include "score/names/how_it_begins.h"
#include "score/names/spoken_text.h"
#include "score/passages/bar_parting.h"
#include "score/read_score.h"
#include "score/xml/score_limits.h"
#include "text/errors.h"
#include "text/yaml.h"

namespace cahier {
namespace {

constexpr std::size_t kMostWarnings = 10;
constexpr std::size_t kLongestPath = 4096;

// Keys that say one thing together: where the file has the first, the score's others go too.
constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kBelongTo = {
    {{"beat", "tempo"}, {"endings", "repeats"}, {"parts", "instrument"}, {"staves", "instrument"}}};

struct NamedScore {
  std::string file;
  std::string part;
  Naming naming = Naming::letters;
};

Naming read_naming(YamlFields& fields) {
  const auto text = fields.text("names");
  if (!text || *text == "letters") return Naming::letters;
  if (*text == "german") return Naming::german;
  if (*text == "solfege") return Naming::solfege;
  fields.diagnostics().error(fields.source(), fields.node("names")->at,
                             fmt::format("\"{}\" is not valid for \"names\"", *text),
                             "write letters, german or solfege");
  return Naming::letters;
}

std::optional<NamedScore> read_named(const Source& source, const YamlNode& node,
                                     Diagnostics& diagnostics) {
  if (node.kind == YamlNode::Kind::map) {
    YamlFields fields(source, node, diagnostics);
    const auto file = fields.text("file", kLongestPath);
    if (fields.lacks("file")) fields.missing("file", "write for example file: song.mxl");
    const auto part = fields.text("part");
    const Naming naming = read_naming(fields);
    fields.refuse_unknown();
    if (!file) return std::nullopt;
    return NamedScore{*file, part.value_or(""), naming};
  }
  const auto file = yaml_text(source, node, "a score", kLongestPath, diagnostics);
  if (!file) return std::nullopt;
  return NamedScore{*file, ""};
}

void move_to(YamlNode& node, const YamlNode& place) {
  node.at = place.at;
  node.offset = place.offset;
  for (YamlNode& item : node.items) move_to(item, place);
  for (YamlNode::Entry& entry : node.entries) {
    move_to(entry.key, place);
    move_to(entry.value, place);
  }
}

void report_warnings(const Source& source, Place at, const Score& score, Diagnostics& diagnostics) {
  std::size_t said = 0;
  for (const ScoreWarning& one : score.warnings) {
    if (said++ == kMostWarnings) {
      diagnostics.warning(
          source, at,
          fmt::format("the score: {} more like this", score.warnings.size() - kMostWarnings));
      return;
    }
    const std::string bar =
        one.element > 0 ? fmt::format(", bar {}", bar_number_of(score, one.element)) : "";
    diagnostics.warning(source, at, fmt::format("the score{}: {}", bar, one.say));
  }
}

std::optional<Score> open_score(const Source& source, const YamlNode& node, const NamedScore& named,
                                const std::string& path, Diagnostics& diagnostics) {
  try {
    return printable(read_score(path, read_bytes(path, kMostScoreBytes), named.part));
  } catch (const InputError& error) {
    const Diagnostic& first = error.diagnostics().front();
    const std::string place = first.source_line.empty()
                                  ? named.file
                                  : fmt::format("{}, line {}", named.file, first.at.line);
    diagnostics.error(source, node.at, fmt::format("{}: {}", place, first.message), first.hint);
  } catch (const FileError& error) {
    diagnostics.error(source, node.at, error.what(),
                      "name the score by its path from this file's folder");
  }
  return std::nullopt;
}

// By the number of the bar.
void add_beginnings(const Score& score, const Words& words, Piece& piece) {
  for (std::size_t bar = 0; bar < score.bars.size(); ++bar) {
    const auto number = static_cast<std::size_t>(score.bars[bar].number);
    const std::size_t size = std::max(piece.beginnings.size(), number + 1);
    piece.beginnings.resize(size);
    piece.beginnings_aloud.resize(size);
    const auto hands = how_it_begins(score, static_cast<int>(bar), words);
    piece.beginnings[number] = beginning_text(score, hands, words);
    piece.beginnings_aloud[number] = beginning_aloud(score, hands, words);
  }
}

// By the number of the bar, and in it by part; a part that no hand of the score is called by says
// nothing.
std::vector<std::vector<std::string>> said_of(const Score& score,
                                              const std::vector<std::string>& parts, Naming naming,
                                              const Words& words) {
  std::vector<std::vector<std::string>> said;
  const SpokenStyle style{naming};
  for (std::size_t part = 0; part < parts.size(); ++part) {
    const auto hand = std::ranges::find(score.hands, parts[part], &ScoreHand::name);
    if (hand == score.hands.end()) continue;
    const int which = static_cast<int>(hand - score.hands.begin());
    for (std::size_t bar = 0; bar < score.bars.size(); ++bar) {
      const auto number = static_cast<std::size_t>(score.bars[bar].number);
      said.resize(std::max(said.size(), number + 1));
      said[number].resize(parts.size());
      const int at = static_cast<int>(bar);
      said[number][part] = spoken_text(spoken_onsets(score, which, at, at), style, words);
    }
  }
  return said;
}

// How the ways on at each fork differ from its first. Where a repeat goes back or on, the bars that
// follow have nothing to do with each other.
std::vector<Parting> partings_of(const Score& score, const Piece& piece) {
  std::map<int, int> index;  // by number
  for (std::size_t bar = 0; bar < score.bars.size(); ++bar)
    index[score.bars[bar].number] = static_cast<int>(bar);
  const std::vector<BarNotes> bars = notes_of_bars(score);
  std::vector<Parting> partings;
  for (const Fork& fork : forks_of(piece)) {
    if (fork.from == ForkFrom::repeat) continue;
    const auto one = index.find(fork.ways.front().to);
    for (std::size_t at = 1; at < fork.ways.size() && one != index.end(); ++at)
      if (const auto other = index.find(fork.ways[at].to);
          other != index.end() && one->second < other->second)
        partings.push_back(bar_parting(score, bars, one->second, other->second));
  }
  return partings;
}

// Whether the file says no other number of bars than the score.
bool agree_in_bars(const Source& source, const YamlNode& file, const YamlNode& score,
                   Diagnostics& diagnostics) {
  const YamlNode* written = file.find("bars");
  const YamlNode* counted = score.find("bars");
  if (!written || !counted) return true;
  const auto here = yaml_whole(*written);
  const auto there = yaml_whole(*counted);
  if (!here || !there || here == there) return true;
  diagnostics.error(source, written->at,
                    fmt::format("the score has {} bars, not {}", *there, *here),
                    "remove this line, or name another score");
  return false;
}

bool is_replaced(const YamlNode& file, std::string_view key) {
  if (file.find(key)) return true;
  return std::ranges::any_of(
      kBelongTo, [&](const auto& pair) { return pair.first == key && file.find(pair.second); });
}

void add_what_is_missing(YamlNode& file, YamlNode score) {
  std::vector<YamlNode::Entry> added;
  for (YamlNode::Entry& entry : score.entries)
    if (!is_replaced(file, entry.key.text)) added.push_back(std::move(entry));
  for (YamlNode::Entry& entry : added) file.entries.push_back(std::move(entry));
}

}  // namespace

ScoredPiece read_scored_piece(const Source& source, const Words* words, Diagnostics& diagnostics) {
  ScoredPiece read;
  const std::size_t said_before = diagnostics.all().size();
  const int errors_before = diagnostics.error_count();
  auto root = parse_yaml(source, diagnostics);
  if (!root) return read;
  std::optional<Score> score;
  Naming naming = Naming::letters;
  if (const YamlNode* node = root->find("score")) {
    const auto named = read_named(source, *node, diagnostics);
    if (!named) return read;
    naming = named->naming;
    read.score = (std::filesystem::path(source.name()).parent_path() / named->file).string();
    score = open_score(source, *node, *named, read.score, diagnostics);
    if (!score) return read;
    report_warnings(source, node->at, *score, diagnostics);
    auto lines = parse_yaml(Source(read.score, write_piece(*score)), diagnostics);
    if (!lines) return read;
    move_to(*lines, *node);
    if (!agree_in_bars(source, *root, *lines, diagnostics)) return read;
    add_what_is_missing(*root, std::move(*lines));
  }
  read.piece = read_piece(source, *root, diagnostics);
  diagnostics.sort_by_place(said_before);
  if (diagnostics.error_count() > errors_before) read.piece.reset();
  if (read.piece && score && words) {
    add_beginnings(*score, *words, *read.piece);
    read.piece->said = said_of(*score, read.piece->parts(), naming, *words);
    read.piece->partings = partings_of(*score, *read.piece);
  }
  return read;
}

}  // namespace cahier
