#include <algorithm>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/standing.h"
#include "practice/time_model.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/form_strip.h"
#include "workbook/parts/teachers_note.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/totals.h"
#include "workbook/parts/week_words.h"
#include "workbook/sheets/cover/cover_facts.h"
#include "workbook/sheets/cover/since_last_edition.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kFootRoom = 20;  // check line and paper at the foot
constexpr int kColumns = 3;       // of facts
constexpr double kFormRoom = kFormStripHeight + 7.5;
constexpr double kHeadingLine = 4 * kGrid;

// The largest of a few sizes at which `text` takes at most `lines` lines; else the smallest.
TextBlock title_block(const Typefaces& typefaces, const std::string& text, double width,
                      std::size_t lines) {
  for (const double size : {36.0, 31.0, 27.0, 23.0, 20.0, 18.0}) {
    const TextBlock block(typefaces, text, style::kTitle.at(size), width);
    if (block.lines().size() <= lines) return block;
  }
  return TextBlock(typefaces, text, style::kSubtitle, width);
}

std::string composers(const Plan& plan, const Words& words) {
  std::vector<std::string> names;
  for (const PlannedPiece& piece : plan.pieces) {
    const std::string& name = piece.piece.composer;
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  }
  return names.empty() ? std::string() : list_text(words, names);
}

// How the paper is counted.
std::string_view paper_words(const Print& print) {
  if (print.booklet) return "cover.paper_folded";
  return print.margins.edge == PunchedEdge::inner ? "cover.paper" : "cover.paper_one_side";
}

constexpr double kBesideLabel = 2;
constexpr double kNameRow = 4.5 * kGrid;

struct Named {
  std::string label;
  std::string name;  // empty where it is not known
};

class Cover {
 public:
  explicit Cover(Book& book)
      : book_(book),
        words_(book.words()),
        plan_(book.plan()),
        totals_(totals_of(plan_)),
        page_(book.open_bare_page()),
        box_(page_.without_bottom(kFootRoom)) {}

  void draw() {
    draw_foot();
    draw_title();
    draw_dates();
    if (is_later_edition(plan_)) draw_since();
    draw_names();
    draw_facts();
    draw_forms();
    draw_assumptions();
    draw_further_forms();
  }

 private:
  Canvas& canvas() { return book_.canvas(); }
  // Takes the top of what is left.
  Box take(double height) {
    const Box taken = box_.top(height);
    box_ = box_.without_top(height);
    return taken;
  }
  // What a small page has no room for stands on the next one.
  void need(double height) {
    if (box_.height < height) box_ = book_.open_page();
  }
  void block(const std::string& text, const TextStyle& text_style) {
    const TextBlock lines(book_.typefaces(), text, text_style, box_.width);
    need(lines.height());
    lines.draw(canvas(), take(lines.height()));
  }
  bool small_paper() const { return page_.height < 220; }

  void draw_title() {
    draw_line(canvas(), take(6), words_.say("cover.kind"), style::kSmall, Align::left,
              style::kLeast);
    take(small_paper() ? 6 : 22);
    const TextBlock title =
        title_block(book_.typefaces(), book_.title(), box_.width, small_paper() ? 2 : 3);
    // A programme's titles may be many: keep two thirds of the page for the rest, and more where an
    // edition has something to say on a small one.
    const double share = small_paper() && is_later_edition(plan_) ? 0.2 : 0.34;
    if (title.height() <= page_.height * share) {
      title.draw(canvas(), take(title.height()));
    } else {
      draw_line(canvas(), take(9), book_.title(), style::kSubtitle, Align::left, 15);
    }
    if (const std::string names = composers(plan_, words_); !names.empty()) {
      const TextBlock composer(book_.typefaces(), names, style::kLead, box_.width);
      take(1.5);
      if (composer.lines().size() <= 2)
        composer.draw(canvas(), take(composer.height()));
      else
        draw_line(canvas(), take(7), names, style::kLead, Align::left, style::kLeast);
    }
    take(small_paper() ? 5 : 15);
  }

  void draw_dates() {
    block(words_.say(plan_.upkeep ? "cover.keep" : "cover.performance"), style::kBody);
    draw_line(canvas(), take(11), full_date(words_, plan_.by), style::kGreat, Align::left, 12);
    const std::string from = full_date(words_, plan_.from);
    block(plan_.upkeep
              ? words_.count("cover.practice_kept", totals_.days_with_work, {{"from", from}})
              : words_.say("cover.practice",
                           {{"from", from}, {"to", full_date(words_, plan_.by - days{1})}}),
          style::kBody);
    draw_weeks_printed();
    if (!plan_.fits) {
      const int page = book_.page_of(SheetKind::left_out);
      block(page > 0 ? words_.say("cover.does_not_fit", {{"page", page}})
                     : words_.say("cover.does_not_fit_here"),
            style::kStrong);
    }
    take(small_paper() ? 2 : 8);
  }

