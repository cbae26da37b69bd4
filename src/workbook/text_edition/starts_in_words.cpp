#include "workbook/text_edition/starts_in_words.h"

#include "plan/cue_reach.h"
#include "practice/time_model.h"
#include "text/phrasing.h"
#include "workbook/text_edition/forks_in_words.h"
#include "workbook/text_edition/plain_forms.h"

namespace cahier {
namespace {

constexpr int kCoinFaces = 2;
constexpr int kTwentyFaces = 20;

std::string_view how_to_throw(const DiceTable& table) {
  if (table.faces == kCoinFaces)
    return table.count == 1 ? "in_words.throw_coin" : "in_words.throw_coins";
  if (table.faces == kTwentyFaces) return "in_words.throw_twenty";
  return table.count == 1 ? "in_words.throw_one_die" : "in_words.throw_two_dice";
}

// "1 then 2"; of coins "H T".
std::string thrown(const Words& words, const DiceTable& table, const std::vector<int>& outcome) {
  std::string text;
  for (const int face : outcome) {
    if (!text.empty())
      text += table.faces == kCoinFaces ? " " : " " + words.say("in_words.then") + " ";
    text += table.faces == kCoinFaces
                ? words.say(face == 1 ? "cue_starts.heads" : "cue_starts.tails")
                : std::to_string(face);
  }
  return text;
}

std::string all_thrown(const Words& words, const DiceTable& table,
                       const std::vector<std::vector<int>>& outcomes) {
  std::string text;
  for (const std::vector<int>& outcome : outcomes)
    text += (text.empty() ? "" : ", ") + thrown(words, table, outcome);
  return text;
}

// A section that has no name of its own is called by its bars.
std::string name_of(const Words& words, const PlannedSection& section) {
  const bool unnamed = section.name == bar_range(section.bars.first, section.bars.last);
  return unnamed ? plain_bars(words, section.bars) : in_plain_signs(words, section.name);
}

}  // namespace

std::vector<std::string> starts_in_words(const Words& words, const PlannedPiece& piece) {
  std::vector<std::string> lines;
  for (const CueStart& cue : piece.cues) {
    const Tempo tempo = tempo_or_usual(piece.piece, cue.bar);
    std::string tempi = plain_tempo(words, tempo);
    for (const int bar : tempo_changes_from(piece, cue)) {
      const Tempo next = tempo_or_usual(piece.piece, bar);
      const std::string number =
          next.beat == tempo.beat ? number_text(next.per_minute) : plain_tempo(words, next);
      tempi += ", " + words.say("in_words.tempo_from", {{"bar", bar}, {"number", number}});
    }
    lines.push_back(
        words.say("in_words.start", {{"number", cue.number},
                                     {"bar", cue.bar},
                                     {"section", name_of(words, piece.sections[cue.section])},
                                     {"last", last_bar_from(piece, cue)},
                                     {"tempo", tempi}}));
    if (cue.is_new) lines.back() += " " + words.say("in_words.start_is_new");
    if (const std::string mark = piece.piece.in_force_at(cue.bar); !mark.empty())
      lines.back() += " " + words.say("in_words.in_force", {{"mark", mark}});
    for (std::string& begins : beginning_in_words(words, piece.piece, cue.bar))
      lines.push_back(std::move(begins));
  }
  for (const DiceTable& table : piece.dice) {
    lines.push_back(words.say(how_to_throw(table)));
    for (const DiceTable::Row& row : table.rows)
      lines.push_back(
          words.say("in_words.thrown", {{"outcomes", all_thrown(words, table, row.outcomes)},
                                        {"number", row.cue},
                                        {"bar", piece.cues[row.cue - 1].bar}}));
    if (!table.again.empty())
      lines.push_back(words.say("in_words.thrown_again",
                                {{"outcomes", all_thrown(words, table, table.again)}}));
  }
  return lines;
}

std::string rejoining_in_words(const Words& words, const PlannedPiece& piece) {
  if (piece.rejoin.empty()) return {};
  std::vector<std::string> places;
  for (const int bar : piece.rejoin) places.push_back(std::to_string(bar));
  return words.say("in_words.rejoin", {{"bars", list_text(words, places)}});
}

}  // namespace cahier
