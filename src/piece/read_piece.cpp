#include "piece/read_piece.h"

#include <fmt/core.h>

#include <algorithm>

#include "piece/read_form.h"
#include "piece/read_music.h"
#include "piece/read_practice.h"
#include "piece/read_repeats.h"
#include "piece/read_sections.h"
#include "piece/short_title.h"
#include "text/limits.h"

namespace cahier {
namespace {

constexpr std::size_t kLongestTitle = 500;

Fingering read_fingering(YamlFields& fields) {
  const auto text = fields.text("fingering");
  if (!text) return Fingering::unsaid;
  if (*text == "ready") return Fingering::ready;
  if (*text == "not yet") return Fingering::not_yet;
  fields.diagnostics().error(fields.source(), fields.node("fingering")->at,
                             fmt::format("\"{}\" is not valid for \"fingering\"", *text),
                             "write ready, or not yet");
  return Fingering::unsaid;
}

// The sections, and with them the number of bars where `bars:` does not give it.
void read_form(YamlFields& fields, Piece& piece, Extent& extent) {
  Diagnostics& diagnostics = fields.diagnostics();
  const std::size_t named = fields.list("sections").size();
  if (named == 0) return;
  std::vector<WrittenSection> written = read_sections(fields, extent);
  if (piece.bars == 0) {
    for (const WrittenSection& each : written) {
      extent.last = std::max(extent.last, each.section.bars.last);
    }
    if (extent.last > kMostBars) {
      diagnostics.error(fields.source(), fields.node("sections")->at,
                        fmt::format("the sections reach bar {}; a piece may have {} bars at most",
                                    extent.last, kMostBars),
                        "correct the bars of the last section");
      extent.last = 0;
    }
    piece.bars = extent.last;
  }
  if (extent.last == 0 || written.empty()) return;
  const bool all_read = written.size() == named;
  written = complete_sections(fields.source(), std::move(written), extent, all_read, diagnostics);
  check_returns(fields.source(), written, extent, diagnostics);
  for (WrittenSection& each : written) piece.sections.push_back(std::move(each.section));
}

Piece read_fields(YamlFields& fields) {
  Piece piece;
  piece.title = fields.text("title", kLongestTitle).value_or("");
  if (fields.lacks("title")) fields.missing("title", "write for example title: Lantern Study");
  piece.short_title = fields.text("short title", kLongestShortTitle).value_or("");
  piece.composer = fields.text("composer", kLongestTitle).value_or("");
  fields.accept("score");  // joined to the file before it is read
  piece.instrument = read_instrument(fields);
  piece.meter = read_meter(fields).value_or(Meter{});
  piece.pickup = read_pickup(fields, piece.meter);
  piece.key = read_key(fields);
  piece.tempo = read_tempo(fields, natural_beat(piece.meter));
  piece.level = fields.whole("level", 1, 5).value_or(piece.level);
  piece.bars = fields.whole("bars", 1, kMostBars).value_or(0);
  if (fields.lacks("bars") && fields.lacks("sections")) {
    fields.missing("bars", "write how many bars the piece has, without a pickup: bars: 48");
  }
  // An invalid pickup is still a pickup: bar 0 is then not another error.
  Extent extent{fields.lacks("pickup") ? 1 : 0, piece.bars};
  read_form(fields, piece, extent);
  piece.changes = read_changes(fields, piece.meter, piece.tempo, extent);
  piece.hard = read_hard(fields, extent);
  piece.look_alikes = read_look_alikes(fields, extent);
  piece.repeats = read_repeats(fields, extent);
  piece.marks = read_marks(fields, extent);
  piece.cues = read_cues(fields, extent);
  piece.fingering = read_fingering(fields);
  piece.occasion = read_occasion(fields);
  if (const YamlNode* practice = fields.node("practice")) {
    piece.practice = read_practice(fields.source(), *practice, fields.diagnostics());
  }
  return piece;
}

}  // namespace

std::optional<Piece> read_piece(const Source& source, Diagnostics& diagnostics) {
  const std::size_t said_before = diagnostics.all().size();
  const int errors_before = diagnostics.error_count();
  const auto root = parse_yaml(source, diagnostics);
  if (!root) return std::nullopt;
  auto piece = read_piece(source, *root, diagnostics);
  diagnostics.sort_by_place(said_before);
  if (diagnostics.error_count() > errors_before) return std::nullopt;
  return piece;
}

std::optional<Piece> read_piece(const Source& source, const YamlNode& root,
                                Diagnostics& diagnostics) {
  const int errors_before = diagnostics.error_count();
  YamlFields fields(source, root, diagnostics);
  if (!fields.is_map()) return std::nullopt;
  Piece piece = read_fields(fields);
  fields.refuse_unknown();
  if (piece.bars == 0 && diagnostics.error_count() == errors_before) {
    fields.missing("bars", "write how many bars the piece has, without a pickup: bars: 48");
  }
  if (diagnostics.error_count() > errors_before) return std::nullopt;
  return piece;
}

}  // namespace cahier