  // Which days have panels, where not all have.
  void draw_weeks_printed() {
    if (book_.page_of(SheetKind::day_panels) == 0) return;
    const std::vector<PlanWeek> weeks = printed_weeks(plan_, book_.print().most_weeks);
    const Date last = weeks.empty() ? plan_.from : weeks.back().last();
    if (weeks.empty() || last + days{1} >= plan_.by) return;
    block(words_.say("cover.panels_for", {{"dates", date_span(words_, weeks.front().first(), last)},
                                          {"date", weekday_day_month(words_, last + days{1})}}),
          style::kStrong);
  }

  void draw_since() {
    need(2 * kHeadingLine);
    draw_line(canvas(), take(kHeadingLine),
              words_.say("cover.edition", {{"number", plan_.record.edition},
                                           {"date", day_month_year(words_, plan_.from)}}),
              style::kStrong, Align::left, style::kLeast);
    std::string text;
    for (const std::string& sentence : since_last_edition(plan_, words_))
      text += (text.empty() ? "" : " ") + sentence;
    block(text, style::kBody);
    take(small_paper() ? 2 : 8);
  }

  void draw_names() {
    const PrintedNames& names = book_.print().names;
    std::vector<Named> all = {{words_.say("cover.player"), names.student}};
    if (book_.print().teacher || !names.teacher.empty())
      all = {{words_.say("cover.student"), names.student},
             {words_.say("cover.teacher"), names.teacher}};
    if (const std::vector<Box> cells = Box{0, 0, box_.width, 0}.columns(2, 6);
        std::ranges::any_of(all, [&](const Named& each) {
          return !each.name.empty() && name_width(each) > cells.front().width;
        }))
      draw_names_below_one_another(all);
    else
      draw_names_beside_one_another(all);
    if (!names.note.empty()) {
      take(kGrid);
      block(teachers_note(words_, names), style::kBody);
    }
    take(small_paper() ? 3 : names.note.empty() ? 12 : 9);
  }

  double name_width(const Named& named) const {
    return book_.typefaces().width(named.label, style::kBody.face, style::kBody.size_pt) +
           kBesideLabel +
           book_.typefaces().width(named.name, style::kLead.face, style::kLead.size_pt);
  }

  // A line to write on where no name is known.
  void draw_names_beside_one_another(const std::vector<Named>& all) {
    need(style::kWritingRow + 1);
    const Box row = take(style::kWritingRow + 1);
    for (std::size_t at = 0; at < all.size(); ++at) {
      const Box cell = row.columns(2, 6)[at];
      const double label = draw_line(canvas(), cell.bottom(6).left(cell.width * 0.5), all[at].label,
                                     style::kBody, Align::left, style::kLeast);
      if (all[at].name.empty())
        canvas().line({cell.x + label + kBesideLabel, cell.bottom() - 0.8},
                      {cell.right(), cell.bottom() - 0.8}, style::kWritingLine);
      else
        draw_line(canvas(), cell.bottom(6).without_left(label + kBesideLabel), all[at].name,
                  style::kLead, Align::left, style::kLeast);
    }
  }

  // Long names.
  void draw_names_below_one_another(const std::vector<Named>& all) {
    for (const Named& each : all) {
      if (each.name.empty()) continue;
      if (name_width(each) <= box_.width) {
        const Box row = take(kNameRow);
        const double label =
            draw_line(canvas(), row, each.label, style::kBody, Align::left, style::kLeast);
        draw_line(canvas(), row.without_left(label + kBesideLabel), each.name, style::kLead,
                  Align::left, style::kLeast);
      } else {
        block(each.label, style::kBody);
        block(each.name, style::kLead);
      }
    }
  }

  double fact_height(const CoverFact& fact) const {
    const double width = box_.columns(kColumns, 6).front().width;
    return 8.5 + TextBlock(book_.typefaces(), fact.label, style::kNote, width).height();
  }

