#include "workbook/sheets/runs/rejoin_points.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "paper/text_fitting.h"
#include "report/times_text.h"
#include "text/phrasing.h"
#include "workbook/parts/table.h"
#include "workbook/sheets/runs/place_words.h"

namespace cahier {
namespace {

constexpr double kPadding = 5;
constexpr double kPlaceLine = 4 * kGrid;   // the place's name
constexpr double kBeginsLine = 5 * kGrid;  // below it the bars, and a line to write on
constexpr double kMostRow = 11 * kGrid;    // where nothing is in force
constexpr double kTitleLine = 3 * kGrid;
constexpr double kForwardLine = 5 * kGrid;
constexpr double kLabels = 4 * kGrid;  // the heads of the columns
constexpr double kBetweenColumns = 6;
constexpr double kBeforeLine = 3;  // where it is written how it begins
constexpr double kMostBars = 0.5;  // of a row's width
constexpr double kLineFoot = 1.5;  // below that line

bool is_sideways(double width, double height) { return width > height; }
int column_count(double width, double height) { return is_sideways(width, height) ? 2 : 1; }

double head_height(bool sideways) { return kForwardLine + kTitleLine * (sideways ? 1 : 2) + kGrid; }

double rows_height(double width, double height) {
  return height - 2 * kPadding - head_height(is_sideways(width, height)) - kLabels;
}

double column_width(double width, double height) {
  const int columns = column_count(width, height);
  return (width - 2 * kPadding - kBetweenColumns * (columns - 1)) / columns;
}

// What is in force at a place takes as many lines as it needs, and every row leaves room for that.
double marks_height(const Typefaces& typefaces, const PlannedPiece& piece, double width) {
  double height = 0;
  for (const int bar : piece.rejoin)
    height = std::max(
        height, TextBlock(typefaces, piece.piece.in_force_at(bar), style::kNote, width).height());
  return height;
}

double least_row(double marks) { return kPlaceLine + kBeginsLine + on_grid(marks); }

// The way through the piece, from one place to rejoin to the next.
class RejoinRows {
 public:
  explicit RejoinRows(const PlannedPiece& piece) : piece_(piece) {
    BarRange last{0, -1};
    for (const BarRange& bars : piece.piece.playing_order())
      for (int bar = bars.first; bar <= bars.last;) {
        const auto place = std::ranges::upper_bound(piece.rejoin, bar);
        const int end = place == piece.rejoin.end() ? bars.last : std::min(bars.last, *place - 1);
        if (last.last >= last.first && std::ranges::binary_search(piece.rejoin, bar)) arrive(bar);
        last = {bar, end};
        add(last);
        bar = end + 1;
      }
    arrive(0);
  }

  std::vector<Rejoin> rows() {
    // In a pickup there is nothing to jump over.
    std::erase_if(rows_, [](const Rejoin& row) { return row.from == std::vector{BarRange{0, 0}}; });
    // How often each begins; a row that stands for all of its times says nothing of them.
    std::map<int, int> times;
    for (const Rejoin& row : rows_)
      times[row.from.front().first] += static_cast<int>(row.times.size());
    for (Rejoin& row : rows_) row.of = times[row.from.front().first];
    std::ranges::stable_sort(rows_, {}, [](const Rejoin& row) { return row.from.front().first; });
    return std::move(rows_);
  }

 private:
  void add(BarRange bars) {
    if (!leg_.empty() && leg_.back().last + 1 == bars.first)
      leg_.back().last = bars.last;
    else
      leg_.push_back(bars);
  }

  void arrive(int to) {
    const int time = ++times_[leg_.front().first];
    const auto same = std::ranges::find_if(
        rows_, [&](const Rejoin& row) { return row.from == leg_ && row.to == to; });
    if (same != rows_.end()) {
      same->times.push_back(time);
    } else {
      const bool section = std::ranges::any_of(piece_.sections, [&](const PlannedSection& one) {
        return to > 0 && std::max(1, one.bars.first) == to;
      });
      rows_.push_back({leg_, to, section, {time}, 1});
    }
    leg_.clear();
  }

