#include "workbook/parts/prose.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kAfterParagraph = 1.6;
constexpr double kFrame = 3.5;  // from the frame to the text

}  // namespace

Prose::Prose(Book& book, std::string_view right) : book_(book), right_(right) { open(); }

void Prose::open() {
  page_ = book_.open_page(right_);
  y_ = page_.y;
}

Box Prose::rest() const { return page_.without_top(y_ - page_.y); }

void Prose::need(double height) {
  if (rest().height < height && y_ > page_.y) open();
}

void Prose::heading(std::string_view text) {
  const TextBlock block(book_.typefaces(), text, style::kHeading, page_.width);
  if (y_ > page_.y) y_ += 3;
  need(block.height() + 12);
  y_ = block.draw(book_.canvas(), rest()) + 1.5;
}

void Prose::paragraph(std::string_view text) {
  const TextBlock block(book_.typefaces(), text, style::kBody, page_.width);
  need(block.height());
  y_ = block.draw(book_.canvas(), rest()) + kAfterParagraph;
}

void Prose::term(std::string_view label, std::string_view text, double label_width) {
  const TextBlock name(book_.typefaces(), label, style::kStrong, label_width - 3);
  const TextBlock block(book_.typefaces(), text, style::kBody, page_.width - label_width);
  need(std::max(name.height(), block.height()));
  const Box box = rest();
  const double name_end = name.draw(book_.canvas(), box);
  const double text_end = block.draw(book_.canvas(), box.without_left(label_width));
  y_ = std::max(name_end, text_end) + kAfterParagraph;
}

void Prose::tick(std::string_view text, const std::vector<std::string>& notes) {
  constexpr double kIndent = 9;
  const Typefaces& typefaces = book_.typefaces();
  const TextBlock block(typefaces, text, style::kBody, page_.width - kIndent);
  need(std::max(block.height(), style::kTick + 0.5));
  const Box box = rest();
  const Point centre{box.x + style::kTick / 2 + 0.2, box.y + style::kTick / 2 + 0.2};
  book_.canvas().circle(centre, style::kTick, {style::kRule, {}}, CircleUse::tick);
  y_ = std::max(block.draw(book_.canvas(), box.without_left(kIndent)), box.y + style::kTick + 0.5);
  for (const std::string& note : notes) {
    const TextBlock small(typefaces, note, style::kSmall, page_.width - kIndent);
    need(small.height());
    y_ = small.draw(book_.canvas(), rest().without_left(kIndent));
  }
  y_ += 2.6;
}

void Prose::writing_line(std::string_view label) {
  constexpr double kLabel = 0.36;      // of the width
  constexpr double kMostLabel = 0.65;  // where the words need more
  need(style::kWritingRow + 1);
  const Box row = rest().top(style::kWritingRow);
  const double needed = book_.typefaces().width(label, style::kBody.face, style::kBody.size_pt) + 1;
  const double width =
      std::clamp(needed, row.width * kLabel, std::max(row.width * kLabel, row.width * kMostLabel));
  draw_line(book_.canvas(), row.left(width).bottom(6), label, style::kBody, Align::left,
            style::kLeast);
  book_.canvas().line({row.x + width + 2, row.bottom() - 0.5}, {row.right(), row.bottom() - 0.5},
                      style::kWritingLine);
  y_ = row.bottom() + 1;
}

void Prose::framed(const std::vector<std::string>& paragraphs) {
  std::vector<TextBlock> blocks;
  double height = 2 * kFrame - 1;
  for (const std::string& text : paragraphs) {
    const TextStyle text_style = blocks.empty() ? style::kStrong : style::kBody;
    blocks.emplace_back(book_.typefaces(), text, text_style, page_.width - 2 * kFrame);
    height += blocks.back().height() + 1;
  }
  y_ += 4;
  need(height);
  const Box frame = rest().top(height);
  book_.canvas().rectangle(frame.inset(0.2), {style::kRule, {}});
  Box inner = frame.inset(kFrame);
  for (const TextBlock& block : blocks)
    inner = inner.without_top(block.draw(book_.canvas(), inner) + 1 - inner.y);
  y_ = frame.bottom() + kAfterParagraph;
}

Box draw_paragraphs(Canvas& canvas, Box box, const std::vector<std::string>& paragraphs) {
  for (const std::string& text : paragraphs) {
    const TextBlock block(canvas.typefaces(), text, style::kBody, box.width);
    block.draw(canvas, box);
    box = box.without_top(on_grid(block.height() + kGrid));
  }
  return box;
}

}  // namespace cahier
