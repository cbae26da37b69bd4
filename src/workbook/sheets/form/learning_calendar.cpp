#include "workbook/sheets/form/learning_calendar.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/standing.h"
#include "text/phrasing.h"
#include "workbook/parts/short_dates.h"
#include "workbook/sheets/form/learned_parts.h"
#include "workbook/sheets/form/learning_rows.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLeastRow = 3 * kGrid;
constexpr double kMostRow = 4 * kGrid;
constexpr double kBesideLabel = 2;
constexpr double kBeforeDays = 4.5;  // for what was learned before the first of them
constexpr double kMostRuns = 24;     // millimetres for the name of the row of run-throughs
constexpr double kLeastColumn = 1.2;
constexpr double kMostColumn = 5;      // of a day
constexpr double kMostLongColumn = 9;  // of several days
constexpr Fill kDayOff{0.88, true};
constexpr Stroke kWeek{0.15, 0.55, 0, 0, true};
// From a chunk's learning to the date: the dots hang on it, and the gaps between them show.
constexpr Stroke kThread{0.15, 0.45, 0, 0, true};
constexpr Stroke kTheDate{0.7, style::kDark, 0, 0, false};
constexpr double kHeading = 4 * kGrid;
constexpr double kLead = 3 * kGrid;
constexpr double kKeyRow = 4 * kGrid;
constexpr double kSign = 4;  // from a mark of the key to its text
constexpr double kDates = 5 * kGrid;

// As large as a column `width` millimetres wide lets it be.
void draw_dot(Canvas& canvas, Point centre, Dot dot, double width) {
  switch (dot) {
    case Dot::none:
      return;
    case Dot::joined:
      canvas.circle(centre, std::min(1.1, width * 0.5),
                    {Stroke{0.15, style::kGrey, 0, 0, false}, Fill{1, true}}, CircleUse::ornament);
      return;
    case Dot::recalled:
      canvas.circle(centre, std::min(2.1, width * 0.92), {{}, Fill{style::kDark, false}},
                    CircleUse::ornament);
      return;
    case Dot::learned: {
      const double side = std::min(2.7, width * 1.25);
      canvas.rectangle({centre.x - side / 2, centre.y - 1.5, side, 3},
                       {{}, Fill{style::kDark, false}});
      return;
    }
  }
}

// A chunk learned before the first day: the mark of learning, not filled.
void draw_before(Canvas& canvas, Point centre) {
  canvas.rectangle({centre.x - 1.2, centre.y - 1.35, 2.4, 2.7}, {style::kRule, {}});
}

class Calendar {
 public:
  Calendar(Book& book, int piece, Flow& flow)
      : book_(book), piece_(book.plan().pieces[piece]), flow_(flow) {
    const std::vector<bool> learned = chunks_learned(book.plan(), piece);
    any_before_ = std::find(learned.begin(), learned.end(), true) != learned.end();
    measure_labels();
    width_ = book.upright().width - 0.6;
    // The line at the date is thicker than others.
    const double room = width_ - label_ - 0.1;
    const double number_of_days = static_cast<double>(book.plan().days.size());
    for (span_ = 1; number_of_days / span_ * kLeastColumn > room;)
      span_ = span_ == 1 ? 7 : span_ * 2;
    columns_ = (static_cast<int>(book.plan().days.size()) + span_ - 1) / span_;
    column_width_ =
        std::min(span_ == 1 ? kMostColumn : kMostLongColumn, room / std::max(columns_, 1));
    rows_ = learning_rows(book, piece, span_);
    lay_out_key();
    head_ += kDates;
  }

  void draw() {
    const auto count = static_cast<int>(rows_.size());
    if (!flow_.fits(head_ + kLeastRow * count)) flow_.next_page();
    flow_.take(0);
    const double room = flow_.left() - head_;
    const int most = std::max(1, static_cast<int>(room / kLeastRow + 1e-6));
    const int pages = (count + most - 1) / most;
    const int each = (count + pages - 1) / pages;
    row_height_ = each * kMostRow <= room ? kMostRow : kLeastRow;
    for (int first = 0; first < count; first += each) {
      if (first > 0) flow_.next_page();
      const int rows = std::min(each, count - first);
      draw_head(flow_.take(head_), first > 0);
      draw_rows(flow_.take(row_height_ * rows), first, first + rows);
    }
  }

 private:
  enum class Mark { dot, before, day_off };
  struct Entry {
    Mark mark;
    Dot dot;  // of Mark::dot
    std::string text;
    Box place;  // from the top left corner of the head
  };

