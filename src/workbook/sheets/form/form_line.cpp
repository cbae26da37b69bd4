#include "workbook/sheets/form/form_line.h"

#include <algorithm>
#include <utility>

#include "paper/text_fitting.h"
#include "plan/chunk_labels.h"
#include "text/phrasing.h"
#include "workbook/parts/form_signs.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/sheets/form/learned_parts.h"
#include "workbook/style.h"

namespace cahier {
namespace {

// Rows from top to bottom, in steps of the grid.
constexpr double kLabelRow = 3 * kGrid;
constexpr double kNumbers = 3 * kGrid;
constexpr double kBand = 6 * kGrid;
constexpr double kCells = 2 * kGrid;
constexpr double kPhrases = 3 * kGrid;
constexpr double kChunks = 4 * kGrid;
constexpr double kSignRow = 4 * kGrid;

constexpr double kShortMark = 60;  // millimetres of a note too long for a line

const TextStyle kLabel = style::kNote;
const TextStyle kLabelBar = style::kNoteStrong;

bool has_phrases(const PlannedPiece& piece, BarRange line) {
  return std::any_of(piece.piece.sections.begin(), piece.piece.sections.end(),
                     [&](const Section& section) {
                       return !section.phrases.empty() && section.bars.overlaps(line);
                     });
}

// "bar 1:", before what begins there: a meter beside a bare number would read as one figure.
std::string at_bar(const Book& book, int bar) {
  return book.words().say("form_map.at_bar", {{"bar", bar}});
}

// Meter and key as far as they are given, "3/4 · A minor".
std::string signature_text(const std::optional<Meter>& meter, const std::optional<Key>& key) {
  std::string text = meter ? meter->text() : "";
  if (key && !key->text.empty()) text += (text.empty() ? "" : " · ") + key->text;
  return text;
}

}  // namespace

FormLine::FormLine(Book& book, const PlannedPiece& piece, const FormLayout& layout, BarRange bars,
                   double x)
    : book_(book), piece_(piece), layout_(layout), x_(x), scale_(layout.scale(bars, x)) {
  collect_above();
  collect_below();
  rows_above_ = place(above_);
  rows_below_ = place(below_);
}

bool FormLine::holds_mark(const Book& book, const FormLayout& layout, const Mark& mark) {
  const double bar =
      book.typefaces().width(at_bar(book, mark.bar), kLabelBar.face, kLabelBar.size_pt);
  const double room = book.upright().width - 0.6 - layout.labels - layout.indent - bar - 2.5;
  return book.typefaces().width(mark.note, kLabel.face, kLabel.size_pt) <= room;
}

double FormLine::height() const {
  return rows_above_ * kLabelRow + kNumbers + kBand + kCells +
         (has_phrases(piece_, scale_.bars()) ? kPhrases : 0) + kChunks + rows_below_ * kSignRow;
}

int FormLine::place(std::vector<Label>& labels) const {
  constexpr double kBetween = 2;
  // Cue starts keep to the first row; what meets them goes on to the next.
  std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) {
    return std::pair(a.cue == 0, a.bar) < std::pair(b.cue == 0, b.bar);
  });
  // A line of few bars is short, but the page beside it is free.
  const double left = scale_.left();
  const double line_width = x_ + book_.upright().width - 0.6 - left;
  int rows = 0;
  for (auto label = labels.begin(); label != labels.end(); ++label) {
    label->width = std::min(label->width, line_width);
    label->x = std::min(label->x, left + line_width - label->width);
    const auto meets = [&](const Label& other) {
      return other.row == label->row && other.x < label->x + label->width + kBetween &&
             label->x < other.x + other.width + kBetween;
    };
    while (std::any_of(labels.begin(), label, meets)) ++label->row;
    rows = std::max(rows, label->row + 1);
  }
  return rows;
}

void FormLine::add_above(int bar, std::string text, std::optional<Tempo> tempo) {
  const Typefaces& typefaces = book_.typefaces();
  Label label;
  label.x = scale_.left(bar);
  label.bar = bar;
  label.text = std::move(text);
  label.tempo = tempo;
  label.width = typefaces.width(at_bar(book_, bar), kLabelBar.face, kLabelBar.size_pt) + 1.5;
  if (!label.text.empty())
    label.width += typefaces.width(label.text, kLabel.face, kLabel.size_pt) + 0.8;
  if (tempo) label.width += tempo_width(typefaces, *tempo, kLabel) + 2.8;
  above_.push_back(std::move(label));
}

