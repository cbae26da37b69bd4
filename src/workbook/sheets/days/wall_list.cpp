#include "workbook/sheets/days/wall_list.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/arrow.h"
#include "workbook/parts/dice_faces.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kFrame = 1.5;  // from the frame around new bars to what is in it
constexpr double kTitleLine = 4.5;
constexpr double kWrapSlack = 0.2;   // so that a wrapped line is not set smaller
constexpr double kLetters = 1.5;     // what letters may reach above and below a line of figures
constexpr double kBetween = 0.5;     // entries on one line, of the type size
constexpr double kBehindGap = 0.25;  // between a number and its arrow or die
constexpr double kBehind = 0.82;     // the arrow or die
constexpr int kDieFace = 5;
constexpr double kLeastRange = style::kSize3;  // points; a range too wide for its column shrinks
// New bars are framed: seen from afar without colour.
constexpr Stroke kNewBars{0.7, style::kDark, 0, 0, false};

double em(const TextStyle& text_style) { return millimetres(text_style.size_pt); }

// Before and behind the first blank.
std::vector<WallEntry> broken(const WallEntry& entry) {
  const std::size_t at = entry.text.find(' ');
  if (at == std::string::npos || at + 1 == entry.text.size()) return {entry};
  return {{entry.text.substr(0, at), Behind::nothing}, {entry.text.substr(at + 1), entry.behind}};
}

}  // namespace

WallSizes WallSizes::great() {
  return {style::kWallGreat, 13.5, style::kLead, 6, 4.5, false, Together::neighbours};
}
WallSizes WallSizes::large() {
  return {style::kWallLarge, 10.5, style::kLead, 6, 4.5, false, Together::neighbours};
}
WallSizes WallSizes::plain() {
  return {style::kWallBars, 9, style::kLead, 6, 3, true, Together::neighbours};
}
WallSizes WallSizes::dense() {
  return {style::kWallBars, 7.5, style::kBody, 4.5, 1.5, true, Together::all};
}

WallSizes WallSizes::tight() {
  return {style::kWallBars.at(style::kLeastWall), 6, style::kNote, 4.5, 1.5, true, Together::all};
}

WallList::WallList(const Book& book, const Day& day, double width, const WallSizes& sizes)
    : book_(book), width_(width), sizes_(sizes) {
  const Plan& plan = book.plan();
  for (const WallGroup& group : wall_groups(book.words(), plan, day, sizes.together)) {
    Set set;
    set.framed = group.drill == Drill::learn;
    set.lines = lines_of(group.entries, width - (set.framed ? 2 * kFrame : 0));
    const double inside = width - (set.framed ? 2 * kFrame : 0) - kWrapSlack;
    // On one line, smaller if need be, else wrapped.
    const auto lines_of_name = [&](const std::string& name) {
      const bool fits = !fit_line(book.typefaces(), name, sizes.name, inside, style::kLeast).cut;
      return fits ? std::vector<std::string>{name}
                  : wrap(book.typefaces(), name, sizes.name, inside);
    };
    set.name = lines_of_name(group.name);
    const std::string title =
        plan.pieces.size() > 1 ? book.short_title(plan.pieces[group.piece]) : std::string();
    set.in_words = in_words(group, title);
    if (!title.empty()) {
      const std::string both =
          book.words().say("weeks.of_piece", {{"what", group.name}, {"piece", title}});
      const bool beside =
          sizes.together == Together::all &&
          !fit_line(book.typefaces(), both, sizes.name, width - 2 * kFrame, style::kLeast).cut;
      if (beside)
        set.name = {both};
      else
        set.title = wrap(book.typefaces(), title, style::kNote, inside);
    }
    sets_.push_back(std::move(set));
  }
}

std::string WallList::in_words(const WallGroup& group, const std::string& title) const {
  const Words& words = book_.words();
  std::vector<std::string> bars;
  for (const WallEntry& entry : group.entries) {
    std::string text = entry.text;
    if (entry.behind == Behind::arrow) text = words.say("task.from_bar", {{"bar", entry.text}});
    if (entry.behind == Behind::die) text += "\u00a0" + words.say("task.dice");
    bars.push_back(std::move(text));
  }
  const std::string said =
      words.say("weeks.in_words", {{"name", group.name}, {"bars", list_text(words, bars)}});
  return title.empty() ? said : words.say("weeks.of_piece", {{"what", said}, {"piece", title}});
}

