#include "workbook/parts/form_signs.h"

#include <algorithm>
#include <string>

#include "paper/text_fitting.h"
#include "workbook/style.h"

namespace cahier {
namespace {

// Black and thin: a printer makes greys of dots, which would break up such lines.
constexpr Stroke kHatch{0.12, style::kDark, 0, 0, true};
constexpr Stroke kBroken{0.25, style::kDark, 0.8, 0.8, false};

// Lines that rise, or fall, by as much as they go to the right.
void draw_slanted(Canvas& canvas, const Box& box, double step, bool rising) {
  for (double at = box.x - box.height + step / 2; at < box.right(); at += step) {
    const double from = std::max(at, box.x);
    const double to = std::min(at + box.height, box.right());
    const double from_y = rising ? box.bottom() - (from - at) : box.y + (from - at);
    const double to_y = rising ? box.bottom() - (to - at) : box.y + (to - at);
    canvas.line({from, from_y}, {to, to_y}, kHatch);
  }
}

void draw_upright(Canvas& canvas, const Box& box, double step) {
  for (double x = box.x + step / 2; x < box.right(); x += step)
    canvas.line({x, box.y}, {x, box.bottom()}, kHatch);
}

}  // namespace

double cue_sign_width(int number) { return number < 100 ? kCueSign : kCueSign + 1.6; }

void draw_cue_sign(Canvas& canvas, Point top_left, int number) {
  const double diameter = cue_sign_width(number);
  const Box box{top_left.x, top_left.y, diameter, kCueSign};
  if (number < 100)
    canvas.circle(box.centre(), diameter, {style::kRule, {}}, CircleUse::ornament);
  else
    canvas.rectangle(box, {style::kRule, {}});
  draw_line(canvas, box.inset(0.5), std::to_string(number), style::kNoteStrong, Align::centre,
            style::kLeast);
}

void draw_fork_sign(Canvas& canvas, Point top_left) {
  const Stroke stroke{0.4, style::kDark, 0, 0, false};
  const double middle = top_left.x + kForkSign / 2;
  const Point joint{middle, top_left.y + 2.4};
  canvas.line({middle, top_left.y + 4.6}, joint, stroke);
  canvas.line(joint, {top_left.x + 0.3, top_left.y + 0.4}, stroke);
  canvas.line(joint, {top_left.x + kForkSign - 0.3, top_left.y + 0.4}, stroke);
}

void draw_phrase_sign(Canvas& canvas, const Box& box, bool begins, bool ends) {
  canvas.line({box.x, box.bottom()}, {box.right(), box.bottom()}, style::kRule);
  if (begins) canvas.line({box.x, box.y}, {box.x, box.bottom()}, style::kRule);
  if (ends) canvas.line({box.right(), box.y}, {box.right(), box.bottom()}, style::kRule);
}

void draw_repeat_sign(Canvas& canvas, double x, double y, double height, bool opens) {
  const double away = opens ? 1 : -1;
  canvas.line({x + away * 0.3, y}, {x + away * 0.3, y + height}, {0.6, 0, 0, 0, false});
  for (const double share : {0.32, 0.68})
    canvas.circle({x + away * 1.4, y + height * share}, 0.8, {{}, Fill{0, false}},
                  CircleUse::ornament);
}

void draw_chunk_box(Canvas& canvas, const Box& box, bool back) {
  if (!back) return canvas.rectangle(box, {style::kRule, {}});
  canvas.line({box.x, box.bottom()}, {box.right(), box.bottom()}, kBroken);
}

void draw_learned_sign(Canvas& canvas, const Box& box) {
  canvas.rectangle(box.top(0.6), {{}, Fill{style::kDark, false}});
}

std::optional<Fill> level_fill(int level) {
  // About 88, 74 and 58 in lightness: as far apart as white is from the first.
  switch (level) {
    case 3:
      return Fill{0.72, false};
    case 4:
      return Fill{0.47, false};
    case 5:
      return Fill{0.26, false};
    default:
      return std::nullopt;
  }
}

void draw_form_pattern(Canvas& canvas, const Box& box, int pattern) {
  if (pattern == 0) return;
  const int kind = (pattern - 1) % kFormPatterns;
  const double step = kind < 4 ? 2.2 : 4.4;
  switch (kind % 4) {
    case 0:
      return draw_slanted(canvas, box, step, true);
    case 1:
      return draw_upright(canvas, box, step);
    case 2:
      return draw_slanted(canvas, box, step, false);
    default:
      draw_slanted(canvas, box, step, true);
      draw_slanted(canvas, box, step, false);
  }
}

}  // namespace cahier