void FormLine::collect_above() {
  const Piece& piece = piece_.piece;
  const BarRange line = scale_.bars();
  if (line.first == piece.first_bar())
    add_above(std::max(line.first, 1), signature_text(piece.meter_at(1), piece.key_at(1)),
              piece.tempo_at(1));
  for (const Change& change : piece.changes)
    if (change.bar > 1 && line.contains(change.bar))
      add_above(change.bar, signature_text(change.meter, change.key), change.tempo);
  for (const Repeat& repeat : piece.repeats)
    if (repeat.times != 2 && line.contains(repeat.bars.first))
      add_above(repeat.bars.first,
                book_.words().say("form_map.repeat",
                                  {{"last", repeat.bars.last}, {"times", repeat.times}}),
                std::nullopt);
  for (const Repeat& repeat : piece.repeats)
    for (const Ending& ending : repeat.endings)
      if (line.contains(ending.bars.first)) {
        std::vector<std::string> times;
        for (const int time : ending.times) times.push_back(std::to_string(time));
        add_above(
            ending.bars.first,
            book_.words().say("form_map.ending", {{"times", list_text(book_.words(), times)}}),
            std::nullopt);
      }
  for (const Mark& mark : piece.marks)
    if (line.contains(mark.bar)) {
      add_above(mark.bar, mark.note, std::nullopt);
      if (!holds_mark(book_, layout_, mark))
        above_.back().width = std::min(above_.back().width, kShortMark);
    }
}

void FormLine::collect_below() {
  for (const CueStart& cue : piece_.cues) {
    if (!scale_.bars().contains(cue.bar)) continue;
    Label label;
    label.x = scale_.left(cue.bar);
    label.bar = cue.bar;
    label.cue = cue.number;
    label.width = cue_sign_width(cue.number);
    below_.push_back(label);
  }
  for (const Fork& fork : piece_.forks) {
    // Repeats and endings have signs of their own.
    if (fork.from != ForkFrom::look_alikes && fork.from != ForkFrom::return_) continue;
    for (const WayOn& way : fork.ways) {
      if (!scale_.bars().contains(way.to)) continue;
      std::vector<std::string> others;
      for (const WayOn& other : fork.ways)
        if (other.to != way.to) others.push_back(std::to_string(other.to));
      Label label;
      label.x = scale_.left(way.to);
      label.bar = way.to;
      label.text = list_text(book_.words(), others);
      label.width =
          kForkSign + 1.5 + book_.typefaces().width(label.text, kLabel.face, kLabel.size_pt);
      below_.push_back(std::move(label));
    }
  }
}

void FormLine::draw_label(std::string_view key, double y, double height) const {
  draw_line(book_.canvas(), form_label(layout_, x_, y, height), book_.words().say(key),
            style::kSmall, Align::right, style::kLeast);
}

SectionBands FormLine::bands(const Book& book, const PlannedPiece& piece,
                             const FormLayout& layout) {
  return {book, piece, layout.bar_width, kBand};
}

bool FormLine::draw(const SectionBands& bands, double y) const {
  draw_above(y);
  y += rows_above_ * kLabelRow;
  draw_bar_numbers(book_, piece_, layout_.parts, scale_, y, kNumbers);
  y += kNumbers;
  draw_label("form_map.row_sections", y, kBand);
  const bool whole_names = bands.draw(book_, scale_, y);
  y += kBand;
  draw_label("form_map.row_bars", y - 0.5, kCells + 1);
  draw_cells(y);
  draw_repeats(y);
  y += kCells;
  if (has_phrases(piece_, scale_.bars())) {
    draw_label("form_map.row_phrases", y + 0.75, kPhrases);
    draw_phrases(y);
    y += kPhrases;
  }
  draw_label("form_map.row_chunks", y, kChunks);
  draw_chunks(y);
  y += kChunks;
  if (!below_.empty()) draw_label("form_map.row_cues", y, kSignRow);
  draw_below(y);
  return whole_names;
}

