#include "workbook/parts/spread.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "paper/text_fitting.h"

namespace cahier {
namespace {

constexpr double kFloorTolerance = 1e-6;
constexpr double kBelowLast = 1.0 / 3;  // of a gap
constexpr double kMostEmpty = 1.0 / 3;  // of a page, when a block could begin there

}  // namespace

Spread::Spread(std::function<Box()> open, double most_gap)
    : open_(std::move(open)), most_gap_(most_gap) {}

bool Spread::fits(double height) const {
  return pages_ > 0 && height_of(strips_) + height <= page_.height + kFloorTolerance;
}

void Spread::add(const std::vector<Strip>& block) {
  if (block.empty()) return;
  const double empty = page_.height - height_of(strips_);
  const bool begins_here =
      fits(height_of(block)) || (fits(block.front().height) && empty > page_.height * kMostEmpty);
  if (pages_ == 0 || (!begins_here && !strips_.empty())) turn();
  for (const Strip& strip : block) put(strip);
}

void Spread::put(const Strip& strip) {
  if (!fits(strip.height) && !strips_.empty()) turn();
  strips_.push_back(strip);
}

void Spread::turn() {
  finish();
  page_ = open_();
  ++pages_;
}

void Spread::finish() {
  const double gaps = static_cast<double>(strips_.size()) - 1;
  const double left = std::max(0.0, page_.height - height_of(strips_));
  double gap = gaps > 0 ? std::min(most_gap_, left / (gaps + kBelowLast)) : 0;
  gap = std::floor(gap / kGrid + kFloorTolerance) * kGrid;
  Box rest = page_;
  for (const Strip& strip : strips_) {
    strip.draw(rest.top(strip.height + gap));
    rest = rest.without_top(strip.height + gap);
  }
  strips_.clear();
}

}  // namespace cahier
