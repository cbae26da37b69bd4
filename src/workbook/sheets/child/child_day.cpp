#include "workbook/sheets/child/child_day.h"

#include <algorithm>

#include "text/phrasing.h"
#include "workbook/parts/task_words.h"
#include "workbook/sheets/child/child_throw.h"

namespace cahier {
namespace {

// Writing and saying notes are asked for from this level on; below, a slow turn.
constexpr int kWritesFrom = 2;

enum class ChildKind { learn, recall, join, slow, count, run, head, say, write, fork, start, toss };

ChildKind kind_of(const Plan& plan, const Task& task) {
  switch (task.drill) {
    case Drill::learn:
      return ChildKind::learn;
    case Drill::join:
      return ChildKind::join;
    case Drill::recall:
      return ChildKind::recall;
    case Drill::slow_pass:
      return ChildKind::slow;
    case Drill::counted_pass:
      return ChildKind::count;
    case Drill::run_through:
      return ChildKind::run;
    case Drill::silent_run:
      return ChildKind::head;
    case Drill::cue_starts:
      return task.fork ? ChildKind::fork : ChildKind::start;
    case Drill::spoken_part:
    case Drill::write_out:
      // The piece's own level: slips raise a chunk's, and ask a beginner for no more than this.
      if (plan.pieces[task.piece].piece.hardest_level(task.bars) < kWritesFrom)
        return ChildKind::slow;
      return task.drill == Drill::write_out ? ChildKind::write : ChildKind::say;
  }
  return ChildKind::recall;
}

struct Gathered {
  ChildKind kind;
  int piece;
  std::vector<std::string> bars{};  // each once
  std::vector<Step> steps{};        // of learning
  int times = 0;                    // of run-throughs and throws
};

void add_once(std::vector<std::string>& all, const std::string& one) {
  if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

class ChildDay {
 public:
  ChildDay(const Book& book, const Day& day) : book_(book), words_(book.words()), day_(day) {}

  std::vector<ChildLine> lines() {
    for (const Task& task : day_.tasks) add(task);
    std::vector<ChildLine> lines;
    if (day_.lesson) lines.push_back({words_.say("child.lesson")});
    for (const Gathered& one : gathered_) lines.push_back({named(one), shape_of(one.kind)});
    if (day_.note == DayNote::everything_learned) lines.push_back({words_.say("child.all_known")});
    if (day_.note == DayNote::catch_up) lines.push_back({words_.say("child.catch_up")});
    if (lines.empty()) lines.push_back({words_.say(day_.off ? "child.day_off" : "child.free")});
    return lines;
  }

 private:
  Gathered& of(ChildKind kind, int piece, bool alone = false) {
    const auto same = std::find_if(gathered_.begin(), gathered_.end(), [&](const Gathered& one) {
      return one.kind == kind && one.piece == piece;
    });
    if (same != gathered_.end() && !alone) return *same;
    gathered_.push_back({kind, piece});
    return gathered_.back();
  }

  void add(const Task& task) {
    const PlannedPiece& planned = book_.plan().pieces[task.piece];
    const ChildKind kind = kind_of(book_.plan(), task);
    if (kind == ChildKind::fork) {
      for (const PlayedWay& way : task.ways)
        add_once(of(kind, task.piece).bars,
                 words_.say("child.way", {{"from", way.at}, {"to", way.to}}));
    } else if (kind == ChildKind::run) {
      of(kind, task.piece).times += times_of(task);
    } else if (kind == ChildKind::start) {
      for (const int cue : task.cues)
        for (const CueStart& start : planned.cues)
          if (start.number == cue) add_once(of(kind, task.piece).bars, std::to_string(start.bar));
    } else {
      Gathered& one = of(kind, task.piece, kind == ChildKind::learn);
      add_once(one.bars, bar_range(task.bars.first, task.bars.last));
      one.steps = task.steps;
    }
    if (task.throws > 0) of(ChildKind::toss, task.piece).times += task.throws;
  }

  // In a programme the piece's name stands before it.
  std::string named(const Gathered& one) const {
    if (book_.plan().pieces.size() == 1) return said(one);
    return words_.say(
        "child.of_piece",
        {{"piece", book_.short_title(book_.plan().pieces[one.piece])}, {"what", said(one)}});
  }

  std::string bars_of(const Gathered& one) const {
    const Piece& piece = book_.plan().pieces[one.piece].piece;
    const std::string whole = bar_range(piece.first_bar(), piece.bars);
    if (one.bars == std::vector{whole}) return words_.say("child.all");
    const bool single = one.bars.size() == 1 &&
                        std::all_of(one.bars[0].begin(), one.bars[0].end(),
                                    [](char letter) { return letter >= '0' && letter <= '9'; });
    return words_.say(single ? "child.bar" : "child.bars", {{"bars", list_text(words_, one.bars)}});
  }

  std::string said(const Gathered& one) const {
    const PlannedPiece& planned = book_.plan().pieces[one.piece];
    switch (one.kind) {
      case ChildKind::learn:
        return words_.say("child.learn", {{"bars", bars_of(one)}, {"hands", hands_of(one)}});
      case ChildKind::recall:
        return words_.say("child.recall", {{"bars", bars_of(one)}});
      case ChildKind::join:
        return words_.say("child.join", {{"bars", bars_of(one)}});
      case ChildKind::slow:
        return words_.say("child.slow", {{"bars", bars_of(one)}});
      case ChildKind::count:
        return words_.say("child.count_out", {{"bars", bars_of(one)}});
      case ChildKind::run:
        return words_.count("child.run", one.times);
      case ChildKind::head:
        return words_.say("child.head", {{"bars", bars_of(one)}});
      case ChildKind::say:
        return words_.say("child.say", {{"bars", bars_of(one)}});
      case ChildKind::write:
        return words_.say("child.write", {{"bars", bars_of(one)}});
      case ChildKind::fork:
        return words_.say("child.fork", {{"ways", list_text(words_, one.bars)}});
      case ChildKind::start:
        return words_.count("child.start", static_cast<int>(one.bars.size()),
                            {{"bars", list_text(words_, one.bars)}});
      case ChildKind::toss:
        return words_.count(child_throw_key(planned), one.times);
    }
    return {};
  }

  // "right hand 5 times, left hand 5 times, both 5 times"
  std::string hands_of(const Gathered& one) const {
    const PlannedPiece& planned = book_.plan().pieces[one.piece];
    const std::size_t parts = planned.piece.instrument.parts.size();
    std::string all;
    for (const Step& step : one.steps) {
      std::string who = list_text(words_, step.parts);
      if (step.parts.size() == parts && parts > 1)
        who = words_.say(parts == 2 ? "child.both" : "child.together");
      const std::string next = parts == 1
                                   ? words_.count("child.times", step.times)
                                   : words_.count("child.hand_times", step.times, {{"who", who}});
      all = all.empty() ? next : words_.say("lists.more", {{"before", all}, {"next", next}});
    }
    return all;
  }

  static Shape shape_of(ChildKind kind) {
    switch (kind) {
      case ChildKind::learn:
        return Shape::star;
      case ChildKind::join:
        return Shape::diamond;
      case ChildKind::slow:
      case ChildKind::count:
        return Shape::square;
      case ChildKind::start:
      case ChildKind::toss:
      case ChildKind::fork:
        return Shape::triangle;
      default:
        return Shape::circle;
    }
  }

  const Book& book_;
  const Words& words_;
  const Day& day_;
  std::vector<Gathered> gathered_;
};

}  // namespace

std::vector<ChildLine> child_lines(const Book& book, const Day& day) {
  return ChildDay(book, day).lines();
}

}  // namespace cahier
