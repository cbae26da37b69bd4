#include "workbook/parts/form_strip.h"

#include <algorithm>
#include <string>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/form_signs.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kNameEdge = 1.5;   // clear on both sides of a name in its band
constexpr double kLeastName = 4.5;  // a narrower band shows no name

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

// Text at an end of a band, on white from there, so that the pattern does not run through it.
void draw_on_band(Canvas& canvas, const Box& band, double width, const std::string& text,
                  const TextStyle& type, Align align) {
  const double ground = width + 2 * kNameEdge;
  canvas.rectangle(align == Align::left ? band.left(ground) : band.right(ground),
                   {{}, Fill{1, true}});
  draw_line(canvas, band.inset(kNameEdge, 0), text, type, align, style::kLeast);
}

// Name and, for a return, "= 1–12". False when the name is left out: a part of it may be another
// section's name, as "A" of "A again".
bool draw_name(Book& book, const PlannedSection& section, const Box& band, const TextStyle& type) {
  if (band.width < kLeastName) return false;
  const double room = band.width - 2 * kNameEdge;
  const Fitted name = fit_line(book.typefaces(), section.name, type, room, style::kLeast);
  if (name.cut) return false;
  draw_on_band(book.canvas(), band, name.width, section.name, type, Align::left);
  if (section.same_as) {
    const std::string as = book.words().say(
        "form_map.as_bars", {{"bars", bar_range(section.same_as->first, section.same_as->last)}});
    const double width = book.typefaces().width(as, style::kNote.face, style::kNote.size_pt);
    if (name.width + width + 3 * kNameEdge <= room)
      draw_on_band(book.canvas(), band, width, as, style::kNote, Align::right);
  }
  return true;
}

// Labels along a line; one that would meet another is left out.
class LabelRow {
 public:
  LabelRow(Canvas& canvas, const TextStyle& type, double y, double height, double right)
      : canvas_(canvas), type_(type), y_(y), height_(height), right_(right) {}

  // Whether there was room for it from `x` on.
  bool add(double x, const std::string& text) {
    constexpr double kBetween = 1.2;
    const double width = canvas_.typefaces().width(text, type_.face, type_.size_pt) + 0.6;
    const Box box{x, y_, width, height_};
    if (box.right() > right_ + 1e-9) return false;
    for (const Box& other : taken_)
      if (box.inset(-kBetween, 0).overlaps(other)) return false;
    taken_.push_back(box);
    draw_line(canvas_, box, text, type_, Align::left, style::kLeast);
    return true;
  }

 private:
  Canvas& canvas_;
  TextStyle type_;
  double y_;
  double height_;
  double right_;
  std::vector<Box> taken_;
};

// The first whole bars of sections.
void add_section_numbers(LabelRow& row, const PlannedPiece& piece, const BarScale& scale) {
  for (const PlannedSection& section : piece.sections) {
    const int bar = std::max(section.bars.first, 1);
    if (scale.bars().contains(bar)) row.add(scale.left(bar), std::to_string(bar));
  }
}

}  // namespace

std::vector<int> form_patterns(const PlannedPiece& piece) {
  const std::vector<int> learned_bars = piece.piece.learned_bars();
  std::vector<int> learned_in(piece.sections.size());
  std::vector<int> patterns(piece.sections.size(), 0);
  for (std::size_t index = 0; index < patterns.size(); ++index) {
    const PlannedSection& section = piece.sections[index];
    learned_in[index] = static_cast<int>(index);
    if (!section.same_as) continue;
    learned_in[index] = section_of(piece, learned_bars[section.bars.first]);
    patterns[learned_in[index]] = 1;
  }
  int next = 0;
  for (int& pattern : patterns)
    if (pattern > 0) pattern = ++next;
  for (std::size_t index = 0; index < patterns.size(); ++index)
    patterns[index] = patterns[learned_in[index]];
  return patterns;
}