  double text_width(const std::string& text) const {
    return book_.typefaces().width(text, style::kNote.face, style::kNote.size_pt) + 0.2;
  }

  // Names at the left, bars at the right of their column.
  void measure_labels() {
    double bars = 0;
    for (const Chunk& chunk : piece_.chunks) {
      id_width_ = std::max(id_width_, text_width(chunk.id));
      bars = std::max(bars, text_width(bar_range(chunk.bars.first, chunk.bars.last)));
    }
    id_width_ += kBesideLabel;
    const double runs = text_width(book_.words().say("form_map.runs"));
    label_ = std::max(id_width_ + bars, std::min(runs, kMostRuns)) + kBesideLabel;
    if (any_before_) label_ += kBeforeDays;
  }

  std::string_view heading(bool continued) const {
    if (book_.plan().upkeep)
      return continued ? "form_map.days_kept_continued" : "form_map.days_kept_heading";
    return continued ? "form_map.days_continued" : "form_map.days_heading";
  }

  void draw_head(Box head, bool continued) {
    draw_key(head);
    const Words& words = book_.words();
    draw_line(book_.canvas(), head.top(kHeading), words.say(heading(continued)), style::kHeading,
              Align::left, style::kLeast);
    head = head.without_top(kHeading);
    draw_line(book_.canvas(), head.top(kLead),
              span_ == 1 ? words.say("form_map.days_lead")
                         : words.say("form_map.days_lead_spans", {{"number", span_}}),
              style::kBody, Align::left, style::kLeast);
    draw_dates(head.bottom(kDates));
  }

  bool has_dot(Dot dot) const {
    return std::any_of(rows_.begin(), rows_.end(), [dot](const LearningRow& row) {
      return std::find(row.dots.begin(), row.dots.end(), dot) != row.dots.end();
    });
  }

  // The marks and their meanings one after the other, on as many lines as they need.
  void lay_out_key() {
    constexpr double kBetween = 5;
    const Words& words = book_.words();
    if (any_before_)
      key_.push_back({Mark::before,
                      Dot::none,
                      words.say(is_later_edition(book_.plan()) ? "form_map.mark_before"
                                                               : "form_map.mark_taken"),
                      {}});
    for (const auto& [dot, text] : {std::pair{Dot::learned, "form_map.mark_learned"},
                                    std::pair{Dot::recalled, "form_map.mark_recalled"},
                                    std::pair{Dot::joined, "form_map.mark_joined"}}) {
      if (book_.plan().upkeep && !has_dot(dot)) continue;
      key_.push_back({Mark::dot, dot, words.say(text), {}});
    }
    const std::vector<Day>& all = book_.plan().days;
    if (span_ == 1 &&
        std::any_of(all.begin(), all.end(), [](const Day& day) { return day.allowance <= 0; }))
      key_.push_back({Mark::day_off, Dot::none, words.say("form_map.mark_off"), {}});
    double x = 0;
    for (Entry& entry : key_) {
      const double width = std::min(width_, kSign + text_width(entry.text));
      if (x > 0 && x + width > width_) {
        x = 0;
        head_ += kKeyRow;
      }
      entry.place = {x, head_, width, kKeyRow};
      x += width + kBetween;
    }
    head_ += kKeyRow;
  }

  void draw_key(const Box& head) {
    for (const Entry& entry : key_) {
      const Box box = entry.place.moved(head.x, head.y);
      const Point centre{box.x + kSign / 2 - 0.8, box.centre().y};
      if (entry.mark == Mark::dot)
        draw_dot(book_.canvas(), centre, entry.dot, kMostColumn);
      else if (entry.mark == Mark::before)
        draw_before(book_.canvas(), centre);
      else
        book_.canvas().rectangle({centre.x - 1.2, box.y + 0.75, 2.4, box.height - 1.5},
                                 {{}, kDayOff});
      draw_line(book_.canvas(), box.without_left(kSign), entry.text, style::kNote, Align::left,
                style::kLeast);
    }
  }

  Box grid(const Box& box) const {
    return {box.x + label_, box.y, column_width_ * columns_, box.height};
  }
  bool begins_week(int column) const {
    if (column == 0) return true;
    return span_ == 1 ? weekday_index(book_.plan().days[column].date) == 0 : column % 4 == 0;
  }
  std::string short_text(Date date) const { return short_date(book_.words(), book_.plan(), date); }