  const PlannedPiece& piece_;
  std::vector<BarRange> leg_;
  std::map<int, int> times_;  // by the first bar of a leg: how often so far
  std::vector<Rejoin> rows_;
};

// "1–16 → 17", "45–48 →".
// Without those that lie in others: of a repeat that leaves out the upbeat.
std::vector<BarRange> without_parts(std::vector<BarRange> bars) {
  std::erase_if(bars, [all = bars](const BarRange& one) {
    return std::ranges::any_of(
        all, [&](const BarRange& other) { return other != one && other.contains(one); });
  });
  return bars;
}

std::string bars_of(const Words& words, const Rejoin& rejoin) {
  std::string text;
  for (const BarRange& bars : without_parts(rejoin.from))
    text.append(text.empty() ? "" : ", ").append(bar_range(bars.first, bars.last));
  if (rejoin.to == 0) return words.say("places.after_slip_to_end", {{"bars", text}});
  return words.say("places.after_slip", {{"bars", text}, {"bar", rejoin.to}});
}

class CardDrawing {
 public:
  CardDrawing(Book& book, const Box& box, const RejoinCard& card)
      : book_(book),
        words_(book.words()),
        box_(box),
        card_(card),
        sideways_(is_sideways(box.width, box.height)) {}

  void draw() {
    book_.canvas().rectangle(box_, {style::kCutLine, {}});
    const Box inner = box_.inset(kPadding);
    const double head = head_height(sideways_);
    draw_head(inner.top(head));
    const Box rest = inner.without_top(head);
    const auto columns = rest.columns(column_count(box_.width, box_.height), kBetweenColumns);
    marks_ = marks_height(book_.typefaces(), *card_.piece, columns.front().width);
    for (const Rejoin& row : card_.rows)
      bars_ = std::max(bars_, book_.typefaces().width(bars_of(words_, row), style::kSmall.face,
                                                      style::kSmall.size_pt));
    bars_ = std::min(bars_ + 0.5, columns.front().width * kMostBars);
    const std::size_t in_column = (card_.rows.size() + columns.size() - 1) / columns.size();
    const double room = (rest.height - kLabels) / static_cast<double>(in_column);
    const double least = least_row(marks_);
    const double height =
        std::clamp(std::floor(room / kGrid + 1e-6) * kGrid, least, std::max(least, kMostRow));
    for (std::size_t column = 0; column < columns.size(); ++column) {
      const std::size_t first = column * in_column;
      if (first >= card_.rows.size()) break;
      draw_labels(columns[column].top(kLabels));
      Box row = columns[column].without_top(kLabels).top(height);
      for (std::size_t at = first; at < std::min(first + in_column, card_.rows.size()); ++at) {
        draw_row(row, card_.rows[at]);
        row = row.moved(0, height);
      }
    }
  }

 private:
  static TextStyle style_of(const Rejoin& rejoin) {
    return rejoin.begins_section ? style::kStandBars : style::kStandText;
  }

  std::string name_of(const Rejoin& rejoin) const {
    const std::string place = rejoin.to == 0 ? words_.say("rejoin_card.to_the_end")
                                             : place_text(words_, *card_.piece, rejoin.to);
    const std::string time = times_text(words_, rejoin.times, rejoin.of);
    if (time.empty()) return place;
    return words_.say("rejoin_card.at_time", {{"time", time}, {"section", place}});
  }

  // On the day only "always forward" has to be read; whose card it is stands small.
  void draw_head(const Box& head) {
    Canvas& canvas = book_.canvas();
    const std::string which =
        card_.of > 1 ? words_.say("rejoin_card.card", {{"number", card_.number}, {"of", card_.of}})
                     : "";
    const std::string date = full_date(words_, book_.plan().by);
    const Box top = head.top(kForwardLine);
    const Box next = head.without_top(kForwardLine);
    const double half = head.width / 2 - 1;
    const bool beside = sideways_ || !which.empty();
    draw_line(canvas, beside ? top.left(half + 6) : top, words_.say("rejoin_card.forward"),
              style::kStandBars, Align::left, style::kLeastStand);
    draw_line(canvas, top.right(half - 6), sideways_ ? date : which, style::kBody, Align::right,
              style::kLeast);
    const bool shares = sideways_ && !which.empty();
    draw_line(canvas, (shares ? next.without_right(half / 2) : next).top(kTitleLine),
              card_.piece->piece.title, style::kStrong, Align::left, style::kLeast);
    if (shares)
      draw_line(canvas, next.right(half / 2 - 2).top(kTitleLine), which, style::kBody, Align::right,
                style::kLeast);
    if (!sideways_)
      draw_line(canvas, next.without_top(kTitleLine).top(kTitleLine), date, style::kBody,
                Align::left, style::kLeast);
  }

