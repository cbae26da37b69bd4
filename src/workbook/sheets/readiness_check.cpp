#include <fmt/format.h>

#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/standing.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/prose.h"
#include "workbook/parts/task_words.h"

namespace cahier {
namespace {

// The count of bars as the player's score must show it.
std::string bars_to_compare(const Words& words, const Piece& piece) {
  if (piece.pickup > 0)
    return words.say("readiness_check.bars_with_pickup", {{"number", piece.bars}});
  return words.say("readiness_check.bars", {{"number", piece.bars}});
}

std::string fingering(const Words& words, const Piece& piece) {
  if (piece.fingering == Fingering::ready) return words.say("readiness_check.fingering_ready");
  if (piece.fingering == Fingering::not_yet) return words.say("readiness_check.fingering_not_yet");
  return words.say("readiness_check.fingering");
}

void draw_piece_checks(Prose& prose, const Words& words, const Piece& piece) {
  prose.tick(words.say("readiness_check.slowly"));
  prose.tick(fingering(words, piece));
  prose.tick(bars_to_compare(words, piece));
  if (!piece.marks.empty()) {
    std::vector<std::string> notes;
    for (const Mark& mark : piece.marks)
      notes.push_back(words.say("readiness_check.mark", {{"bar", mark.bar}, {"note", mark.note}}));
    prose.tick(words.say("readiness_check.marks"), notes);
  } else {
    prose.tick(words.say("readiness_check.own_marks"));
  }
  prose.tick(words.say("readiness_check.recording"));
}

}  // namespace

void draw_readiness_check(Book& book) {
  const Words& words = book.words();
  const Plan& plan = book.plan();
  if (has_past(plan)) return;
  book.open_sheet(SheetKind::readiness_check, words.say("readiness_check.title"));
  Prose prose(book, words.say("readiness_check.before", {{"date", full_date(words, plan.from)}}));
  prose.paragraph(words.say("readiness_check.lead"));
  for (const PlannedPiece& planned : plan.pieces) {
    prose.heading(plan.pieces.size() > 1 ? planned.piece.title
                                         : words.say("readiness_check.the_piece"));
    draw_piece_checks(prose, words, planned.piece);
  }
  prose.heading(words.say("readiness_check.the_desk"));
  for (const std::string& thing : words.list(
           "readiness_check.things", {{"thrown", thrown_name(words, book.plan().pieces.front())}}))
    prose.tick(thing);

  prose.heading(words.say("readiness_check.the_day"));
  prose.writing_line(
      words.say("readiness_check.place", {{"date", weekday_day_month(words, plan.by)}}));
  prose.writing_line(words.say("readiness_check.instrument"));
  prose.writing_line(words.say("readiness_check.listener"));
  prose.framed(words.list("readiness_check.not_ready"));
}

}  // namespace cahier
