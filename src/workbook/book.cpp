#include "workbook/book.h"

#include <fmt/format.h>

#include "paper/text_fitting.h"
#include "piece/short_title.h"
#include "plan/standing.h"
#include "text/limits.h"
#include "text/phrasing.h"
#include "workbook/style.h"
#include "workbook/too_many_pages.h"

namespace cahier {
namespace {

constexpr double kHeadHeight = 9;  // the running head with its rule
constexpr double kHeadGap = 4.5;
constexpr double kFootHeight = 6;
constexpr double kTitleInHead = 0.35;  // of the page's width

Box between_head_and_foot(const Box& inside) {
  return inside.without_top(kHeadHeight + kHeadGap).without_bottom(kFootHeight + 2);
}

std::vector<std::string> short_titles_of(const Plan& plan) {
  std::vector<const Piece*> pieces;
  for (const PlannedPiece& piece : plan.pieces) pieces.push_back(&piece.piece);
  return short_titles(pieces);
}

std::string title_of(const Plan& plan, const Words& words) {
  if (!plan.programme.empty()) return plan.programme;
  std::vector<std::string> titles;
  for (const PlannedPiece& piece : plan.pieces) titles.push_back(piece.piece.title);
  return list_text(words, titles);
}

}  // namespace

TooManyPages::TooManyPages()
    : std::runtime_error(fmt::format("this workbook has more than {} pages", kMostPages)) {}

Book::Book(Canvas& canvas, const Plan& plan, const Words& words, const Print& print,
           const Contents& known)
    : canvas_(canvas),
      plan_(plan),
      words_(words),
      print_(print),
      known_(known),
      title_(title_of(plan, words)),
      short_titles_(short_titles_of(plan)) {}

const std::string& Book::short_title(const PlannedPiece& piece) const {
  return short_titles_[static_cast<std::size_t>(&piece - plan_.pieces.data())];
}

const std::string& Book::title_in(double width, const PlannedPiece& piece,
                                  const TextStyle& text_style) const {
  const std::string& whole = piece.piece.title;
  const bool fits = !fit_line(typefaces(), whole, text_style, width, text_style.size_pt).cut;
  return fits ? whole : short_title(piece);
}

const std::string& Book::title_in_head(const PlannedPiece& piece) const {
  return title_in(upright().width * kTitleInHead, piece, style::kSmall);
}

// With the whole title where a line holds it, else with a short one. A student's name, by which a
// lost page is known, comes before everything else.
std::string Book::foot_text(double width) const {
  const std::string& student = print_.names.student;
  const auto fits = [&](const std::string& text) {
    return !fit_line(typefaces(), text, style::kFine, width, style::kLeast).cut;
  };
  const std::string shorter = plan_.programme.empty() && plan_.pieces.size() == 1
                                  ? short_titles_.front()
                                  : shortened_title(title_);
  std::string text;
  for (const std::string& title : {title_, shorter}) {
    text = words_.say(is_later_edition(plan_) ? "book.foot_of_edition" : "book.foot",
                      {{"title", title},
                       {"date", day_month_year(words_, plan_.by)},
                       {"number", plan_.record.edition}});
    if (!student.empty())
      text = words_.say("book.foot_of_student", {{"student", student}, {"foot", text}});
    if (fits(text)) return text;
  }
  return student.empty() ? text : student;
}

std::string Book::right_of_head(std::string_view right, double width) const {
  const std::string& student = print_.names.student;
  if (!on_wall() || student.empty()) return std::string(right);
  if (right.empty()) return student;
  const std::string both =
      words_.say("book.foot_of_student", {{"student", student}, {"foot", right}});
  const bool cut = fit_line(typefaces(), both, style::kSmall, width, style::kLeast).cut;
  return cut ? std::string(right) : both;
}

// A name on the wall is as large as the title of its sheet where it fits.
TextStyle Book::right_style(std::string_view beside, double width) const {
  const std::string& student = print_.names.student;
  const TextStyle& large = style::kHeading;
  const bool is_named = on_wall() && !student.empty() && beside.starts_with(student);
  const bool fits = typefaces().width(beside, large.face, large.size_pt) <= width;
  return is_named && fits ? large : style::kSmall;
}

bool Book::on_wall() const {
  return sheet_ == SheetKind::weeks || sheet_ == SheetKind::progress_chart;
}

void Book::open_sheet(SheetKind sheet, std::string_view title) {
  sheet_ = sheet;
  sheet_title_ = title;
  sheet_begins_ = true;
  contents_.sheets.emplace(sheet, canvas_.page_count() + 1);
}

void Book::begin(PageSize size) {
  if (page() >= kMostPages) throw TooManyPages();
  canvas_.begin_page(size);
  if (sheet_begins_) canvas_.outline_entry(sheet_title_, 1, page());
  sheet_begins_ = false;
}

void Book::mark(std::string_view title) { canvas_.outline_entry(title, 2, page()); }

Box Book::open_bare_page() {
  begin(print_.paper);
  return print_.margins.inside(print_.paper, page());
}

Box Book::open_page(std::string_view right) {
  const Box inside = open_bare_page();
  return draw_head_and_foot(inside, right);
}

Box Book::open_wide_page(std::string_view right) {
  const PageSize size = print_.paper.landscape();
  begin(size);
  return draw_head_and_foot(print_.margins.inside(size, page()), right);
}

Box Book::draw_head_and_foot(Box inside, std::string_view right) {
  const Box head = inside.top(kHeadHeight).without_bottom(2);
  const double right_width = inside.width * 0.55;
  const std::string beside = right_of_head(right, right_width);
  draw_line(canvas_, head.without_right(beside.empty() ? 0 : right_width), sheet_title_,
            style::kHeading, Align::left, style::kLeast);
  if (!beside.empty())
    draw_line(canvas_, head.right(right_width), beside, right_style(beside, right_width),
              Align::right, style::kLeast);
  const double rule_y = inside.y + kHeadHeight;
  canvas_.line({inside.x, rule_y}, {inside.right(), rule_y}, style::kRule);

  const Box foot = inside.bottom(kFootHeight).without_top(2);
  draw_line(canvas_, foot.without_right(20), foot_text(foot.width - 20), style::kFine, Align::left,
            style::kLeast);
  draw_line(canvas_, foot.right(18), std::to_string(page()), style::kSmall, Align::right,
            style::kLeast);
  return between_head_and_foot(inside);
}

Box page_content(const Print& print) {
  return between_head_and_foot(print.margins.inside(print.paper, 1));
}

Box Book::wide_content() const {
  return between_head_and_foot(print_.margins.inside(print_.paper.landscape(), page() + 1));
}

int Book::page_of(SheetKind sheet) const {
  const auto found = known_.sheets.find(sheet);
  return found == known_.sheets.end() ? 0 : found->second;
}

int Book::page_of_piece(int piece, SheetKind sheet) const {
  const auto found = known_.pieces.find({sheet, piece});
  return found == known_.pieces.end() ? 0 : found->second;
}

int Book::page_of_day(Date date) const {
  const auto found = known_.days.find(date);
  return found == known_.days.end() ? 0 : found->second;
}

int Book::page_of_task(const Task& task) const {
  const auto found = known_.tasks.find(task.id);
  return found == known_.tasks.end() ? 0 : found->second;
}

Contents Book::contents() const {
  Contents contents = contents_;
  contents.pages = canvas_.page_count();
  return contents;
}

}  // namespace cahier