double WallList::width_of(const WallEntry& entry) const {
  const double text =
      book_.typefaces().width(entry.text, sizes_.bars.face, sizes_.bars.size_pt) + 0.3;
  return entry.behind == Behind::nothing ? text : text + em(sizes_.bars) * (kBehindGap + kBehind);
}

// Entries side by side where they fit.
std::vector<WallList::Line> WallList::lines_of(const std::vector<WallEntry>& entries,
                                               double width) {
  const double most = width * (sizes_.may_break ? sizes_.bars.size_pt / kLeastRange : 1);
  std::vector<Line> lines;
  double used = 0;
  const auto put = [&](const WallEntry& entry, bool on_new_line, bool continued) {
    const double needed = width_of(entry);
    const double gap = em(sizes_.bars) * kBetween;
    on_new_line = on_new_line || lines.empty() || used + gap + needed > width;
    if (on_new_line) lines.push_back({{}, continued});
    used = on_new_line ? needed : used + gap + needed;
    lines.back().entries.push_back(entry);
    too_wide_ = too_wide_ || needed > most;
  };
  for (const WallEntry& entry : entries) {
    if (width_of(entry) <= most) {
      put(entry, false, false);
      continue;
    }
    // "2 × 1–96" as "2 ×" and "1–96"; a range is never divided.
    bool continued = false;
    for (const WallEntry& part : broken(entry)) {
      put(part, true, continued);
      continued = true;
    }
  }
  return lines;
}

double WallList::below_lines(const Set& set) const {
  return sizes_.name_line * static_cast<double>(set.name.size()) +
         kTitleLine * static_cast<double>(set.title.size()) + (set.framed ? 2 * kFrame : 0);
}

double WallList::height_of(const Set& set) const {
  return sizes_.line * static_cast<double>(set.lines.size()) + below_lines(set);
}

std::optional<double> WallList::height() const {
  if (too_wide_) return {};
  double height = 0;
  for (const Set& set : sets_) height += height_of(set) + (height > 0 ? sizes_.gap : 0);
  return height;
}

void WallList::draw_entry(Canvas& canvas, const Box& box, const WallEntry& entry) const {
  const double size = em(sizes_.bars);
  const double behind = entry.behind == Behind::nothing ? 0 : size * kBehind;
  const Box room = box.without_right(behind);
  const Typefaces& faces = book_.typefaces();
  // Too wide to be read from the wall: from as near as the music desk.
  TextStyle bars = sizes_.bars;
  if (fit_line(faces, entry.text, bars, room.width, style::kLeastWall).cut)
    bars.role = TextRole::stand;
  const double least = bars.role == TextRole::wall ? style::kLeastWall : kLeastRange;
  const double text =
      draw_line(canvas, room.inset(0, -kLetters), entry.text, bars, Align::left, least);
  const Box mark = box.without_left(text + size * kBehindGap).left(behind);
  if (entry.behind == Behind::die) draw_die(canvas, mark, kDieFace);
  if (entry.behind == Behind::arrow)
    draw_arrow(canvas, {mark.x, mark.centre().y}, {mark.right(), mark.centre().y}, size * 0.1);
}

void WallList::draw_set(Canvas& canvas, const Box& box, const Set& set) const {
  const double height = height_of(set);
  if (set.framed) canvas.rectangle(box.top(height).inset(kNewBars.width / 2), {kNewBars, {}});
  Box rest = set.framed ? box.top(height).inset(kFrame) : box.top(height);
  for (const Line& entries : set.lines) {
    Box line = rest.top(sizes_.line);
    for (const WallEntry& entry : entries.entries) {
      draw_entry(canvas, line, entry);
      line = line.without_left(width_of(entry) + em(sizes_.bars) * kBetween);
    }
    rest = rest.without_top(sizes_.line);
  }
  for (const std::string& line : set.name) {
    draw_line(canvas, rest.top(sizes_.name_line), line, sizes_.name, Align::left, style::kLeast);
    rest = rest.without_top(sizes_.name_line);
  }
  for (const std::string& line : set.title) {
    draw_line(canvas, rest.top(kTitleLine), line, style::kNote, Align::left, style::kLeast);
    rest = rest.without_top(kTitleLine);
  }
}

