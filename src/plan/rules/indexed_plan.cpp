#include "plan/rules/indexed_plan.h"

#include <fmt/format.h>

#include <algorithm>

namespace cahier {
namespace {

void index_bars(JudgedPiece& judged) {
  const PlannedPiece& planned = *judged.planned;
  const BarRange whole = planned.piece.whole();
  const std::size_t size = static_cast<std::size_t>(whole.last) + 1;
  judged.learned_bar.assign(size, 0);
  judged.section_at.assign(size, -1);
  judged.chunk_at.assign(size, -1);
  judged.occurrence_at.assign(size, -1);
  for (int bar = whole.first; bar <= whole.last; ++bar)
    judged.learned_bar[bar] = planned.piece.learned_bar(bar);
  for (std::size_t section = 0; section < planned.sections.size(); ++section)
    for (int bar = planned.sections[section].bars.first; bar <= planned.sections[section].bars.last;
         ++bar)
      judged.section_at[bar] = static_cast<int>(section);

  std::vector<int> holder(size, -1);
  for (std::size_t chunk = 0; chunk < planned.chunks.size(); ++chunk)
    for (int bar = planned.chunks[chunk].bars.first; bar <= planned.chunks[chunk].bars.last; ++bar)
      holder[bar] = static_cast<int>(chunk);
  for (int bar = whole.first; bar <= whole.last; ++bar)
    judged.chunk_at[bar] = holder[judged.learned_bar[bar]];
}

void index_occurrences(JudgedPiece& judged) {
  const BarRange whole = judged.planned->piece.whole();
  for (int bar = whole.first; bar <= whole.last; ++bar) {
    const bool goes_on = bar > whole.first && judged.chunk_at[bar] == judged.chunk_at[bar - 1] &&
                         judged.learned_bar[bar] == judged.learned_bar[bar - 1] + 1;
    if (goes_on)
      judged.occurrences.back().bars.last = bar;
    else
      judged.occurrences.push_back({{bar, bar}, judged.chunk_at[bar], false});
    judged.occurrence_at[bar] = static_cast<int>(judged.occurrences.size()) - 1;
  }
  for (auto& occurrence : judged.occurrences)
    occurrence.whole = occurrence.chunk >= 0 &&
                       occurrence.bars.size() == judged.chunks()[occurrence.chunk].bars.size();
}

void check_sections(Judgement& judgement, const JudgedPiece& judged) {
  const PlannedPiece& planned = *judged.planned;
  for (const Section& section : planned.piece.sections) {
    const int at = judged.section_at[section.bars.first];
    if (at >= 0 && planned.sections[at].bars.first != section.bars.first)
      judgement.breach(1, fmt::format("section \"{}\" begins at bar {} in the piece but not in "
                                      "the plan",
                                      section.name, section.bars.first));
  }
  for (const PlannedSection& section : planned.sections)
    for (int bar = section.bars.first; bar <= section.bars.last; ++bar) {
      const int source = section.same_as
                             ? judged.learned_bar[section.same_as->first + bar - section.bars.first]
                             : bar;
      if (judged.learned_bar[bar] == source) continue;
      judgement.breach(1, fmt::format("the plan and the piece do not agree where the notes of bar "
                                      "{} are learned",
                                      bar));
      break;
    }
}

}  // namespace

std::vector<int> JudgedPiece::touched(const BarRange& bars) const {
  std::vector<int> chunks;
  for (int at = occurrence_at[bars.first]; at <= occurrence_at[bars.last]; ++at)
    if (occurrences[at].chunk >= 0) chunks.push_back(occurrences[at].chunk);
  std::sort(chunks.begin(), chunks.end());
  chunks.erase(std::unique(chunks.begin(), chunks.end()), chunks.end());
  return chunks;
}

const CueStart* JudgedPiece::find_cue(int number) const {
  const auto& cues = planned->cues;
  const auto found =
      std::lower_bound(cues.begin(), cues.end(), number,
                       [](const CueStart& cue, int wanted) { return cue.number < wanted; });
  return found != cues.end() && found->number == number ? &*found : nullptr;
}

bool is_retrieval(Drill drill) {
  return drill == Drill::recall || drill == Drill::cue_starts || drill == Drill::slow_pass ||
         drill == Drill::counted_pass || drill == Drill::run_through;
}

std::string in_words(const BarRange& bars) {
  return bars.size() == 1 ? fmt::format("bar {}", bars.first)
                          : fmt::format("bars {}-{}", bars.first, bars.last);
}

std::string in_words(const Judgement& judgement, const Moment& moment) {
  const Task& task = judgement.task(moment);
  return fmt::format("{}, task {} ({}, {})", iso(judgement.days[moment.day]->date), task.id,
                     drill_word(task.drill), in_words(task.bars));
}

void index_pieces(Judgement& judgement) {
  for (std::size_t piece = 0; piece < judgement.plan.pieces.size(); ++piece) {
    JudgedPiece judged;
    judged.planned = &judgement.plan.pieces[piece];
    judged.index = static_cast<int>(piece);
    index_bars(judged);
    index_occurrences(judged);
    judged.learned.resize(judged.chunks().size());
    judged.retrieved.resize(judged.chunks().size());
    check_sections(judgement, judged);
    judgement.pieces.push_back(std::move(judged));
  }
  judgement.each_task([&](const Moment& moment, const Task& task) {
    JudgedPiece& judged = judgement.pieces[task.piece];
    for (const int chunk : task.chunks) {
      if (task.drill == Drill::learn && !judged.learned[chunk]) judged.learned[chunk] = moment;
      if (is_retrieval(task.drill)) judged.retrieved[chunk].push_back(moment);
    }
  });
}

}  // namespace cahier
