#include "import/score_json.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "import/bar_of_element.h"
#include "report/json_lines.h"
#include "score/level/bar_level.h"
#include "score/passages/bar_content.h"
#include "score/passages/look_alikes.h"

namespace cahier {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(const std::string& text) { return text.empty() ? Json() : Json(text); }
Json or_null(const std::optional<int>& number) { return number ? Json(*number) : Json(); }

// A whole number without a decimal point.
Json number(double value) {
  const auto whole = static_cast<long long>(value);
  return static_cast<double>(whole) == value ? Json(whole) : Json(value);
}

int bar_number(const Score& score, int index) {
  return score.bars[static_cast<std::size_t>(index)].number;
}

// First and last, by the numbers of the bars.
Json bars_range(const Score& score, int first, int length) {
  return {bar_number(score, first), bar_number(score, first + length - 1)};
}

Json hand_names(const Score& score, const std::vector<int>& hands) {
  Json names = Json::array();
  for (const int hand : hands) names.push_back(score.hands[static_cast<std::size_t>(hand)].name);
  return names;
}

Json parts_json(const Score& score) {
  Json parts = Json::array();
  for (const ScorePart& part : score.parts)
    parts.push_back({{"id", part.id}, {"name", part.name}, {"taken", part.taken}});
  return parts;
}

Json hands_json(const Score& score) {
  Json hands = Json::array();
  for (const ScoreHand& hand : score.hands)
    hands.push_back({{"name", hand.name}, {"staves", hand.staves}});
  return hands;
}

Json bars_json(const Score& score) {
  Json bars = Json::array();
  const std::vector<std::vector<int>> levels = bar_levels(score);
  for (std::size_t at = 0; at < score.bars.size(); ++at) {
    const ScoreBar& bar = score.bars[at];
    const ScoreMeasure& first = score.measures[static_cast<std::size_t>(bar.first) - 1];
    bars.push_back({{"elements", {bar.first, bar.last}},
                    {"number", bar.number},
                    {"printed", bar.printed},
                    {"quarters", number(bar.length.value())},
                    {"meter", first.meter ? Json(first.meter->text) : Json()},
                    {"fifths", first.key ? Json(first.key->fifths) : Json()},
                    {"mode", first.key ? or_null(first.key->mode) : Json()},
                    {"tempo", first.tempo ? number(first.tempo->per_minute) : Json()},
                    {"pickup", bar.pickup},
                    {"level", levels[at]}});
  }
  return bars;
}

Json identical_json(const Score& score) {
  Json all = Json::array();
  int element = 0;
  for (const IdenticalMeasure& one : identical_measures(score.measures))
    all.push_back({{"element", ++element},
                   {"top", or_null(one.top)},
                   {"lower", or_null(one.lower)},
                   {"both", or_null(one.both)}});
  return all;
}

Json play_order_json(const Score& score) {
  Json runs = Json::array();
  for (const ElementRun& run : score.play_order.runs) runs.push_back({run.first, run.last});
  return runs;
}

Json returns_json(const Score& score, const std::vector<ScoreReturn>& all) {
  Json returns = Json::array();
  for (const ScoreReturn& one : all) {
    const int length = one.last - one.first + 1;
    returns.push_back({{"bars", bars_range(score, one.first, length)},
                       {"same_as", bars_range(score, one.source, length)},
                       {"hands", hand_names(score, one.hands)}});
  }
  return returns;
}

double rounded(double value) { return std::round(value * 1000) / 1000; }

Json look_alikes_json(const Score& score, const std::vector<ScoreLookAlikes>& all) {
  Json look_alikes = Json::array();
  for (const ScoreLookAlikes& one : all)
    look_alikes.push_back(
        {{"ranges",
          {bars_range(score, one.first, one.length), bars_range(score, one.later, one.length)}},
         {"fork",
          {bar_number(score, one.first + one.fork), bar_number(score, one.later + one.fork)}},
         {"beat", {number(rounded(one.beat)), number(rounded(one.beat))}},
         {"hands", hand_names(score, one.hands)},
         {"transposed", one.transposed},
         {"difference", one.difference},
         {"danger", number(rounded(one.danger))}});
  return look_alikes;
}

// Measure elements in which a hand has no note.
Json rests_json(const Score& score) {
  Json rests = Json::array();
  int element = 0;
  for (const ScoreMeasure& measure : score.measures) {
    ++element;
    std::set<int> sounding;
    for (const ScoreNote& note : measure.notes)
      if (note.sounds()) sounding.insert(note.staff);
    for (const ScoreHand& hand : score.hands)
      if (std::ranges::none_of(hand.staves, [&](int staff) { return sounding.contains(staff); }))
        rests.push_back({{"element", element}, {"hand", hand.name}});
  }
  return rests;
}

Json lyrics_json(const Score& score) {
  Json lyrics = Json::array();
  for (const ScoreLyric& one : score.lyrics)
    lyrics.push_back({{"element", one.element},
                      {"part", one.part},
                      {"verse", or_null(one.verse)},
                      {"text", one.text}});
  return lyrics;
}

Json warnings_json(const Score& score) {
  Json warnings = Json::array();
  for (const ScoreWarning& one : score.warnings)
    warnings.push_back({{"bar", one.element > 0 ? Json(bar_number_of(score, one.element)) : Json()},
                        {"element", one.element > 0 ? Json(one.element) : Json()},
                        {"say", one.say}});
  return warnings;
}

}  // namespace

std::string score_json(const Score& score) {
  const std::vector<BarNotes> bars = notes_of_bars(score);
  const std::vector<ScoreReturn> returns = find_returns(bars);
  const Json json = {
      {"format", "cahier-score-1"},
      {"title", or_null(score.title)},
      {"composer", or_null(score.composer)},
      {"part", score.part},
      {"part_reason", score.part_reason},
      {"parts", parts_json(score)},
      {"hands", hands_json(score)},
      {"elements", score.measures.size()},
      {"bars", bars_json(score)},
      {"identical", identical_json(score)},
      {"play_order", play_order_json(score)},
      {"play_order_policy", kPlayOrderPolicy},
      {"returns", returns_json(score, returns)},
      {"look_alikes", look_alikes_json(score, find_look_alikes(score, bars, returns))},
      {"rests", rests_json(score)},
      {"lyrics", lyrics_json(score)},
      {"warnings", warnings_json(score)}};
  return json_lines(json,
                    {{1,
                      {".title", ".composer", ".part", ".part_reason", ".parts", ".hands",
                       ".elements", ".bars", ".identical", ".play_order", ".play_order_policy",
                       ".returns", ".look_alikes", ".rests", ".lyrics", ".warnings"}},
                     {2,
                      {".bars:", ".identical:", ".returns:", ".look_alikes:", ".rests:", ".lyrics:",
                       ".warnings:"}},
                     {3,
                      {".bars[]", ".identical[]", ".returns[]", ".look_alikes[]", ".rests[]",
                       ".lyrics[]", ".warnings[]"}}}) +
         "\n";
}

}  // namespace cahier
