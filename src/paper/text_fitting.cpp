#include "paper/text_fitting.h"

#include <algorithm>
#include <cmath>

#include "text/line_breaks.h"
#include "text/utf8.h"

namespace cahier {

namespace {

constexpr double kSizeStep = 0.25;  // points
constexpr double kLeastLeading = 1.25;
constexpr double kRounding = 1e-6;  // sums of millimetres that should be equal

std::string encoded(const std::vector<char32_t>& characters, std::size_t first, std::size_t last) {
  std::string result;
  for (std::size_t i = first; i < last; ++i) result += encode_utf8(characters[i]);
  return result;
}

std::string without_blanks_at_end(std::string text) {
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

// Nor signs that promise more: what is cut ends like a text.
std::string without_signs_at_end(std::string text) {
  for (bool more = true; more;) {
    more = false;
    for (const std::string_view sign : {" ", ",", ";", ":", "-", "–", "—", "·", "("})
      if (text.ends_with(sign)) {
        text.resize(text.size() - sign.size());
        more = true;
      }
  }
  return text;
}

// How far a text's ink reaches beyond its advance: j to the left, an italic f to the right.
struct Overhang {
  double left = 0;
  double right = 0;
  double both() const { return left + right; }
};

Overhang overhang(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
                  double width) {
  const Box ink = typefaces.ink(text, style.face, style.size_pt);
  return {std::max(0.0, -ink.x), std::max(0.0, ink.right() - width)};
}

// Where on a length a text begins, so that its ink, too, lies on it.
double start_of(Align align, double length, double width, Overhang beyond) {
  const double free = length - width;
  const double start = align == Align::left ? 0 : align == Align::centre ? free / 2 : free;
  return std::max(beyond.left, std::min(start, free - beyond.right));
}

class LineBreaker {
 public:
  LineBreaker(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
              double width)
      : width_(width), characters_(decode_utf8(text)) {
    for (char32_t c : characters_) {
      overhangs_.emplace_back();
      advances_.push_back(0);
      if (c == U'\n') continue;
      const std::string text_of_c = encode_utf8(c);
      advances_.back() = typefaces.width(text_of_c, style.face, style.size_pt);
      overhangs_.back() = overhang(typefaces, text_of_c, style, advances_.back());
    }
  }

  std::vector<std::string> lines() const {
    std::vector<std::string> result;
    std::size_t start = 0;
    while (start < characters_.size()) {
      const std::size_t end = line_end(start);
      result.push_back(without_blanks_at_end(encoded(characters_, start, end)));
      start = end;
      if (start < characters_.size() && characters_[start] == U'\n') {
        ++start;
      } else {
        while (start < characters_.size() && characters_[start] == U' ') ++start;
      }
    }
    return result;
  }

 private:
  // One past the last character of the line that begins at `start`.
  std::size_t line_end(std::size_t start) const {
    double used = overhangs_[start].left;
    std::size_t at = start;
    for (; at < characters_.size() && characters_[at] != U'\n'; ++at) {
      if (characters_[at] != U' ' && used + advances_[at] + overhangs_[at].right > width_ + 1e-9)
        break;
      used += advances_[at];
    }
    if (at == characters_.size() || characters_[at] == U'\n') return at;
    for (std::size_t end = at; end > start; --end) {
      if (may_break_before(characters_, end) && has_ink(start, end)) return end;
    }
    return cut_word(start, at);
  }

  bool has_ink(std::size_t start, std::size_t end) const {
    return std::any_of(characters_.begin() + static_cast<std::ptrdiff_t>(start),
                       characters_.begin() + static_cast<std::ptrdiff_t>(end),
                       [](char32_t c) { return c != U' '; });
  }

  // A word longer than the line: cut where it is full, a little earlier if closing punctuation
  // would begin the next line.
  std::size_t cut_word(std::size_t start, std::size_t full) const {
    std::size_t end = full;
    while (end > start + 1 && begins_badly(characters_, end)) --end;
    return std::max(begins_badly(characters_, end) ? full : end, start + 1);
  }

  double width_;
  std::vector<char32_t> characters_;
  std::vector<double> advances_;
  std::vector<Overhang> overhangs_;
};

// More than this many of the first characters are wider than `width` without anything after them;
// blanks at their end do not count.
std::size_t most_that_fit(const Typefaces& typefaces, const std::vector<char32_t>& characters,
                          const TextStyle& style, double width) {
  constexpr double kSumsDiffer = 0.01;  // millimetres, between a text's width and its letters'
  double used = 0;
  std::size_t kept = 0;
  for (; kept < characters.size(); ++kept) {
    used += typefaces.width(encode_utf8(characters[kept]), style.face, style.size_pt);
    if (characters[kept] != U' ' && used > width + kSumsDiffer) break;
  }
  return kept;
}

}  // namespace

Fitted fit_line(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
                double width, double smallest_pt) {
  const double natural = typefaces.width(text, style.face, style.size_pt);
  const double whole = natural + overhang(typefaces, text, style, natural).both();
  if (whole <= width) return {std::string(text), style, natural, false};
  const double smallest = std::min(smallest_pt, style.size_pt);
  for (double size = style.size_pt - kSizeStep; size > smallest - kSizeStep; size -= kSizeStep) {
    const double tried = std::max(size, smallest);
    const double ratio = tried / style.size_pt;
    if (whole * ratio <= width) {
      return {std::string(text), style.at(tried), natural * ratio, false};
    }
  }
  TextStyle small = style.at(smallest);
  small.cut = true;
  const std::vector<char32_t> characters = decode_utf8(text);
  const auto fits = [&](const std::string& part) {
    const double needed = typefaces.width(part, small.face, small.size_pt);
    return needed + overhang(typefaces, part, small, needed).both() <= width;
  };
  const std::size_t most =
      std::min(characters.size(), most_that_fit(typefaces, characters, small, width));
  // Whole words where one fits, else letters.
  for (const bool words : {true, false})
    for (std::size_t kept = most; kept > 0; --kept) {
      if (kept < characters.size() && is_combining(characters[kept])) continue;
      if (words && kept < characters.size() && characters[kept] != U' ') continue;
      const std::string part = without_signs_at_end(encoded(characters, 0, kept));
      if (!part.empty() && fits(part))
        return {part, small, typefaces.width(part, small.face, small.size_pt), true};
    }
  return {{}, small, 0, true};
}

std::vector<std::string> wrap(const Typefaces& typefaces, std::string_view text,
                              const TextStyle& style, double width) {
  return LineBreaker(typefaces, text, style, width).lines();
}

double on_grid(double millimetres) { return std::ceil(millimetres / kGrid - kRounding) * kGrid; }

double line_pitch(double size_pt) { return on_grid(kLeastLeading * millimetres(size_pt)); }

double draw_line(Canvas& canvas, const Box& box, std::string_view text, const TextStyle& style,
                 Align align, double smallest_pt) {
  const bool upwards = style.turn == Turn::upwards;
  const double length = upwards ? box.height : box.width;
  const Fitted fitted = fit_line(canvas.typefaces(), text, style, length, smallest_pt);
  if (fitted.text.empty()) return 0;
  const double capitals =
      canvas.typefaces().metrics(fitted.style.face, fitted.style.size_pt).cap_height;
  const double along =
      start_of(align, length, fitted.width,
               overhang(canvas.typefaces(), fitted.text, fitted.style, fitted.width));
  const Point baseline = upwards ? Point{box.centre().x + capitals / 2, box.bottom() - along}
                                 : Point{box.x + along, box.centre().y + capitals / 2};
  canvas.text(baseline, fitted.text, fitted.style, box);
  return fitted.width;
}

TextBlock::TextBlock(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
                     double width)
    : lines_(wrap(typefaces, text, style, width)),
      style_(style),
      line_height_(line_pitch(style.size_pt)) {}

double TextBlock::draw(Canvas& canvas, const Box& box, Align align) const {
  // By the capitals, as draw_line does: both share a baseline in a row of one height.
  const double middle = canvas.typefaces().metrics(style_.face, style_.size_pt).cap_height / 2;
  double y = box.y;
  for (const std::string& line : lines_) {
    const double width = canvas.typefaces().width(line, style_.face, style_.size_pt);
    const double along =
        start_of(align, box.width, width, overhang(canvas.typefaces(), line, style_, width));
    if (!line.empty()) {
      canvas.text({box.x + along, y + line_height_ / 2 + middle}, line, style_, box);
    }
    y += line_height_;
  }
  return y;
}

}  // namespace cahier
