#include "workbook/sheets/runs/rejoin_points.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/arrow.h"
#include "workbook/parts/table.h"
#include "workbook/parts/times_text.h"

namespace cahier {
namespace {

constexpr double kPadding = 5;
constexpr double kMostRow = 7 * kGrid;
constexpr double kLeastRow = 5 * kGrid;  // the largest figures still stand clear of the rules
constexpr double kTitleLine = 3 * kGrid;
constexpr double kForwardLine = 5 * kGrid;
constexpr double kLabels = 4 * kGrid;  // the heads of the columns
constexpr double kBetweenColumns = 6;
constexpr double kArrow = 6;
constexpr double kArrowWidth = 0.4;
constexpr double kAround = 2;  // the arrow

bool is_sideways(double width, double height) { return width > height; }
int column_count(double width, double height) { return is_sideways(width, height) ? 2 : 1; }

double head_height(bool sideways) { return kForwardLine + kTitleLine * (sideways ? 1 : 2) + kGrid; }

double rows_height(double width, double height) {
  return height - 2 * kPadding - head_height(is_sideways(width, height)) - kLabels;
}

// In the type of the music desk where it fits, else smaller, on two lines.
void draw_words(Canvas& canvas, const Box& box, const std::string& text) {
  const TextStyle stand = style::kStandText;
  if (!fit_line(canvas.typefaces(), text, stand, box.width, stand.size_pt).cut)
    draw_line(canvas, box, text, stand, Align::left, stand.size_pt);
  else
    draw_cell(canvas, box, text, style::kNote);
}

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
      rows_.push_back({leg_, to, false, {}, {time}, 1});
      for (const PlannedSection& section : piece_.sections) {
        if (to == 0 || std::max(1, section.bars.first) != to) continue;
        rows_.back().begins_section = true;
        if (section.name != bar_range(section.bars.first, section.bars.last))
          rows_.back().section = section.name;
      }
    }
    leg_.clear();
  }

  const PlannedPiece& piece_;
  std::vector<BarRange> leg_;
  std::map<int, int> times_;  // by the first bar of a leg: how often so far
  std::vector<Rejoin> rows_;
};

std::string bars_of(const Rejoin& rejoin) {
  std::string text;
  for (const BarRange& bars : rejoin.from)
    text.append(text.empty() ? "" : ", ").append(bar_range(bars.first, bars.last));
  return text;
}

class CardDrawing {
 public:
  CardDrawing(Book& book, const Box& box, const RejoinCard& card)
      : book_(book),
        words_(book.words()),
        box_(box),
        card_(card),
        sideways_(is_sideways(box.width, box.height)) {
    const auto width = [&](const std::string& text, const TextStyle& text_style) {
      return book.typefaces().width(text, text_style.face, text_style.size_pt) + 0.5;
    };
    for (const Rejoin& row : card.rows) {
      from_ = std::max(from_, width(bars_of(row), style::kStandText));
      to_ = std::max(to_, width(std::to_string(row.to), style::kWallBars));
    }
    // The words over the first column reach as far as the tip of the arrow.
    constexpr double kMostLabel = 24;
    const double label = width(words_.say("rejoin_card.slip_in"), style::kSmall) + 1;
    from_ = std::max(from_, std::min(label, kMostLabel) - kArrow - 2 * kAround + 1);
  }

  void draw() {
    book_.canvas().rectangle(box_, {style::kCutLine, {}});
    const Box inner = box_.inset(kPadding);
    const double head = head_height(sideways_);
    draw_head(inner.top(head));
    const Box rest = inner.without_top(head);
    const auto columns = rest.columns(column_count(box_.width, box_.height), kBetweenColumns);
    const std::size_t in_column = (card_.rows.size() + columns.size() - 1) / columns.size();
    const double room = (rest.height - kLabels) / static_cast<double>(in_column);
    const double height = std::clamp(std::floor(room / kGrid + 1e-6) * kGrid, kLeastRow, kMostRow);
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

  double target_at() const { return from_ + kArrow + 2 * kAround; }

  void draw_labels(const Box& labels) {
    Canvas& canvas = book_.canvas();
    const double second = target_at();
    const Box line = labels.without_bottom(kGrid);
    draw_line(canvas, line.left(second - 1), words_.say("rejoin_card.slip_in"), style::kSmall,
              Align::left, style::kLeast);
    draw_line(canvas, line.without_left(second), words_.say("rejoin_card.go_to"), style::kSmall,
              Align::left, style::kLeast);
    canvas.line({labels.x, labels.bottom()}, {labels.right(), labels.bottom()}, style::kRule);
  }

  void draw_row(const Box& row, const Rejoin& rejoin) {
    Canvas& canvas = book_.canvas();
    draw_line(canvas, row.left(from_), bars_of(rejoin), style::kStandText, Align::right,
              style::kLeastStand);
    const Point tip{row.x + from_ + kAround + kArrow, row.centre().y};
    draw_arrow(canvas, {tip.x - kArrow, tip.y}, tip, kArrowWidth);
    const Box target = row.without_left(target_at());
    const std::string time = times_text(words_, rejoin.times, rejoin.of);
    if (rejoin.to == 0) {
      draw_words(canvas, target, at_time(time, words_.say("rejoin_card.to_the_end")));
    } else {
      draw_line(canvas, target.left(to_), std::to_string(rejoin.to),
                rejoin.begins_section ? style::kWallBars : style::kStandText, Align::right,
                style::kLeastStand);
      const std::string words = at_time(time, rejoin.section);
      if (!words.empty()) draw_words(canvas, target.without_left(to_ + 2.5), words);
    }
    canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()}, style::kHairline);
  }

  std::string at_time(const std::string& time, const std::string& where) const {
    if (time.empty() || where.empty()) return time + where;
    return words_.say("rejoin_card.at_time", {{"time", time}, {"section", where}});
  }

  Book& book_;
  const Words& words_;
  Box box_;
  const RejoinCard& card_;
  bool sideways_;
  double from_ = 0;  // millimetres that the widest stretch of bars needs
  double to_ = 0;    // and the widest bar to go on from
};

}  // namespace

std::vector<Rejoin> rejoins(const PlannedPiece& piece) { return RejoinRows(piece).rows(); }

std::size_t rejoin_rows(double width, double height) {
  const double rows = std::floor(rows_height(width, height) / kLeastRow + 1e-6);
  return static_cast<std::size_t>(std::max(1.0, rows)) *
         static_cast<std::size_t>(column_count(width, height));
}

void draw_rejoin_card_in(Book& book, const Box& box, const RejoinCard& card) {
  CardDrawing(book, box, card).draw();
}

}  // namespace cahier
