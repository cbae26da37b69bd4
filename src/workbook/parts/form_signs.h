// The signs that the form of a piece is drawn with, for its keys too.
#pragma once

#include <optional>

#include "paper/canvas.h"

namespace cahier {

// The number of a cue start in a circle of kCueSign millimetres, longer from 100 on.
inline constexpr double kCueSign = 5;
void draw_cue_sign(Canvas& canvas, Point top_left, int number);
double cue_sign_width(int number);

inline constexpr double kForkSign = 3;  // millimetres wide
void draw_fork_sign(Canvas& canvas, Point top_left);

void draw_phrase_sign(Canvas& canvas, const Box& box, bool begins, bool ends);
void draw_repeat_sign(Canvas& canvas, double x, double y, double height, bool opens);

// A box for a chunk; where it is played again in a return, only a broken line below it.
void draw_chunk_box(Canvas& canvas, const Box& box, bool back);

// Over the box of a chunk that was learned before: a bar along its top.
void draw_learned_sign(Canvas& canvas, const Box& box);

// White for levels 1 and 2, then greys that the eye tells apart: 3 light, 5 dark.
std::optional<Fill> level_fill(int level);

// The ground of a section that comes back: 0 is white, 1 to kFormPatterns hatchings; larger
// numbers begin again at 1. Flat greys are kept for hard bars.
inline constexpr int kFormPatterns = 8;
void draw_form_pattern(Canvas& canvas, const Box& box, int pattern);

}  // namespace cahier
