#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/strip.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kHeadingLine = 5 * kGrid;
constexpr double kMostBetween = 3 * kGrid;  // white space above a heading
constexpr double kBeside = 9;               // a point, its circle
constexpr double kTempoWidth = 30;
constexpr double kTitleShare = 0.34;  // of a piece's line
constexpr double kTitleLine = 4 * kGrid;
constexpr double kFrame = 3;
constexpr double kBetweenLines = 5;  // side by side
constexpr double kLeastLine = 52;    // a name and room to write
constexpr double kMostName = 0.45;   // of a line

// One page from the evening before to the first note, and on to a second where the sections are
// many.
class TheDay {
 public:
  explicit TheDay(Book& book)
      : book_(book), words_(book.words()), plan_(book.plan()), width_(book.content().width) {}

  void draw() {
    const bool programme = plan_.pieces.size() > 1;
    before(programme);
    if (!programme) sections();
    after();
    Flow flow([this] { return book_.open_page(); });
    const double between = between_headings();
    for (std::size_t at = 0; at < strips_.size(); ++at) {
      if (std::ranges::find(headed_, at) != headed_.end()) flow.skip(between);
      strips_[at].draw(flow.take(strips_[at].height));
    }
  }

 private:
  bool is_free(Date date) const {
    return std::ranges::any_of(
        plan_.days, [date](const Day& day) { return day.date == date && day.tasks.empty(); });
  }

  void before(bool programme) {
    heading(words_.say("the_day.evening"));
    const Date eve = plan_.by - days{1};
    if (eve >= plan_.from)
      point(words_.say(is_free(eve) ? "the_day.evening_free" : "the_day.evening_panel",
                       {{"date", weekday_day_month(words_, eve)}}));
    point(words_.say(programme ? "the_day.evening_write_pieces" : "the_day.evening_write"));
    heading(words_.say("the_day.morning", {{"date", weekday_day_month(words_, plan_.by)}}));
    for (const char* key :
         {"the_day.morning_warm_up", "the_day.morning_slow", "the_day.morning_silent"})
      point(words_.say(key));
    line(words_.say("the_day.look_last"));
    heading(words_.say(programme ? "the_day.tempo_of_pieces" : "the_day.tempo"));
    paragraph(words_.say("the_day.tempo_how"));
    for (const PlannedPiece& piece : plan_.pieces) {
      if (programme)
        piece_line(piece);
      else
        tempo_line(piece);
    }
  }

  void after() {
    heading(words_.say("the_day.walk"));
    paragraph(words_.say("the_day.walk_how"));
    const int card = book_.page_of(SheetKind::rejoin_card);
    if (card > 0) line(words_.say("the_day.card", {{"page", card}}));
    cautions();
  }

  void heading(std::string text) { heading_ = std::move(text); }

  // A heading stays with what follows it.
  void add(double height, std::function<void(const Box&)> draw) {
    if (heading_.empty()) {
      strips_.push_back({on_grid(height), std::move(draw)});
      return;
    }
    headed_.push_back(strips_.size());
    strips_.push_back({kHeadingLine + on_grid(height),
                       [this, text = std::exchange(heading_, {}), draw](const Box& box) {
                         draw_line(book_.canvas(), box.top(4 * kGrid), text, style::kHeading,
                                   Align::left, style::kLeast);
                         draw(box.without_top(kHeadingLine));
                       }});
  }

  void paragraph(const std::string& text) {
    const TextBlock block(book_.typefaces(), text, style::kBody, width_);
    add(block.height(), [this, block](const Box& box) { block.draw(book_.canvas(), box); });
  }

  void point(const std::string& text) {
    const TextBlock block(book_.typefaces(), text, style::kBody, width_ - kBeside);
    add(std::max(block.height(), style::kTick + 0.4) + kGrid / 2, [this, block](const Box& box) {
      draw_tick(book_.canvas(), box.left(style::kTick + 0.4).top(style::kTick + 0.4));
      block.draw(book_.canvas(), box.without_left(kBeside));
    });
  }

  void line(const std::string& label) {
    add(style::kWritingRow, [this, label](const Box& box) {
      draw_labelled_line(book_.canvas(), box, label, style::kBody);
    });
  }

  // What the piece says; where it says nothing, a line to write it on.
  void draw_opening_tempo(const Box& box, const Piece& piece) {
    if (const auto tempo = piece.tempo_at(std::max(1, piece.first_bar())))
      draw_tempo(book_.canvas(), box.bottom(5 * kGrid), *tempo, style::kStandText);
    else
      draw_writing_lines(book_.canvas(), box.left(box.width - 4), 1);
  }

  void tempo_line(const PlannedPiece& piece) {
    add(style::kWritingRow, [this, &piece](const Box& box) {
      draw_opening_tempo(box.left(kTempoWidth), piece.piece);
      draw_labelled_line(book_.canvas(), box.without_left(kTempoWidth),
                         words_.say("the_day.bar_inside"), style::kBody);
    });
  }

