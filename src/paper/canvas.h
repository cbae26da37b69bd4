// The surface that sheets are drawn on. Millimetres from the top left corner of the page, y
// downwards; type sizes in points; greys from 0 (black) to 1 (white).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "paper/geometry.h"
#include "paper/outline.h"
#include "paper/page_size.h"
#include "paper/typeface.h"

namespace cahier {

// From how far a text is read: on the desk at 40 cm, on the music stand at 70 cm, pinned to the
// wall at 100 cm. Fine print (page numbers, credits) is read by bringing it near.
enum class TextRole { desk, stand, wall, fine_print };

// Upwards: turned by 90 degrees, so that the text reads from bottom to top. Over: by 180, upside
// down; only on a page that is itself turned.
enum class Turn { none, upwards, over };

struct TextStyle {
  Face face = Face::sans;
  double size_pt = 10;
  double grey = 0;
  TextRole role = TextRole::desk;
  Turn turn = Turn::none;
  bool cut = false;  // of a text that was too long for its place: the rest is left out

  TextStyle at(double size) const {
    TextStyle style = *this;
    style.size_pt = size;
    return style;
  }
};

// A backdrop (staff lines, form bars, a shaded cell) is meant to lie under text.
struct Stroke {
  double width = 0.2;  // millimetres
  double grey = 0;
  double dash = 0;  // lengths in millimetres; 0 for a line without breaks
  double gap = 0;
  bool backdrop = false;
};

struct Fill {
  double grey = 0;
  bool backdrop = false;
};

// How a closed shape is painted: filled first, then stroked along its middle.
struct Paint {
  std::optional<Stroke> stroke;
  std::optional<Fill> fill;
};

// A tick circle is filled in by hand, so its size matters.
enum class CircleUse { tick, ornament };

struct DocumentInfo {
  std::string title;
  std::string author;
  std::string subject;
  std::string language = "en";  // BCP 47
  std::string packet{};         // whose sheets it has
};

class Canvas {
 public:
  explicit Canvas(const Typefaces& typefaces) : typefaces_(typefaces) {}
  virtual ~Canvas() = default;
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  const Typefaces& typefaces() const { return typefaces_; }

  // Everything after it goes onto a new page. REQUIRED before anything else is drawn; drawing
  // without a page throws std::logic_error.
  virtual void begin_page(PageSize size) = 0;
  virtual int page_count() const = 0;  // the current page's number, counted from 1
  virtual PageSize page_size() const = 0;

  // One line of text whose baseline starts at `baseline`; `within` is the box it must not leave.
  // Throws std::logic_error when a character cannot be printed (see Typefaces::missing).
  virtual void text(Point baseline, std::string_view text, const TextStyle& style,
                    const Box& within) = 0;
  virtual void line(Point from, Point to, const Stroke& stroke) = 0;
  virtual void rectangle(const Box& box, const Paint& paint) = 0;
  virtual void circle(Point centre, double diameter, const Paint& paint, CircleUse use) = 0;
  virtual void fill(const Outline& outline, const Fill& fill) = 0;

  // An entry in the document's outline that leads to a page, counted from 1, which may still have
  // to be drawn; level 1 is outermost, and a level is at most one deeper than the entry before.
  virtual void outline_entry(std::string_view title, int level, int page) = 0;
  // A touch on `area` leads to a page, counted from 1, which may still have to be drawn.
  virtual void link(const Box& area, int page) = 0;
  virtual void metadata(const DocumentInfo& info) = 0;

 private:
  const Typefaces& typefaces_;
};

}  // namespace cahier