  void draw_labels(const Box& labels) {
    Canvas& canvas = book_.canvas();
    const Box line = labels.without_bottom(kGrid);
    const double length = draw_line(canvas, line.left(bars_), words_.say("rejoin_card.go_to"),
                                    style::kSmall, Align::left, style::kLeast);
    draw_line(canvas, line.without_left(length + kBeforeLine), words_.say("places.begins"),
              style::kSmall, Align::right, style::kLeast);
    canvas.line({labels.x, labels.bottom()}, {labels.right(), labels.bottom()}, style::kRule);
  }

  void draw_row(const Box& row, const Rejoin& rejoin) {
    Canvas& canvas = book_.canvas();
    const Box main = row.without_bottom(on_grid(marks_));
    draw_name(main.without_bottom(kPlaceLine), rejoin);
    const Box begins = main.bottom(kBeginsLine);
    const double y = begins.bottom() - kLineFoot;
    draw_line(canvas, begins.left(bars_).bottom(kPlaceLine), bars_of(words_, rejoin), style::kSmall,
              Align::left, style::kLeast);
    if (rejoin.to > 0) {
      canvas.line({main.x + bars_ + kBeforeLine, y}, {main.right(), y}, style::kWritingLine);
      draw_beginning(begins.without_left(bars_ + kBeforeLine).without_bottom(kLineFoot), rejoin.to);
      TextBlock(book_.typefaces(), card_.piece->piece.in_force_at(rejoin.to), style::kNote,
                row.width)
          .draw(canvas, row.without_top(main.height));
    }
    if (marks_ > 0)
      canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()}, style::kHairline);
  }

  // On the line, where a score tells it in few enough names.
  void draw_beginning(const Box& box, int bar) {
    const std::string text = card_.piece->piece.beginning_at(bar);
    if (!fit_line(book_.typefaces(), text, style::kSmall, box.width, style::kLeast).cut)
      draw_line(book_.canvas(), box.bottom(kPlaceLine), text, style::kSmall, Align::left,
                style::kLeast);
  }

  // In the type of the music desk where it fits, else smaller, at last on two lines.
  void draw_name(const Box& box, const Rejoin& rejoin) {
    const std::string name = name_of(rejoin);
    for (const TextStyle& type : {style_of(rejoin), style::kStandText, style::kStrong})
      if (!fit_line(book_.typefaces(), name, type, box.width, type.size_pt).cut) {
        draw_line(book_.canvas(), box, name, type, Align::left, type.size_pt);
        return;
      }
    draw_cell(book_.canvas(), box, name, style::kNote);
  }

  Book& book_;
  const Words& words_;
  Box box_;
  const RejoinCard& card_;
  bool sideways_;
  double bars_ = 0;   // millimetres before the line to write on
  double marks_ = 0;  // and below it, for what is in force
};

}  // namespace

std::vector<Rejoin> rejoins(const PlannedPiece& piece) { return RejoinRows(piece).rows(); }

std::size_t rejoin_rows(const Typefaces& typefaces, const PlannedPiece& piece, double width,
                        double height) {
  const double marks = marks_height(typefaces, piece, column_width(width, height));
  const double rows = std::floor(rows_height(width, height) / least_row(marks) + 1e-6);
  return static_cast<std::size_t>(std::max(1.0, rows)) *
         static_cast<std::size_t>(column_count(width, height));
}

void draw_rejoin_card_in(Book& book, const Box& box, const RejoinCard& card) {
  CardDrawing(book, box, card).draw();
}

}  // namespace cahier
