#include "report/fork_words.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/memory_traps.h"
#include "report/times_text.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

// The ending that begins with a bar.
BarRange ending_from(const Piece& piece, int bar) {
  for (const Repeat& repeat : piece.repeats)
    for (const Ending& ending : repeat.endings)
      if (ending.bars.first == bar) return ending.bars;
  return {bar, bar};
}

// Grace notes and lengths are told of the whole bar.
bool is_of_bar(const Parting& parting) {
  using Kind = HandChange::Kind;
  const Kind kind = parting.changes.front().kind;
  return kind == Kind::ornaments || kind == Kind::length;
}

std::string text_of(const Words& words, const Piece& piece, const Parting& parting) {
  const std::string difference = difference_words(words, piece, parting);
  if (is_of_bar(parting))
    return words.say("differences.in_bar", {{"bar", parting.other}, {"difference", difference}});
  const double beat = std::floor(parting.beat);
  return words.say(
      beat == parting.beat ? "differences.at_beat" : "differences.after_beat",
      {{"bar", parting.other}, {"beat", static_cast<int>(beat)}, {"difference", difference}});
}

}  // namespace

bool jumps(const Fork& fork) {
  return fork.from == ForkFrom::repeat || fork.from == ForkFrom::ending;
}

std::string way_words(const Words& words, int at, int to) {
  return words.say("task.way", {{"at", at}, {"to", to}});
}

std::string time_words(const Words& words, const Piece& piece, const Fork& fork, const WayOn& way) {
  std::string time = times_text(words, way.times, way.of);
  if (time.empty()) time = words.say("times.first");
  if (way.to <= way.at)
    return words.say("look_alikes.time_back", {{"time", time}, {"bar", way.to}});
  for (const WayOn& back : fork.back)
    if (ending_from(piece, way.to).last == back.at)
      return words.say("look_alikes.time_then_back",
                       {{"time", time}, {"bars", bar_range(way.to, back.at)}, {"bar", back.to}});
  return words.say("look_alikes.time_on", {{"time", time}, {"bar", way.to}});
}

std::vector<std::string> place_words(const Words& words, const Piece& piece, const Fork& fork,
                                     int bars_alike) {
  std::vector<std::string> items;
  if (jumps(fork)) {
    items.push_back(words.say("traps.up_to", {{"bar", fork.ways.front().at}}));
    for (const WayOn& way : fork.ways) items.push_back(time_words(words, piece, fork, way));
    return items;
  }
  std::vector<std::string> ranges;
  std::vector<std::string> bars;
  for (const WayOn& way : fork.ways) {
    ranges.push_back(bar_range(way.alike.first, way.alike.last));
    bars.push_back(std::to_string(way.to));
  }
  items.push_back(words.say("traps.places", {{"bars", list_text(words, ranges)}}));
  if (bars_alike > 0) items.push_back(words.count("traps.alike", bars_alike));
  items.push_back(words.say("traps.part_at", {{"bars", list_text(words, bars)}}));
  return items;
}

std::string difference_words(const Words& words, const Piece& piece, const Parting& parting) {
  std::vector<HandChange> changes = parting.changes;
  if (piece.parts().size() == 1)
    for (HandChange& change : changes) change.hand.clear();
  return say_changes(words, changes);
}

std::string parting_text(const Words& words, const Piece& piece, const Fork& fork,
                         const WayOn& way) {
  const Parting* parting = piece.parting_of(fork.ways.front().to, way.to);
  return parting && !parting->changes.empty() ? text_of(words, piece, *parting) : std::string();
}

std::vector<std::string> parting_words(const Words& words, const Piece& piece, const Fork& fork) {
  std::vector<std::string> all;
  for (const WayOn& way : fork.ways)
    if (std::string text = parting_text(words, piece, fork, way); !text.empty())
      all.push_back(std::move(text));
  return all;
}

std::vector<std::string> parting_words(const Words& words, const PlannedPiece& piece,
                                       const Task& task) {
  std::vector<std::string> all;
  for (const Fork& fork : piece.forks)
    if (std::ranges::any_of(fork.ways, [&](const WayOn& way) { return plays_way(task, way); }))
      for (std::string& one : parting_words(words, piece.piece, fork))
        all.push_back(std::move(one));
  return all;
}

}  // namespace cahier
