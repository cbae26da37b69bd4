#include <algorithm>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/left_out.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/task_words.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kMinutesWidth = 24;
constexpr double kRowPadding = 3.5;

// What one option of a remedy asks for; empty for words that speak for themselves.
std::string meaning_of_one(const Words& words, const std::string& say) {
  if (say.starts_with("--minutes")) return words.say("left_out.more_minutes");
  if (say.starts_with("--by")) return words.say("left_out.put_off");
  if (say.starts_with("--from")) return words.say("left_out.bring_forward");
  if (say.starts_with("--repetitions")) return words.say("left_out.fewer_times");
  if (say.starts_with("--chunk-bars")) return words.say("left_out.larger_chunks");
  return {};
}

// What a remedy's words ask for, of one option or of a pair.
std::string meaning_of(const Words& words, const std::string& say) {
  const std::size_t next = say.find(" --");
  if (next == std::string::npos) return meaning_of_one(words, say);
  return words.say("left_out.both", {{"first", meaning_of_one(words, say.substr(0, next))},
                                     {"second", meaning_of_one(words, say.substr(next + 1))}});
}

class LeftOutSheet {
 public:
  explicit LeftOutSheet(Book& book) : book_(book), flow_([this] { return book_.open_page(); }) {}

  void draw() {
    const Words& words = book_.words();
    double minutes = 0;
    for (const Unplaced& work : book_.plan().unplaced) minutes += work.minutes;
    paragraph(words.say("left_out.intro", {{"date", full_date(words, book_.plan().by)},
                                           {"minutes", minutes_text(minutes)}}));
    // What helps comes first: it is what the reader can act on.
    heading(words.say("left_out.remedies"));
    if (book_.plan().remedies.empty()) {
      paragraph(words.say("left_out.no_remedy"));
    } else {
      paragraph(words.say("left_out.remedies_how"));
      for (const Remedy& remedy : book_.plan().remedies) draw_remedy(remedy.say);
    }
    flow_.skip(6);
    heading(words.say("left_out.waiting"));
    for (const LeftOut& kind : left_out_of(book_.plan())) draw_kind(kind);
  }

 private:
  void heading(const std::string& text) {
    if (!flow_.fits(30)) flow_.next_page();
    draw_line(book_.canvas(), flow_.take(8), text, style::kHeading, Align::left, style::kLeast);
  }

  void paragraph(const std::string& text) {
    const Box page = book_.upright();
    const TextBlock block(book_.typefaces(), text, style::kBody, page.width);
    block.draw(book_.canvas(), flow_.take(block.height()));
    flow_.skip(5);
  }

  void draw_remedy(const std::string& say) {
    const double width = book_.upright().width;
    const TextBlock typed(book_.typefaces(), say, style::kStrong, width * 0.5);
    const TextBlock meaning(book_.typefaces(), meaning_of(book_.words(), say), style::kBody,
                            width * 0.45);
    const Box row = flow_.take(std::max(typed.height(), meaning.height()) + 2.5);
    typed.draw(book_.canvas(), row.left(width * 0.5));
    meaning.draw(book_.canvas(), row.without_left(width * 0.55).moved(0, 0.3));
  }

  std::string work_of(const LeftOut& kind) const {
    const Words& words = book_.words();
    Task task;
    task.drill = kind.drill;
    std::vector<std::string> bars;
    for (const BarRange& range : kind.bars) bars.push_back(bar_range(range.first, range.last));
    std::string text = words.say(
        "left_out.work", {{"drill", drill_title(words, task)}, {"bars", list_text(words, bars)}});
    if (book_.plan().pieces.size() > 1)
      text = words.say("left_out.of_piece",
                       {{"piece", book_.plan().pieces[kind.piece].piece.title}, {"work", text}});
    return text;
  }

  // As many lines as the page has room for at a time: a list of bars may be longer than a page.
  void draw_kind(const LeftOut& kind) {
    const double width = book_.upright().width;
    const std::vector<std::string> lines =
        wrap(book_.typefaces(), work_of(kind), style::kStrong, width - kMinutesWidth - 4);
    for (std::size_t at = 0; at < lines.size(); ++at) {
      const Box row = flow_.take(5);
      draw_line(book_.canvas(), row.without_right(kMinutesWidth + 4), lines[at], style::kStrong,
                Align::left, style::kStrong.size_pt);
      if (at == 0)
        draw_line(book_.canvas(), row.right(kMinutesWidth),
                  minutes_phrase(book_.words(), kind.minutes), style::kBody, Align::right,
                  style::kLeast);
    }
    const TextBlock why(book_.typefaces(), say_why(book_.words(), kind.why), style::kSmall,
                        width - kMinutesWidth - 4);
    const Box row = flow_.take(why.height() + kRowPadding);
    why.draw(book_.canvas(), row);
    book_.canvas().line({row.x, row.bottom() - 1}, {row.right(), row.bottom() - 1},
                        style::kHairline);
    flow_.skip(1.5);
  }

  Book& book_;
  Flow flow_;
};

}  // namespace

void draw_left_out(Book& book) {
  if (book.plan().fits) return;
  book.open_sheet(SheetKind::left_out, book.words().say("left_out.title"));
  LeftOutSheet(book).draw();
}

}  // namespace cahier
