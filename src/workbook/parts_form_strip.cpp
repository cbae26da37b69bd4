#include "workbook/parts_form_strip.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kNameEdge = 1.2;   // clear on both sides of a name in its band
constexpr double kLeastName = 4.5;  // a narrower band shows no name
constexpr double kLeastCutName = 13;
constexpr Stroke kHatch{0.15, 0.68, 0, 0, true};

void draw_hatching(Canvas& canvas, const Box& box, bool rising) {
  constexpr double kStep = 1.5;
  for (double at = box.x - box.height + kStep; at < box.right(); at += kStep) {
    const double from = std::max(at, box.x);
    const double to = std::min(at + box.height, box.right());
    const double from_y = rising ? box.bottom() - (from - at) : box.y + (from - at);
    const double to_y = rising ? box.bottom() - (to - at) : box.y + (to - at);
    canvas.line({from, from_y}, {to, to_y}, kHatch);
  }
}

// The section whose bars hold `bar`.
int section_of(const PlannedPiece& piece, int bar) {
  for (std::size_t index = 0; index < piece.sections.size(); ++index)
    if (piece.sections[index].bars.contains(bar)) return static_cast<int>(index);
  return 0;
}

void draw_edges(Canvas& canvas, const Box& box, bool begins, bool ends) {
  canvas.line({box.x, box.y}, {box.right(), box.y}, style::kRule);
  canvas.line({box.x, box.bottom()}, {box.right(), box.bottom()}, style::kRule);
  constexpr double kLeastBand = 1.2;  // the edges of narrower ones would run together
  if (box.width < kLeastBand) return;
  if (begins) canvas.line({box.x, box.y}, {box.x, box.bottom()}, style::kRule);
  if (ends) canvas.line({box.right(), box.y}, {box.right(), box.bottom()}, style::kRule);
}

// Name and, for a return, "as 1–12". False when the name is cut or left out.
bool draw_name(Book& book, const PlannedSection& section, const Box& box, bool begins) {
  if (box.width < kLeastName) return false;
  const Box inner = box.inset(kNameEdge, 0);
  const TextStyle name_style = begins ? style::kStrong : style::kNote;
  const Fitted name =
      fit_line(book.typefaces(), section.name, name_style, inner.width, style::kLeast);
  // A few letters of a name say less than none.
  if (name.cut && box.width < kLeastCutName) return false;
  draw_line(book.canvas(), inner, section.name, name_style, Align::left, style::kLeast);
  if (section.same_as && !name.cut) {
    const std::string as = book.words().say(
        "form_map.as_bars", {{"bars", bar_range(section.same_as->first, section.same_as->last)}});
    const TextStyle as_style = style::kSmall;
    const double room = inner.width - name.width - 2;
    const Fitted fitted = fit_line(book.typefaces(), as, as_style, room, style::kLeast);
    if (room > 0 && !fitted.cut)
      draw_line(book.canvas(), inner.right(room), as, as_style, Align::right, style::kLeast);
  }
  return !name.cut;
}

}  // namespace

double BarScale::left(int bar) const {
  const double pickup = bars_.first == 0 ? 0.5 : 0;
  if (bar <= bars_.first) return x_;
  return x_ + bar_width_ * (bar - std::max(bars_.first, 1) + pickup);
}

Box BarScale::over(BarRange range, double y, double height) const {
  const double from = left(std::max(range.first, bars_.first));
  const double to = right(std::min(range.last, bars_.last));
  return {from, y, to - from, height};
}

std::vector<BarRange> form_lines(const PlannedPiece& piece, int most) {
  std::vector<BarRange> lines;
  const BarRange whole = piece.piece.whole();
  int first = whole.first;
  while (first <= whole.last) {
    // A pickup rides along and does not count.
    const int end = std::min(std::max(first, 1) + most - 1, whole.last);
    int last = end;
    if (end < whole.last) {
      int chunk_end = 0;
      int section_end = 0;
      for (const Chunk& chunk : piece.chunks)
        if (chunk.bars.last <= end) chunk_end = std::max(chunk_end, chunk.bars.last);
      for (const PlannedSection& section : piece.sections) {
        if (section.bars.last <= end) section_end = std::max(section_end, section.bars.last);
        if (section.same_as && section.bars.contains(end)) chunk_end = end;
      }
      chunk_end = std::max(chunk_end, section_end);
      if (chunk_end >= first) last = chunk_end;
      if (section_end - first + 1 >= (most + 1) / 2) last = section_end;
    }
    lines.push_back({first, last});
    first = last + 1;
  }
  return lines;
}

