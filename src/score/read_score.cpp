#include "score/read_score.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "score/bars.h"
#include "score/notation/navigation_words.h"
#include "score/notation/read_part.h"
#include "score/xml/compressed_score.h"
#include "score/xml/score_limits.h"
#include "score/xml/score_text.h"
#include "score/xml/text_encoding.h"
#include "score/xml/xml_document.h"
#include "text/errors.h"

namespace cahier {
namespace {

XmlDocument open_score(const std::string& file, std::string bytes) {
  std::string inside;
  if (is_archive(bytes)) {
    UnpackedScore unpacked = unpack_score(file, bytes);
    inside = std::move(unpacked.name);
    bytes = std::move(unpacked.bytes);
  }
  return XmlDocument(ScoreText(file, inside, to_utf8(file, std::move(bytes))),
                     "|score-partwise|score-timewise|", "a MusicXML score");
}

void read_titles(const XmlElement& root, Score& score) {
  score.title = plain_words(root.child("movement-title").text());
  if (score.title.empty()) score.title = plain_words(root.child("work").child("work-title").text());
  for (const XmlElement& creator : root.child("identification").children("creator"))
    if (score.composer.empty() && creator.attribute("type") == "composer")
      score.composer = plain_words(creator.text());
}

// Whether any part gives a meter or a key is asked part by part: the chosen ones first.
class ScoreMeasures {
 public:
  ScoreMeasures(const std::vector<WrittenPart>& parts, const PartChoice& choice,
                ScoreWarnings& warnings)
      : measures_(parts.front().measures.size()) {
    int staff_above = 0;
    for (const std::size_t part : choice.parts) {
      add(parts[part], read_part(parts[part], warnings), staff_above);
      staff_above += parts[part].staves;
    }
  }

  std::vector<ScoreMeasure> take() { return std::move(measures_); }

 private:
  void add(const WrittenPart& part, std::vector<PartMeasure> music, int staff_above) {
    std::optional<ScoreMeter> meter;
    std::optional<ScoreKey> key;
    for (std::size_t at = 0; at < measures_.size(); ++at) {
      ScoreMeasure& measure = measures_[at];
      PartMeasure& from = music[at];
      if (from.has_meter) meter = from.meter;
      if (from.key) key = from.key;
      if (staff_above == 0) {
        measure.number = part.measures[at].number;
        measure.implicit = part.measures[at].implicit;
        measure.meter = meter;
        measure.key = key;
      }
      measure.length = std::max(measure.length, from.length);
      for (ScoreNote& note : from.notes) {
        note.staff += staff_above;
        measure.notes.push_back(std::move(note));
      }
    }
  }

  std::vector<ScoreMeasure> measures_;
};

void name_parts(const std::vector<WrittenPart>& parts, const PartChoice& choice, Score& score) {
  for (const WrittenPart& part : parts) score.parts.push_back({part.id, part.name, false});
  for (const std::size_t taken : choice.parts) {
    score.parts[taken].taken = true;
    score.part += (score.part.empty() ? "" : "+") + parts[taken].id;
  }
  score.part_reason = choice.reason;
  score.hands = choice.hands;
}

// The part that has most words, unless that is the player's own. What is wrong in it does no harm
// to the player: then nothing is sung.
std::vector<std::vector<ScoreNote>> read_sung(const std::vector<WrittenPart>& parts,
                                              const Score& score) try {
  std::map<std::string, int> words;
  for (const ScoreLyric& one : score.lyrics) ++words[one.part];
  const auto most = std::ranges::max_element(
      words, {}, [](const auto& part_and_words) { return part_and_words.second; });
  std::vector<std::vector<ScoreNote>> sung;
  if (most == words.end()) return sung;
  for (std::size_t at = 0; at < parts.size(); ++at) {
    if (parts[at].id != most->first || score.parts[at].taken) continue;
    ScoreWarnings not_of_the_player;
    for (PartMeasure& measure : read_part(parts[at], not_of_the_player))
      sung.push_back(std::move(measure.notes));
    break;
  }
  return sung;
} catch (const InputError&) {
  return {};
}

std::string bar_at(const std::vector<ScoreBar>& bars, int element) {
  const auto after = std::ranges::upper_bound(bars, element, {}, &ScoreBar::first);
  return after == bars.begin() ? "" : std::prev(after)->printed;
}

void refuse_silence(const XmlElement& root, const Score& score) {
  for (const ScoreMeasure& measure : score.measures)
    if (std::ranges::any_of(measure.notes, &ScoreNote::sounds)) return;
  root.refuse(fmt::format("part {} has no notes", score.part),
              "choose another part with --part, or export the score with its notes");
}

}  // namespace

Score read_score(const std::string& file, std::string bytes, const std::string& part) {
  const XmlDocument document = open_score(file, std::move(bytes));
  const XmlElement root = document.root();
  ScoreWarnings warnings;
  Score score;
  score.file = file;
  read_titles(root, score);
  const std::vector<WrittenPart> parts = written_parts(document, warnings);
  const PartChoice choice = choose_part(file, parts, part, warnings);
  name_parts(parts, choice, score);
  score.measures = ScoreMeasures(parts, choice, warnings).take();
  refuse_silence(root, score);
  const auto tempi = read_tempi(parts, warnings);
  for (std::size_t at = 0; at < tempi.size(); ++at) score.measures[at].tempo = tempi[at];
  score.bars = join_bars(score.measures);
  number_bars(score.bars, warnings);
  warn_of_bars(score.measures, score.bars, warnings);
  score.signs = read_navigation(parts, warnings);
  score.play_order = play_order(
      score.signs, [&](int element) { return bar_at(score.bars, element); },
      [&](int element) {
        const WrittenMeasure& at = parts.front().measures[static_cast<std::size_t>(element) - 1];
        at.content.refuse(
            fmt::format("with its repeats the score has more than {} bars", kMostUnfoldedBars),
            "no player plays that many: correct the repeats");
      },
      warnings);
  score.lyrics = read_lyrics(parts);
  score.sung = read_sung(parts, score);
  score.warnings = warnings.sorted();
  return score;
}

}  // namespace cahier