  // The title beside its line, or above it where it is long.
  void piece_line(const PlannedPiece& piece) {
    const double share = width_ * kTitleShare;
    const std::string& title = book_.title_in(share, piece, style::kStrong);
    const bool above =
        book_.typefaces().width(title, style::kStrong.face, style::kStrong.size_pt) > share;
    add(style::kWritingRow + (above ? kTitleLine : 0),
        [this, &piece, title, above, share](const Box& box) {
          const Box name = above ? box.top(kTitleLine) : box.left(share).bottom(5 * kGrid);
          draw_line(book_.canvas(), name, title, style::kStrong, Align::left, style::kLeast);
          const Box row = above ? box.without_top(kTitleLine) : box.without_left(share + 2);
          draw_opening_tempo(row.left(kTempoWidth), piece.piece);
          draw_labelled_line(book_.canvas(), row.without_left(kTempoWidth),
                             words_.say("the_day.piece_begins"), style::kBody);
        });
  }

  // Rows of one line or of several side by side: the fewest that leave all on the page, if any do.
  void sections() {
    const std::size_t count = plan_.pieces.front().sections.size();
    const auto most = static_cast<std::size_t>(
        std::max(1.0, std::floor((width_ + kBetweenLines) / (kLeastLine + kBetweenLines))));
    const double room = book_.content().height - height_of_the_rest() - kHeadingLine;
    const auto rows = [&](std::size_t columns) {
      return static_cast<double>((count + columns - 1) / columns);
    };
    std::size_t columns = 1;
    while (columns < most && style::kWritingRow * rows(columns) > room) ++columns;
    heading(words_.say("the_day.begins"));
    for (std::size_t first = 0; first < count; first += columns)
      add(style::kWritingRow,
          [this, first, columns](const Box& box) { draw_sections(box, first, columns); });
  }

  // Of all that stands on the page besides the sections.
  double height_of_the_rest() {
    const std::size_t begin = strips_.size();
    after();
    const double height = height_of(strips_);
    strips_.resize(begin);
    std::erase_if(headed_, [&](std::size_t at) { return at >= begin; });
    return height;
  }

  // White space above a heading, as far as one page has it.
  double between_headings() const {
    const double spare = book_.content().height - height_of(strips_);
    const double each = std::floor(spare / static_cast<double>(headed_.size()) / kGrid) * kGrid;
    return std::clamp(each, 0.0, kMostBetween);
  }

  void draw_sections(const Box& box, std::size_t first, std::size_t columns) {
    const std::vector<PlannedSection>& sections = plan_.pieces.front().sections;
    const std::vector<Box> boxes = box.columns(static_cast<int>(columns), kBetweenLines);
    for (std::size_t at = first; at < std::min(sections.size(), first + columns); ++at) {
      const Box& one = boxes[at - first];
      draw_labelled_line(book_.canvas(), one, label_of(sections[at], one.width * kMostName),
                         style::kBody, one.width * (1 - kMostName));
    }
  }

  // Its name, and how it begins where a score tells it and `width` has room.
  std::string label_of(const PlannedSection& section, double width) const {
    const std::string name = name_of(section);
    const std::string begins = plan_.pieces.front().piece.beginning_at(section.bars.first);
    const std::string both = name + ": " + begins;
    const bool fits =
        book_.typefaces().width(both, style::kBody.face, style::kBody.size_pt) <= width;
    return begins.empty() || !fits ? name : both;
  }

  std::string name_of(const PlannedSection& section) const {
    const std::string bars = bar_range(section.bars.first, section.bars.last);
    return section.name == bars ? words_.say("the_day.begins_bars", {{"bars", bars}})
                                : section.name;
  }

  void cautions() {
    std::vector<TextBlock> blocks;
    double height = 2 * kFrame + kGrid;
    for (const std::string& text : words_.list("the_day.cautions")) {
      blocks.emplace_back(book_.typefaces(), text, blocks.empty() ? style::kStrong : style::kBody,
                          width_ - 2 * kFrame);
      height += blocks.back().height();
    }
    add(height, [this, blocks](const Box& box) {
      const Box frame = box.without_top(kGrid);
      book_.canvas().rectangle(frame.inset(0.2), {style::kRule, {}});
      Box inner = frame.inset(kFrame);
      for (const TextBlock& block : blocks)
        inner = inner.without_top(block.draw(book_.canvas(), inner) - inner.y);
    });
  }

  Book& book_;
  const Words& words_;
  const Plan& plan_;
  double width_;
  std::string heading_;  // of what is added next
  std::vector<Strip> strips_;
  std::vector<std::size_t> headed_;  // of them, those with a heading
};

}  // namespace

void draw_the_day(Book& book) {
  book.open_sheet(SheetKind::the_day, book.words().say("the_day.title"));
  TheDay(book).draw();
}

}  // namespace cahier