  // Over Mondays their dates, over the right edge the date of the performance.
  void draw_dates(const Box& box) {
    Canvas& canvas = book_.canvas();
    const Box all = grid(box);
    const std::string the_date = short_text(book_.plan().by);
    const double date_width =
        book_.typefaces().width(the_date, style::kNoteStrong.face, style::kNoteStrong.size_pt) +
        0.6;
    const double date_x = std::min(all.right() - date_width / 2, box.right() - date_width);
    draw_line(canvas, {date_x, box.bottom() - 4 * kGrid, date_width, 3 * kGrid}, the_date,
              style::kNoteStrong, Align::left, style::kLeast);
    canvas.line({all.right(), box.bottom() - kGrid}, {all.right(), box.bottom()}, kTheDate);
    double free_from = all.x;
    for (int column = 0; column < columns_; ++column) {
      if (!begins_week(column)) continue;
      const double x = all.x + column * column_width_;
      const std::string date = short_text(book_.plan().days[column * span_].date);
      const double width =
          book_.typefaces().width(date, style::kNote.face, style::kNote.size_pt) + 0.6;
      canvas.line({x, box.bottom() - 0.75}, {x, box.bottom()}, kWeek);
      if (x < free_from || x + width + 1.5 > date_x) continue;
      draw_line(canvas, {x, box.bottom() - 4 * kGrid, width, 3 * kGrid}, date, style::kNote,
                Align::left, style::kLeast);
      free_from = x + width + 1.5;
    }
  }

  void draw_rows(const Box& box, int first, int last) {
    Canvas& canvas = book_.canvas();
    const Box all = grid(box);
    // Days off are pale, weeks begin with a line.
    for (int column = 0; column < columns_; ++column) {
      const double x = all.x + column * column_width_;
      if (span_ == 1 && book_.plan().days[column].allowance <= 0)
        canvas.rectangle({x, all.y, column_width_, all.height}, {{}, kDayOff});
      if (begins_week(column)) canvas.line({x, all.y}, {x, all.bottom()}, kWeek);
    }
    for (int at = first; at < last; ++at)
      draw_row(rows_[at], box.without_top(row_height_ * (at - first)).top(row_height_),
               at > first && rows_[at].begins_section);
    for (const double y : {all.y, all.bottom()})
      canvas.line({box.x, y}, {all.right(), y}, style::kRule);
    canvas.line({all.right(), all.y}, {all.right(), all.bottom()}, kTheDate);
  }

  void draw_row(const LearningRow& row, const Box& box, bool ruled) {
    Canvas& canvas = book_.canvas();
    const Box days_of_row = grid(box);
    const Box label = box.left(label_ - kBesideLabel - (any_before_ ? kBeforeDays : 0));
    if (row.bars.empty()) {
      draw_line(canvas, label, row.label, style::kNote, Align::left, style::kLeast);
    } else {
      draw_line(canvas, label.left(id_width_), row.label, style::kNote, Align::left, style::kLeast);
      draw_line(canvas, label.without_left(id_width_), row.bars, style::kSmall, Align::right,
                style::kLeast);
    }
    if (ruled) canvas.line({box.x, box.y}, {days_of_row.right(), box.y}, style::kHairline);
    const double y = box.centre().y;
    const auto x_of = [&](std::ptrdiff_t column) {
      return days_of_row.x + (static_cast<double>(column) + 0.5) * column_width_;
    };
    const auto begins =
        std::find_if(row.dots.begin(), row.dots.end(), [](Dot dot) { return dot != Dot::none; });
    if (row.learned_before) {
      const Point before{days_of_row.x - kBeforeDays / 2, y};
      draw_before(canvas, before);
      canvas.line({before.x + 1.3, y}, {days_of_row.right(), y}, kThread);
    } else if (begins != row.dots.end())
      canvas.line({x_of(begins - row.dots.begin()), y}, {days_of_row.right(), y}, kThread);
    for (int column = 0; column < columns_; ++column)
      draw_dot(canvas, {x_of(column), y}, row.dots[column], column_width_);
  }

  Book& book_;
  const PlannedPiece& piece_;
  Flow& flow_;
  bool any_before_ = false;  // whether a chunk was learned before the first day
  int span_ = 1;             // days in a column
  int columns_ = 0;
  double width_ = 0;
  double id_width_ = 0;
  double label_ = 0;  // millimetres of the column of chunks
  double column_width_ = 0;
  double row_height_ = kLeastRow;
  std::vector<LearningRow> rows_;
  std::vector<Entry> key_;
  double head_ = kHeading + kLead;  // heading, sentence, key and dates
};

}  // namespace

void draw_learning_calendar(Book& book, int piece, Flow& flow) {
  Calendar(book, piece, flow).draw();
}

}  // namespace cahier
