// The day panels of weeks, set on pages one below the other: a panel that a page can hold is not
// divided.
#pragma once

#include <vector>

#include "workbook/parts/week_words.h"
#include "workbook/sheets/days/day_panel.h"

namespace cahier {

class PanelPages {
 public:
  // REQUIRES: book and weeks outlive the pages.
  PanelPages(Book& book, const std::vector<PlanWeek>& weeks);

  // Opens and draws the pages.
  void draw();

 private:
  // Days that share a panel: one, or several days off in a row.
  struct Panel {
    std::vector<const Day*> days;
    std::vector<Strip> strips;
    double height = 0;

    bool slim() const { return DayPanels::is_slim(*days.front()); }
  };
  struct Week {
    std::vector<Panel> panels;
    std::vector<std::string> goal;
    double head = 0;
  };
  // What stands on a page, from its top: a week's head, (a part of) a panel, the teacher's lines,
  // and last the day of the performance.
  struct Item {
    enum class Kind { head, panel, sign_off, the_day };
    Kind kind = Kind::panel;
    std::size_t week = 0;
    std::size_t panel = 0;
    std::size_t first_strip = 0;
    std::size_t strips = 0;
    double height = 0;
  };
  // A page that nearly holds one more panel is set tight and holds it.
  struct Page {
    std::vector<Item> items;
    double height = 0;
    int panels = 0;  // with work
    bool tight = false;
  };

  void measure();
  double full_height(const Day& day, double strips) const;
  bool is_full(const Item& item) const;
  bool takes(const Page& page, double height, int panels) const;
  void set_week(std::size_t week);
  void set(const Item& item);
  void set_the_day();
  void set_divided(std::size_t week, std::size_t panel);
  void draw_page(const Page& page);
  void draw_head(const Box& box, std::size_t week);
  void draw_slim(const Box& box, const Panel& panel);
  void draw_full(const Box& box, const Panel& panel, const Item& item, double padding);
  void draw_sign_off(const Box& box);
  void draw_the_day(const Box& box);
  void draw_notes(const Box& box);
  void rule(double y, const Box& box);
  std::string slim_date(const Panel& panel) const;

  Book& book_;
  const std::vector<PlanWeek>& weeks_;
  DayPanels panels_;
  Box content_;
  std::vector<Week> measured_;
  std::vector<Page> pages_;
};

}  // namespace cahier
