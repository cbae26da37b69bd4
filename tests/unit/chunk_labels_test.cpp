// What chunks are called in print, and that logs still know their ids.
#include <set>

#include "catch.h"
#include "drawn_sheet.h"
#include "plan/chunk_labels.h"
#include "sample_plan.h"
#include "sheet_words.h"

namespace cahier {
namespace {

// The labels of the chunks of a plan for these sections, in order.
std::vector<std::string> labels_in(const std::string& sections) {
  const Plan plan = sample::plan("title: Labels\nbars: 32\ntempo: 100\nsections: [" + sections +
                                 "]\npractice: {minutes: 30}\n");
  const PlannedPiece& piece = plan.pieces.front();
  const ChunkLabels labels(piece);
  std::vector<std::string> all;
  std::set<std::string> ids;
  for (const Chunk& chunk : piece.chunks) {
    CHECK(ids.insert(chunk.id).second);
    all.push_back(labels.of(chunk));
  }
  return all;
}

// Whether the first chunk of every section that has any is called by bars: "yes no yes".
std::string by_bars(const std::string& sections) {
  const Plan plan = sample::plan("title: Labels\nbars: 32\ntempo: 100\nsections: [" + sections +
                                 "]\npractice: {minutes: 30}\n");
  const PlannedPiece& piece = plan.pieces.front();
  const ChunkLabels labels(piece);
  std::string text;
  int section = -1;
  for (const Chunk& chunk : piece.chunks) {
    if (chunk.section == section) continue;
    section = chunk.section;
    text.append(text.empty() ? "" : " ").append(labels.by_bars(chunk) ? "yes" : "no");
  }
  return text;
}

}  // namespace

TEST_CASE("chunks keep short names where nothing is called alike") {
  CHECK(by_bars("{name: A, bars: 1-16}, {name: B, bars: 17-32}") == "no no");
  CHECK(by_bars("{name: Theme, bars: 1-16}, {name: Coda, bars: 17-32}") == "no no");
  // A return is the same music; a name of one letter is meant by that letter.
  CHECK(by_bars("{name: A, bars: 1-12}, {name: B, bars: 13-20}, "
                "{name: A again, bars: 21-32, same as: 1-12}") == "no no");
  CHECK(by_bars("{name: Theme, bars: 1-12}, {name: B, bars: 13-20}, "
                "{name: Theme again, bars: 21-32, same as: 1-12}") == "no no");
  // Bars that no section names.
  CHECK(by_bars("{name: Coda, bars: 17-32}") == "no no");
  const Plan plain = sample::plan("{title: Plain, bars: 32, tempo: 100}");
  const ChunkLabels labels(plain.pieces.front());
  for (const Chunk& chunk : plain.pieces.front().chunks) CHECK(labels.of(chunk) == chunk.id);
}

TEST_CASE("a chunk that could be taken for a section is called by its bars") {
  // A section that has the name of a chunk, however it is written.
  CHECK(by_bars("{name: A, bars: 1-16}, {name: A2, bars: 17-32}") == "yes yes");
  CHECK(by_bars("{name: A, bars: 1-16}, {name: a 2, bars: 17-32}") == "yes yes");
  // B would stand for bars of the coda, as C is another section's.
  CHECK(by_bars("{name: A, bars: 1-8}, {name: C, bars: 9-16}, {name: Coda, bars: 17-32}") ==
        "no no yes");
  // Either begins with T.
  CHECK(by_bars("{name: Theme, bars: 1-16}, {name: Trio, bars: 17-32}") == "yes yes");
  // The letter of bars without a name is the first of a section's, which is then called otherwise.
  CHECK(by_bars("{name: Aria, bars: 17-32}") == "yes yes");
}

TEST_CASE("labels by bars are the chunks' own") {
  const std::vector<std::string> labels =
      labels_in("{name: A, bars: 1-8, phrases: [1-4, 5-8]}, {name: A2, bars: 9-32}");
  CHECK(labels[0] == "1–4");
  CHECK(labels[1] == "5–8");
  std::set<std::string> unique(labels.begin(), labels.end());
  CHECK(unique.size() == labels.size());
}

TEST_CASE("no sheet and no text prints a chunk's id that could be taken for a section") {
  const Plan plan = sample::plan(
      "title: Labels\nbars: 32\ntempo: 100\nsections: "
      "[{name: Waltz, bars: 1-16}, {name: W2, bars: 17-24}, {name: W1, bars: 25-32}]\n"
      "practice: {minutes: 30}\n");
  std::set<std::string> ids;
  for (const Chunk& chunk : plan.pieces.front().chunks) ids.insert(chunk.id);
  REQUIRE(ids.contains("W1"));
  ids.erase("W1");  // here a section
  ids.erase("W2");
  for (void (*draw)(Book&) : {draw_form_map, draw_day_panels, draw_progress_chart}) {
    const std::string words = sample::DrawnSheet(draw, plan).words();
    for (const std::string& id : ids) {
      INFO(id);
      CHECK_FALSE(sample::has(words, "\n" + id + "\n"));
    }
  }
}

}  // namespace cahier
