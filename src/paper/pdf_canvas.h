// A canvas that becomes a PDF file.
#pragma once

#include <memory>
#include <stdexcept>
#include <string>

#include "paper/canvas.h"

namespace cahier {

// The PDF could not be composed (out of memory, a limit of the file format). what() says why.
class PdfError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// Same drawing, same bytes: no clock is read. Only the faces that texts use are embedded, each
// as a subset. Every member throws PdfError when the library reports one.
class PdfCanvas : public Canvas {
 public:
  explicit PdfCanvas(const Typefaces& typefaces);
  ~PdfCanvas() override;

  void begin_page(PageSize size) override;
  int page_count() const override;
  PageSize page_size() const override;
  void text(Point baseline, std::string_view text, const TextStyle& style,
            const Box& within) override;
  void line(Point from, Point to, const Stroke& stroke) override;
  void rectangle(const Box& box, const Paint& paint) override;
  void circle(Point centre, double diameter, const Paint& paint, CircleUse use) override;
  void fill(const Outline& outline, const Fill& fill) override;
  void outline_entry(std::string_view title, int level, int page) override;
  void link(const Box& area, int page) override;
  void metadata(const DocumentInfo& info) override;

  // The whole file. Ends the drawing: call it once. Throws std::logic_error when there is no
  // page or when a link leads to a page that was never begun.
  std::string bytes();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace cahier
