#include "workbook/sheets/starts/fork_notes.h"

#include "report/fork_words.h"
#include "text/phrasing.h"
#include "workbook/parts/writing_lines.h"

namespace cahier {
namespace {

constexpr double kAfterNotes = kGrid;

}  // namespace

ForkNotes::ForkNotes(const Book& book, int piece, const Fork& fork, const TrapAnswers& answers,
                     double line)
    : book_(book), piece_(book.plan().pieces[piece].piece), fork_(fork), line_(line) {
  const Words& words = book.words();
  for (const WayOn& way : fork.ways) {
    const std::string notes = piece_.beginning_at(way.to);
    if (!has_room(with_notes(way, notes)) && !notes.empty())
      add(words.say("look_alikes.begins", {{"bar", way.to}, {"notes", notes}}), style::kNoteStrong,
          0);
    if (const std::string told = told_of(way); !has_room(told)) add(told, style::kNoteStrong, 0);
  }
  std::vector<std::string> starts;
  for (const CueStart* cue : answers.starts)
    starts.push_back(words.say("look_alikes.start", {{"number", cue->number}, {"bar", cue->bar}}));
  add_list("look_alikes.starts", starts, book.page_of_piece(piece, SheetKind::cue_starts));
  add_tasks("look_alikes.spoken_parts", answers.spoken_parts);
  add_tasks("look_alikes.write_outs", answers.write_outs);
}

std::string ForkNotes::label(const WayOn& way) const {
  const std::string with = with_notes(way, piece_.beginning_at(way.to));
  return has_room(with) ? with : with_notes(way, "");
}

std::string ForkNotes::difference(const WayOn& way) const {
  std::string told = told_of(way);
  return has_room(told) ? told : std::string();
}

double ForkNotes::height_below() const {
  double height = below_.empty() ? 0 : kAfterNotes;
  for (const Note& note : below_) height += on_grid(note.text.height());
  return height;
}

void ForkNotes::draw_below(Canvas& canvas, Flow& flow) const {
  for (const Note& note : below_) {
    const Box box = flow.take(note.text.height());
    note.text.draw(canvas, box);
    if (note.page > 0) canvas.link(box, note.page);
  }
  if (!below_.empty()) flow.skip(kAfterNotes);
}

std::string ForkNotes::with_notes(const WayOn& way, const std::string& notes) const {
  return book_.words().say("look_alikes.goes_on", {{"bar", way.to}}) +
         (notes.empty() ? "" : " " + notes);
}

std::string ForkNotes::told_of(const WayOn& way) const {
  return parting_text(book_.words(), piece_, fork_, way);
}

// In the smallest type.
bool ForkNotes::has_room(const std::string& label) const {
  return labelled_line_width(book_.typefaces(), label, style::kNoteStrong, kLeastForkLine) <= line_;
}

void ForkNotes::add(const std::string& text, const TextStyle& type, int page) {
  below_.push_back({TextBlock(book_.typefaces(), text, type, book_.upright().width), page});
}

void ForkNotes::add_list(std::string_view key, const std::vector<std::string>& list, int page) {
  if (list.empty()) return;
  const Words& words = book_.words();
  std::string text = list_text(words, list);
  if (page > 0) text = words.say("look_alikes.with_page", {{"what", text}, {"page", page}});
  add(words.say(key, {{"list", text}}), style::kNote, page);
}

// Each by its day, with the page of the first.
void ForkNotes::add_tasks(std::string_view key, const std::vector<DatedTask>& tasks) {
  std::vector<std::string> dates;
  for (const DatedTask& one : tasks) dates.push_back(day_month_short(book_.words(), one.date));
  add_list(key, dates, tasks.empty() ? 0 : book_.page_of_task(*tasks.front().task));
}

}  // namespace cahier