TextStyle band_style(const Book& book, const PlannedPiece& piece, double bar_width, double height) {
  constexpr double kPoint = 25.4 / 72;
  const auto fits = [&](const TextStyle& type) {
    // Room for accents above capitals.
    if (height + 0.05 < 1.6 * type.size_pt * kPoint) return false;
    return std::all_of(
        piece.sections.begin(), piece.sections.end(), [&](const PlannedSection& section) {
          const double room = BarScale::units(section.bars) * bar_width - 2 * kNameEdge;
          const Typefaces& typefaces = book.typefaces();
          return fit_line(typefaces, section.name, type, room, type.size_pt).cut ==
                 fit_line(typefaces, section.name, style::kStrong, room, style::kLeast).cut;
        });
  };
  for (const TextStyle& type : {style::kSubtitle, style::kHeading})
    if (fits(type)) return type;
  return style::kStrong;
}

SectionBands::SectionBands(const Book& book, const PlannedPiece& piece, double bar_width,
                           double height)
    : piece_(piece),
      height_(height),
      patterns_(form_patterns(piece)),
      type_(band_style(book, piece, bar_width, height)) {}

bool SectionBands::draw(Book& book, const BarScale& scale, double y) const {
  bool whole_names = true;
  for (std::size_t index = 0; index < piece_.sections.size(); ++index) {
    const PlannedSection& section = piece_.sections[index];
    if (!section.bars.overlaps(scale.bars())) continue;
    const Box box = scale.over(section.bars, y, height_);
    const bool begins = section.bars.first >= scale.bars().first;
    draw_form_pattern(book.canvas(), box, patterns_[index]);
    const bool whole_name = draw_name(book, section, box, begins ? type_ : style::kNote);
    draw_edges(book.canvas(), box, begins, section.bars.last <= scale.bars().last);
    if (begins && !whole_name) whole_names = false;
  }
  return whole_names;
}

void draw_bar_numbers(Book& book, const PlannedPiece& piece, const std::vector<FormPart>& parts,
                      const BarScale& scale, double y, double height) {
  LabelRow row(book.canvas(), style::kNote, y, height, scale.right());
  add_section_numbers(row, piece, scale);
  const int line_begins = std::max(scale.bars().first, 1);
  row.add(scale.left(line_begins), std::to_string(line_begins));
  for (const FormPart& part : parts_in(parts, scale.bars())) {
    const int bar = std::max(part.bars.first, 1);
    if (scale.bars().contains(bar)) row.add(scale.left(bar), std::to_string(bar));
  }
}

void draw_form_strip(Book& book, const PlannedPiece& piece, const Box& box) {
  Canvas& canvas = book.canvas();
  const BarRange whole = piece.piece.whole();
  const BarScale scale(box.x, box.width / BarScale::units(whole), whole);
  constexpr double kNumbers = 4.5;
  constexpr double kBand = 7.5;
  LabelRow numbers(canvas, style::kSmall, box.y, kNumbers, box.right());
  const std::string last = std::to_string(whole.last);
  const double last_width =
      canvas.typefaces().width(last, style::kSmall.face, style::kSmall.size_pt) + 0.6;
  numbers.add(box.x, std::to_string(std::max(whole.first, 1)));
  numbers.add(box.right() - last_width, last);
  add_section_numbers(numbers, piece, scale);
  SectionBands(book, piece, scale.bar_width(), kBand).draw(book, scale, box.y + kNumbers);

  const double below = box.y + kNumbers + kBand;
  constexpr double kLeastChunk = 1.2;  // closer marks would run into one another
  for (const Chunk& chunk : piece.chunks) {
    const Box mark = scale.over(chunk.bars, below, 1);
    if (mark.width < kLeastChunk) continue;
    canvas.line({mark.x, mark.y}, {mark.x, mark.bottom()}, style::kHairline);
  }

  // The starts of sections first: the others are found between them.
  LabelRow cues(canvas, style::kSmall, below + 1.5, kNumbers, box.right());
  const std::vector<CueStart> starts = piece.cues_by_bar();
  for (const bool section_starts : {true, false})
    for (const CueStart& cue : starts) {
      const int begins = piece.sections[cue.section].bars.first;
      if ((std::max(begins, 1) == std::max(cue.bar, 1)) != section_starts) continue;
      const double x = scale.left(cue.bar);
      if (cues.add(x, std::to_string(cue.number)))
        canvas.line({x, below}, {x, below + 1.5}, style::kRule);
    }
}

}  // namespace cahier
