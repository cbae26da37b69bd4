// Where a cue start leads, and how a day names what is thrown for others.
#include "plan/cue_reach.h"

#include "catch.h"
#include "drawn_sheet.h"
#include "plan/alike_starts.h"
#include "sound_plan.h"
#include "workbook/parts/task_words.h"

using namespace cahier;

TEST_CASE("The circles of a day's throws name what is thrown") {
  PlannedPiece piece = sound::small_planned_piece();
  const auto label_of = [&](Throw thrown) {
    piece.dice = dice_tables({1, 2, 3}, thrown);
    return tick_rows(english_words(), piece, sound::fork_drill()).back().label;
  };
  CHECK(label_of(Throw::two_dice) == "dice");
  CHECK(label_of(Throw::d20) == "dice");
  CHECK(label_of(Throw::coins) == "coins");
}

TEST_CASE("A cue start ends with its chunk, from inside a chunk with the next one") {
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.look_alikes.clear();
  CHECK(last_bar_from(piece, {1, 1, 0}) == 4);
  CHECK(last_bar_from(piece, {2, 3, 0}) == 8);
  // Bars 9–12 are bars 1–4 again.
  CHECK(last_bar_from(piece, {3, 9, 2}) == 12);
  CHECK(last_bar_from(piece, {4, 11, 2}) == 12);
}

TEST_CASE("A cue start before a fork goes on past it") {
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.look_alikes = {{{{1, 6}, {9, 12}}, {5, 11}}};
  piece.cues = {{1, 1, 0}, {2, 5, 1}, {3, 9, 2}};  // the one on the fork comes too late
  CHECK(last_bar_from(piece, piece.cues[0]) == 8);
  piece.cues = {{1, 1, 0}, {2, 3, 0}, {3, 9, 2}};  // the second is nearer
  CHECK(last_bar_from(piece, piece.cues[0]) == 4);
  CHECK(last_bar_from(piece, piece.cues[1]) == 8);
}

TEST_CASE("Starts that begin alike are told, and how far they are the same") {
  // Bars 9–12 are bars 1–4 again.
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.look_alikes.clear();
  piece.cues = {{1, 1, 0}, {2, 3, 0}, {3, 5, 1}, {4, 9, 2}, {5, 11, 2}};
  CHECK(alike_starts(piece, piece.cues[0]) == std::vector<AlikeStarts>{{{9}, 4}});
  CHECK(alike_starts(piece, piece.cues[3]) == std::vector<AlikeStarts>{{{1}, 12}});
  CHECK(alike_starts(piece, piece.cues[4]) == std::vector<AlikeStarts>{{{3}, 12}});
  CHECK(alike_starts(piece, piece.cues[2]).empty());
}

TEST_CASE("Starts in look-alikes are the same up to their fork, and no others") {
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.sections.clear();
  piece.piece.look_alikes = {{{{1, 6}, {7, 12}}, {4, 10}}};
  piece.cues = {{1, 1, 0}, {2, 3, 0}, {3, 7, 1}, {4, 9, 2}, {5, 11, 2}};
  CHECK(alike_starts(piece, piece.cues[0]) == std::vector<AlikeStarts>{{{7}, 3}});
  CHECK(alike_starts(piece, piece.cues[3]) == std::vector<AlikeStarts>{{{3}, 9}});
  CHECK(alike_starts(piece, piece.cues[4]).empty());
}
