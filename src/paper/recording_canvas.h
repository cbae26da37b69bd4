// A canvas that keeps what is drawn, for checks and tests.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "paper/canvas.h"

namespace cahier {

struct DrawnText {
  Point baseline;
  std::string text;
  TextStyle style;
  Box within;
  Box ink;  // on the page, turned as the text is; empty for blanks
  double x_height = 0;
};

struct DrawnLine {
  Point from;
  Point to;
  Stroke stroke;
};

struct DrawnRectangle {
  Box box;
  Paint paint;
};

struct DrawnCircle {
  Point centre;
  double diameter = 0;
  Paint paint;
  CircleUse use = CircleUse::ornament;
};

struct DrawnOutline {
  Outline outline;
  Fill fill;
};

struct DrawnLink {
  Box area;
  int page = 1;
};

using DrawnItem =
    std::variant<DrawnText, DrawnLine, DrawnRectangle, DrawnCircle, DrawnOutline, DrawnLink>;

// What an item covers, line widths included.
Box extent(const DrawnItem& item);

struct DrawnPage {
  PageSize size;
  std::vector<DrawnItem> items;  // in the order they were drawn

  std::vector<DrawnText> texts() const;
  std::string words() const;  // every text, each on a line of its own
};

struct DrawnOutlineEntry {
  std::string title;
  int level = 1;
  int page = 1;
};

class RecordingCanvas : public Canvas {
 public:
  using Canvas::Canvas;

  void begin_page(PageSize size) override;
  int page_count() const override { return static_cast<int>(pages_.size()); }
  PageSize page_size() const override;
  void text(Point baseline, std::string_view text, const TextStyle& style,
            const Box& within) override;
  void line(Point from, Point to, const Stroke& stroke) override;
  void rectangle(const Box& box, const Paint& paint) override;
  void circle(Point centre, double diameter, const Paint& paint, CircleUse use) override;
  void fill(const Outline& outline, const Fill& fill) override;
  void outline_entry(std::string_view title, int level, int page) override;
  void link(const Box& area, int page) override;
  void metadata(const DocumentInfo& info) override { info_ = info; }

  // A page, from 1 on; an empty one stays behind.
  DrawnPage take_page(int number);

  const std::vector<DrawnPage>& pages() const { return pages_; }
  const std::vector<DrawnOutlineEntry>& outline_entries() const { return outline_entries_; }
  const DocumentInfo& info() const { return info_; }

 private:
  void keep(DrawnItem item);

  std::vector<DrawnPage> pages_;
  std::vector<DrawnOutlineEntry> outline_entries_;
  DocumentInfo info_;
};

}  // namespace cahier