// How many lines of a set, from `first` on, fit in `room`, none of them half an entry.
std::size_t WallList::fitting(const Set& set, std::size_t first, double room) const {
  const double for_lines = room - below_lines(set) + 1e-6;
  std::size_t lines =
      for_lines < sizes_.line ? 0 : static_cast<std::size_t>(for_lines / sizes_.line);
  lines = std::min(lines, set.lines.size() - first);
  while (lines > 0 && first + lines < set.lines.size() && set.lines[first + lines].continued)
    --lines;
  return lines;
}

// Every set from `first` on in small type, each on lines of its own.
TextBlock WallList::rest_in_words(std::size_t first) const {
  std::string text;
  for (std::size_t at = first; at < sets_.size(); ++at)
    text += (text.empty() ? "" : "\n") + sets_[at].in_words;
  return {book_.typefaces(), text, style::kNote, width_};
}

// How many sets stand large when all others are named below them.
std::size_t WallList::named_below(double height) const {
  double used = 0;
  std::size_t most = 0;
  for (std::size_t at = 0; at <= sets_.size(); ++at) {
    if (used + rest_in_words(at).height() <= height + 1e-6) most = at;
    if (at < sets_.size()) used += height_of(sets_[at]) + (at + 1 < sets_.size() ? sizes_.gap : 0);
  }
  return most;
}

// How many stand whole from `first` on.
std::size_t WallList::drawn_whole(std::size_t first, double height) const {
  double used = 0;
  std::size_t at = first;
  for (; at < sets_.size(); ++at) {
    if (used + height_of(sets_[at]) > height + 1e-6) break;
    used += height_of(sets_[at]) + sizes_.gap;
  }
  return at - first;
}

std::optional<WallPlace> WallList::draw(Canvas& canvas, const Box& box) const {
  return draw(canvas, box, {}, false);
}

std::optional<WallPlace> WallList::draw_more(Canvas& canvas, const Box& box, WallPlace from) const {
  return draw(canvas, box, from, true);
}

// A sheet that goes on holds one line at least.
std::optional<WallPlace> WallList::draw(Canvas& canvas, const Box& box, WallPlace from,
                                        bool goes_on) const {
  Box rest = box;
  const auto put = [&](Set set, std::size_t first, std::size_t last) {
    set.lines = {set.lines.begin() + static_cast<std::ptrdiff_t>(first),
                 set.lines.begin() + static_cast<std::ptrdiff_t>(last)};
    draw_set(canvas, rest, set);
    rest = rest.without_top(std::min(rest.height, height_of(set) + sizes_.gap));
  };
  // Names in small type say all of it on one sheet, and may cost one set of large bars, if any
  // stays.
  if (!goes_on && !sets_.empty()) {
    const std::size_t whole = drawn_whole(0, box.height);
    const std::size_t named = named_below(box.height);
    const bool some_large = named > 0 || fitting(sets_.front(), 0, box.height) == 0;
    const bool all_large = whole == sets_.size();
    if (!all_large && some_large && named + 1 >= whole &&
        rest_in_words(named).height() <= box.height) {
      for (std::size_t at = 0; at < named; ++at) put(sets_[at], 0, sets_[at].lines.size());
      rest_in_words(named).draw(canvas, rest);
      return std::nullopt;
    }
  }
  for (WallPlace at = from; at.set < sets_.size(); at = {at.set + 1, 0}) {
    const Set& set = sets_[at.set];
    const std::size_t lines = fitting(set, at.line, rest.height);
    const bool forced = lines == 0 && goes_on && at == from;
    const std::size_t last = at.line + (forced ? 1 : lines);
    if (last > at.line) put(set, at.line, last);
    if (last < set.lines.size()) return WallPlace{at.set, last};
  }
  return std::nullopt;
}

}  // namespace cahier
