#include "workbook/parts/flow.h"

#include <algorithm>
#include <utility>

#include "paper/text_fitting.h"

namespace cahier {
namespace {

constexpr double kTolerance = 1e-6;  // sums of millimetres that should be equal

}  // namespace

Flow::Flow(std::function<Box()> open) : open_(std::move(open)) {}

bool Flow::fits(double height) const { return is_open_ && height <= left() + kTolerance; }

void Flow::open() {
  page_ = open_();
  used_ = 0;
  is_open_ = true;
}

Box Flow::take(double height) {
  if (!is_open_ || (!fits(height) && !at_top())) open();
  const Box taken = page_.without_top(used_).top(height);
  used_ = on_grid(used_ + height);
  return taken;
}

void Flow::skip(double height) {
  if (!at_top()) used_ = on_grid(used_ + std::clamp(height, 0.0, std::max(0.0, left())));
}

void Flow::next_page() {
  if (!at_top()) is_open_ = false;
  used_ = 0;
}

}  // namespace cahier