std::vector<int> form_kinds(const PlannedPiece& piece) {
  std::vector<int> kinds(piece.sections.size(), 0);
  int next = 0;
  for (std::size_t index = 0; index < kinds.size(); ++index)
    if (!piece.sections[index].same_as) kinds[index] = next++;
  for (std::size_t index = 0; index < kinds.size(); ++index) {
    if (!piece.sections[index].same_as) continue;
    const int learned = piece.piece.learned_bar(piece.sections[index].bars.first);
    kinds[index] = kinds[section_of(piece, learned)];
  }
  return kinds;
}

void draw_form_pattern(Canvas& canvas, const Box& box, int kind) {
  switch (kind % 5) {
    case 0:
      return;
    case 1:
      canvas.rectangle(box, {{}, Fill{0.86, true}});
      return;
    case 2:
      draw_hatching(canvas, box, true);
      return;
    case 3:
      canvas.rectangle(box, {{}, Fill{style::kPale, true}});
      return;
    default:
      draw_hatching(canvas, box, false);
      return;
  }
}

bool draw_section_bands(Book& book, const PlannedPiece& piece, const BarScale& scale, double y,
                        double height) {
  const std::vector<int> kinds = form_kinds(piece);
  bool whole_names = true;
  for (std::size_t index = 0; index < piece.sections.size(); ++index) {
    const PlannedSection& section = piece.sections[index];
    if (!section.bars.overlaps(scale.bars())) continue;
    const Box box = scale.over(section.bars, y, height);
    const bool begins = section.bars.first >= scale.bars().first;
    draw_form_pattern(book.canvas(), box, kinds[index]);
    draw_edges(book.canvas(), box, begins, section.bars.last <= scale.bars().last);
    const bool whole_name = draw_name(book, section, box, begins);
    if (begins && !whole_name) whole_names = false;
  }
  return whole_names;
}

void draw_bar_numbers(Canvas& canvas, const BarScale& scale, double y, double height) {
  const TextStyle text_style = style::kSmall;
  const int first = std::max(scale.bars().first, 1);
  const double widest = canvas.typefaces().width(std::to_string(scale.bars().last), text_style.face,
                                                 text_style.size_pt);
  int step = 1;
  while (step < scale.bars().size() && step * scale.bar_width() < widest + 2.5) step *= 2;
  for (int bar = first; bar <= scale.bars().last; bar += step) {
    const double room = scale.right() - scale.left(bar);
    if (bar > first && room < widest) break;
    const Box box{scale.left(bar), y, std::max(widest + 0.5, step * scale.bar_width()), height};
    draw_line(canvas, box, std::to_string(bar), text_style, Align::left, style::kLeast);
  }
}

void draw_form_strip(Book& book, const PlannedPiece& piece, const Box& box) {
  Canvas& canvas = book.canvas();
  const BarRange whole = piece.piece.whole();
  const BarScale scale(box.x, box.width / BarScale::units(whole), whole);
  constexpr double kNumbers = 4;
  constexpr double kBand = 7;
  const Box first = box.top(kNumbers);
  const std::string last = std::to_string(whole.last);
  const double last_width = canvas.typefaces().width(last, style::kSmall.face, 8.5) + 0.5;
  draw_line(canvas, first.left(box.width - last_width - 2),
            std::to_string(std::max(whole.first, 1)), style::kSmall, Align::left, style::kLeast);
  if (whole.last > 1)
    draw_line(canvas, first.right(last_width), last, style::kSmall, Align::right, style::kLeast);
  draw_section_bands(book, piece, scale, box.y + kNumbers, kBand);

  const double chunk_y = box.y + kNumbers + kBand;
  constexpr double kLeastChunk = 1.2;  // closer marks would run into one another
  for (const Chunk& chunk : piece.chunks) {
    const Box mark = scale.over(chunk.bars, chunk_y, 1.6);
    if (mark.width < kLeastChunk) continue;
    canvas.line({mark.x, mark.y}, {mark.x, mark.bottom()}, style::kHairline);
  }

  double free_from = box.x;
  for (const CueStart& cue : piece.cues) {
    const double x = scale.left(cue.bar);
    const std::string number = std::to_string(cue.number);
    const double width = canvas.typefaces().width(number, style::kSmall.face, 8.5) + 0.6;
    if (x < free_from || x + width > box.right()) continue;
    canvas.line({x, chunk_y}, {x, chunk_y + 2.6}, style::kRule);
    draw_line(canvas, {x, chunk_y + 2.8, width, 4}, number, style::kSmall, Align::left,
              style::kLeast);
    free_from = x + width + 1;
  }
}

}  // namespace cahier
