#include "log/entries_of_day.h"

#include <charconv>

namespace cahier {
namespace {

std::vector<std::string> titles_of(const std::vector<Piece>& pieces) {
  std::vector<std::string> titles;
  for (const Piece& piece : pieces) titles.push_back(piece.title);
  return titles;
}

}  // namespace

ReportedTask& EntriesOfDay::add(const Spot& spot, int piece, Drill drill, BarRange bars) {
  ReportedTask& task = tasks_.emplace_back();
  task.spot = spot;
  task.done.date = date_;
  task.done.piece = piece;
  task.done.drill = drill;
  task.done.bars = bars;
  return task;
}

std::optional<int> EntriesOfDay::piece_of(const DayEntry& entry) {
  const auto& written = entry.day->piece;
  if (!written) {
    if (reading_.pieces.size() == 1) return 0;
    if (asked_.insert({entry.log, entry.day}).second)
      faults().refuse_unread(entry.spot(entry.day->date.at),
                             which_piece(titles_of(reading_.pieces)));
    return std::nullopt;
  }
  const std::string& text = written->value;
  int number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool is_number = read.ec == std::errc() && read.ptr == text.data() + text.size();
  if (is_number && number >= 1 && number <= static_cast<int>(reading_.pieces.size()))
    return number - 1;
  for (int index = 0; index < static_cast<int>(reading_.pieces.size()); ++index)
    if (reading_.pieces[index].title == text) return index;
  if (asked_.insert({entry.log, entry.day}).second)
    faults().refuse_unread(entry.spot(written->at),
                           is_number ? no_such_piece_number(number, reading_.pieces.size())
                                     : no_such_piece(text, titles_of(reading_.pieces)));
  return std::nullopt;
}

ReportedTask* EntriesOfDay::untold(Drill drill, int piece, BarRange bars) {
  for (ReportedTask& task : tasks_)
    if (!task.code.empty() && !task.told && task.done.drill == drill && task.done.piece == piece &&
        task.done.bars == bars)
      return &task;
  return nullptr;
}

std::optional<int> EntriesOfDay::cue_bar(PastEdition& edition, int piece, int number,
                                         const Spot& spot) {
  const std::vector<int>& bars = reading_.editions.cue_bars(edition, piece);
  if (number >= 1 && number <= static_cast<int>(bars.size())) return bars[number - 1];
  faults().refuse(spot, no_such_cue_start(number, bars.size()));
  return std::nullopt;
}

void EntriesOfDay::check_bars(int piece, BarRange bars, Drill drill, const Spot& spot,
                              const std::string& code) {
  const auto bar = reading_.learned.of(piece).first_unlearned(bars);
  if (!bar || faults().unread() > 0) return;
  faults().refuse(spot, not_learned_by_then(beginning(code, drill, bars), bars, *bar, date_));
  reading_.learned.learn(piece, bars, date_, std::nullopt);
}

}  // namespace cahier