  void draw_facts() {
    const std::vector<CoverFact> all = cover_facts(plan_, words_, totals_);
    for (std::size_t first = 0; first < all.size(); first += kColumns) {
      double height = 0;
      for (std::size_t at = 0; at < kColumns; ++at)
        height = std::max(height, fact_height(all[first + at]));
      need(height);
      const std::vector<Box> cells = box_.columns(kColumns, 6);
      for (std::size_t at = 0; at < kColumns; ++at) {
        const Box cell = cells[at];
        draw_line(canvas(), cell.top(8.5), all[first + at].figure, style::kStandBars, Align::left,
                  10);
        const TextBlock label(book_.typefaces(), all[first + at].label, style::kNote, cell.width);
        label.draw(canvas(), cell.without_top(8.5));
      }
      take(height + 2.5);
    }
    take(small_paper() ? 1 : 9);
  }

  // The forms of a programme that find no room above the assumptions stand on pages of their own.
  void draw_forms() {
    const bool several = plan_.pieces.size() > 1;
    const double keep = assumptions_block().height() + 9;
    for (const PlannedPiece& piece : plan_.pieces) {
      if (box_.height < kFormRoom + keep) {
        if (several) further_.push_back(&piece);
        continue;
      }
      draw_form(piece, several);
    }
  }

  void draw_further_forms() {
    if (further_.empty()) return;
    box_ = book_.open_page();
    for (const PlannedPiece* piece : further_) {
      if (box_.height < kFormRoom) box_ = book_.open_page();
      draw_form(*piece, plan_.pieces.size() > 1);
    }
  }

  void draw_form(const PlannedPiece& piece, bool several) {
    const Box head = take(6.5);
    const Tempo tempo = tempo_or_usual(piece.piece, 1);
    const double width = tempo_width(book_.typefaces(), tempo, style::kBody);
    draw_tempo(canvas(), head.right(width + 1), tempo, style::kBody);
    double beside = width + 4;
    if (!piece.piece.tempo_at(1)) {
      const std::string usual = words_.say("cover.tempo_usual");
      const Box room = head.without_right(beside - 1).right(head.width * 0.4);
      beside += 2 + draw_line(canvas(), room, usual, style::kSmall, Align::right, style::kLeast);
    }
    const std::string name = several ? book_.title_in(head.width - beside, piece, style::kStrong)
                                     : words_.say("cover.the_form");
    draw_line(canvas(), head.without_right(beside), name, style::kStrong, Align::left,
              style::kLeast);
    draw_form_strip(book_, piece, take(kFormStripHeight).inset(0.3, 0));
    take(1);
  }

  TextBlock assumptions_block() const {
    std::string text;
    for (const std::string& sentence : cover_assumptions(plan_, words_, totals_))
      text += (text.empty() ? "" : " ") + sentence;
    return TextBlock(book_.typefaces(), text, style::kSmall, box_.width);
  }

  void draw_assumptions() {
    const TextBlock text = assumptions_block();
    if (box_.height < text.height() + 7) return;
    // Just above the foot.
    box_ = box_.bottom(text.height() + 6.5);
    draw_line(canvas(), take(5.5), words_.say("cover.assumes"), style::kNoteStrong, Align::left,
              style::kLeast);
    text.draw(canvas(), take(text.height()));
  }

  void draw_foot() {
    const double length = book_.print().laid_out(100);
    const Box foot = page_.bottom(kFootRoom - 2).inset(0.3, 0);
    const double y = foot.y + 4;
    const Stroke stroke{0.3, style::kDark, 0, 0, false};
    canvas().line({foot.x, y}, {foot.x + length, y}, stroke);
    for (const double x : {foot.x, foot.x + length})
      canvas().line({x, y - 1.8}, {x, y + 1.8}, stroke);
    draw_line(canvas(), Box{foot.x, y + 2, foot.width, 4.5}, words_.say("cover.scale"),
              style::kSmall, Align::left, style::kLeast);
    if (book_.pages() > 0) {
      const int sheets = book_.print().sheets_of_paper(book_.pages());
      draw_line(canvas(), Box{foot.x, y + 6.5, foot.width, 4.5},
                words_.count(paper_words(book_.print()), sheets, {{"pages", book_.pages()}}),
                style::kSmall, Align::left, style::kLeast);
    }
  }

  Book& book_;
  const Words& words_;
  const Plan& plan_;
  Totals totals_;
  Box page_;
  Box box_;                                   // what is left above the foot
  std::vector<const PlannedPiece*> further_;  // whose form is still to be drawn
};

}  // namespace

void draw_cover(Book& book) {
  book.open_sheet(SheetKind::cover, book.words().say("cover.title"));
  Cover(book).draw();
}

}  // namespace cahier
