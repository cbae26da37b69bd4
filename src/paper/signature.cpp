#include "paper/signature.h"

#include <algorithm>
#include <cstdlib>

namespace cahier {

namespace {

// Half-spaces above the middle line, computed from the published orders of sharps (F C G D A E B)
// and flats (B E A D G C F).
const std::vector<int>& sharps(StaffClef clef) {
  static const std::vector<int> treble{4, 1, 5, 2, -1, 3, 0};
  static const std::vector<int> bass{2, -1, 3, 0, -3, 1, -2};
  static const std::vector<int> alto{3, 0, 4, 1, -2, 2, -1};
  static const std::vector<int> tenor{-2, 2, -1, 3, 0, 4, 1};
  static const std::vector<int> none;
  switch (clef) {
    case StaffClef::treble:
    case StaffClef::treble_8_below:
    case StaffClef::treble_8_above:
      return treble;
    case StaffClef::bass:
    case StaffClef::bass_8_below:
      return bass;
    case StaffClef::alto:
      return alto;
    case StaffClef::tenor:
      return tenor;
    case StaffClef::percussion:
      break;
  }
  return none;
}

const std::vector<int>& flats(StaffClef clef) {
  static const std::vector<int> treble{0, 3, -1, 2, -2, 1, -3};
  static const std::vector<int> bass{-2, 1, -3, 0, -4, -1, -5};
  static const std::vector<int> alto{-1, 2, -2, 1, -3, 0, -4};
  static const std::vector<int> tenor{1, 4, 0, 3, -1, 2, -2};
  static const std::vector<int> none;
  switch (clef) {
    case StaffClef::treble:
    case StaffClef::treble_8_below:
    case StaffClef::treble_8_above:
      return treble;
    case StaffClef::bass:
    case StaffClef::bass_8_below:
      return bass;
    case StaffClef::alto:
      return alto;
    case StaffClef::tenor:
      return tenor;
    case StaffClef::percussion:
      break;
  }
  return none;
}

// In staff spaces.
constexpr double kAccidentalGap = 0.1;
constexpr double kNaturalGap = 0.2;
constexpr double kPartGap = 0.8;  // between naturals, key and meter

// Adds shapes side by side.
class Row {
 public:
  explicit Row(double space) : space_(space) {}

  void add(const MusicGlyph& glyph, double gap, double y) {
    if (width_ > 0) width_ += gap * space_;
    outline_.append(glyph.outline.moved(width_, y));
    width_ += glyph.width;
  }

  void add_accidentals(Accidental accidental, const std::vector<int>& positions) {
    const MusicGlyph glyph = accidental_glyph(accidental, space_);
    double gap = kPartGap;
    for (int position : positions) {
      add(glyph, gap, -position * space_ / 2);
      gap = accidental == Accidental::natural ? kNaturalGap : kAccidentalGap;
    }
  }

  MusicGlyph glyph() const { return {outline_, width_}; }

 private:
  double space_;
  Outline outline_;
  double width_ = 0;
};

// The accidentals of `cancelled` that `fifths` does not have.
std::vector<int> cancelled_positions(StaffClef clef, int cancelled, int fifths) {
  std::vector<int> positions = key_signature_positions(clef, cancelled);
  const bool same_kind = (cancelled > 0) == (fifths > 0) && fifths != 0;
  const std::size_t kept = same_kind ? static_cast<std::size_t>(std::abs(fifths)) : 0;
  positions.erase(positions.begin(), positions.begin() + static_cast<std::ptrdiff_t>(
                                                             std::min(kept, positions.size())));
  return positions;
}

}  // namespace

std::vector<int> key_signature_positions(StaffClef clef, int fifths) {
  const std::vector<int>& all = fifths > 0 ? sharps(clef) : flats(clef);
  const std::size_t count = std::min(static_cast<std::size_t>(std::abs(fifths)), all.size());
  return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count)};
}

MusicGlyph signature_glyph(const Typefaces& typefaces, StaffClef clef, const Signature& signature,
                           double space) {
  Row row(space);
  if (signature.fifths) {
    const int fifths = *signature.fifths;
    row.add_accidentals(Accidental::natural,
                        cancelled_positions(clef, signature.cancelled, fifths));
    row.add_accidentals(fifths > 0 ? Accidental::sharp : Accidental::flat,
                        key_signature_positions(clef, fifths));
  }
  if (signature.meter) {
    row.add(meter_glyph(typefaces, signature.meter->count, signature.meter->unit, space), kPartGap,
            0);
  }
  return row.glyph();
}

}  // namespace cahier