void FormLine::draw_above(double y) const {
  Canvas& canvas = book_.canvas();
  for (const Label& label : above_) {
    Box box{label.x, y + (rows_above_ - 1 - label.row) * kLabelRow, label.width, kLabelRow};
    const double bar =
        draw_line(canvas, box, at_bar(book_, label.bar), kLabelBar, Align::left, style::kLeast);
    box = box.without_left(bar + 1.2);
    double tempo = 0;
    if (label.tempo) tempo = tempo_width(book_.typefaces(), *label.tempo, kLabel) + 1;
    double text = 0;
    if (!label.text.empty())
      text = draw_line(canvas, box.without_right(tempo), label.text, kLabel, Align::left,
                       kLabel.size_pt);
    if (label.tempo)
      draw_tempo(canvas, box.without_left(text > 0 ? text + 2 : 0), *label.tempo, kLabel);
  }
}

void FormLine::draw_cells(double y) const {
  Canvas& canvas = book_.canvas();
  constexpr int kDarkLevel = 4;  // from here on bar lines are white
  const BarRange bars = scale_.bars();
  const auto level_at = [&](int bar) { return shown_level(piece_, layout_.parts, bar); };
  for (int bar = bars.first; bar <= bars.last; ++bar)
    canvas.rectangle(scale_.over({bar, bar}, y, kCells), {{}, level_fill(level_at(bar))});
  for (int bar = bars.first + 1; bar <= bars.last; ++bar) {
    const bool dark = std::min(level_at(bar - 1), level_at(bar)) >= kDarkLevel;
    const double x = scale_.left(bar);
    canvas.line({x, y}, {x, y + kCells}, {0.2, dark ? 1 : style::kDark, 0, 0, false});
  }
  canvas.rectangle(scale_.over(bars, y, kCells), {style::kRule, {}});
}

void FormLine::draw_repeats(double y) const {
  for (const Repeat& repeat : piece_.piece.repeats) {
    if (scale_.bars().contains(repeat.bars.first))
      draw_repeat_sign(book_.canvas(), scale_.left(repeat.bars.first), y, kCells, true);
    const BarRange bars = scale_.bars();
    for (int bar = std::max(bars.first, repeat.bars.first);
         bar <= std::min(bars.last, repeat.reach().last); ++bar)
      if (repeat.goes_back_from(bar))
        draw_repeat_sign(book_.canvas(), scale_.right(bar), y, kCells, false);
  }
}

void FormLine::draw_phrases(double y) const {
  for (const Section& section : piece_.piece.sections)
    for (const BarRange& phrase : section.phrases) {
      if (!phrase.overlaps(scale_.bars())) continue;
      const Box box = scale_.over(phrase, y + 2, 1.6).inset(0.5, 0);
      draw_phrase_sign(book_.canvas(), box, scale_.bars().contains(phrase.first),
                       scale_.bars().contains(phrase.last));
    }
}

void FormLine::draw_chunks(double y) const {
  const std::ptrdiff_t index = &piece_ - book_.plan().pieces.data();
  const std::vector<bool> learned = chunks_learned(book_.plan(), static_cast<int>(index));
  const ChunkLabels labels(piece_);
  for (const FormPart& part : parts_in(layout_.parts, scale_.bars())) {
    const Box box = scale_.over(part.bars, y, kChunks).inset(0.35, 0.75);
    draw_chunk_box(book_.canvas(), box, part.back);
    if (!part.back && learned[part.chunk]) draw_learned_sign(book_.canvas(), box);
    const std::string id = labels.of(piece_.chunks[part.chunk]);
    const TextStyle& type = part.back ? style::kSmall : style::kNote;
    const Box inner = box.inset(0.5, 0);
    if (part.bars.first >= scale_.bars().first &&
        !fit_line(book_.typefaces(), id, type, inner.width, style::kLeast).cut)
      draw_line(book_.canvas(), inner, id, type, Align::centre, style::kLeast);
  }
}

void FormLine::draw_below(double y) const {
  for (const Label& label : below_) {
    const double top = y + label.row * kSignRow + 0.5;
    if (label.cue > 0) {
      draw_cue_sign(book_.canvas(), {label.x, top}, label.cue);
      continue;
    }
    draw_fork_sign(book_.canvas(), {label.x, top});
    draw_line(book_.canvas(),
              {label.x + kForkSign + 0.8, top, label.width - kForkSign - 0.6, kCueSign}, label.text,
              kLabel, Align::left, style::kLeast);
  }
}

}  // namespace cahier
