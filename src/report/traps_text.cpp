#include "report/traps_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "plan/memory_traps.h"
#include "report/fork_words.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "text/wrap.h"

namespace cahier {
namespace {

class TrapsText {
 public:
  TrapsText(const Plan& plan, const Words& words) : plan_(plan), words_(words) {}

  std::string write() {
    std::string text = "\n" + words_.say("traps.heading") + "\n";
    const bool none = std::ranges::all_of(
        plan_.pieces, [](const PlannedPiece& piece) { return piece.forks.empty(); });
    if (none) return text + wrap("  ", {words_.say("traps.none")}, "", 2);
    for (const std::string& sentence : words_.list("traps.how"))
      text += wrap("  ", {sentence}, "", 2);
    for (int piece = 0; piece < static_cast<int>(plan_.pieces.size()); ++piece)
      text += of_piece(piece);
    return text;
  }

 private:
  std::string of_piece(int number) const {
    const PlannedPiece& piece = plan_.pieces[number];
    if (piece.forks.empty()) return {};
    std::string text = "\n";
    if (plan_.pieces.size() > 1)
      text += wrap("  " + piece_mark(plan_, number), {piece.piece.title}, "", 4);
    int rank = 0;
    for (const MemoryTrap& trap : memory_traps(piece)) {
      const Fork& fork = piece.forks[trap.fork];
      const std::string lead = fmt::format("  {}. ", ++rank);
      text += wrap(lead, place_words(words_, piece.piece, fork, trap.bars_alike), kDot, kIndent);
      for (const std::string& told : parting_words(words_, piece.piece, fork)) text += line(told);
      text += answers(number, fork);
    }
    return text;
  }

  std::string line(const std::string& text) const {
    return wrap(std::string(kIndent, ' '), {text}, "", kIndent + 2);
  }

  std::string answers(int number, const Fork& fork) const {
    const TrapAnswers found = answers_to(plan_, number, fork);
    std::string text = of_tasks("traps.fork_drills", found.fork_drills);
    if (!found.starts.empty()) {
      std::vector<std::string> starts;
      for (const CueStart* cue : found.starts)
        starts.push_back(words_.say("traps.start", {{"number", cue->number}, {"bar", cue->bar}}));
      text += line(words_.say("traps.starts", {{"starts", list_text(words_, starts)}}));
    }
    text += of_tasks("traps.spoken_parts", found.spoken_parts) +
            of_tasks("traps.write_outs", found.write_outs);
    return text.empty() ? line(words_.say("traps.unmet")) : text;
  }

  // Each by its day and its row on the day's panel.
  std::string of_tasks(std::string_view key, const std::vector<DatedTask>& tasks) const {
    if (tasks.empty()) return {};
    std::vector<std::string> days;
    for (const DatedTask& one : tasks)
      days.push_back(words_.say(
          "traps.day", {{"date", day_month_short(words_, one.date)}, {"code", one.task->id}}));
    return line(words_.say(key, {{"days", list_text(words_, days)}}));
  }

  static constexpr int kIndent = 5;

  const Plan& plan_;
  const Words& words_;
};

}  // namespace

std::string traps_text(const Plan& plan, const Words& words) {
  return TrapsText(plan, words).write();
}

}  // namespace cahier
