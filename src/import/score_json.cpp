#include "import/score_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "report/json_lines.h"
#include "score/passages/bar_content.h"

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

bool is_whole_number(const std::string& text) {
  return !text.empty() && text.size() < 9 &&
         std::ranges::all_of(text, [](char letter) { return letter >= '0' && letter <= '9'; });
}

// The bar's printed number, as a number where it is one.
Json printed_bar_at(const Score& score, int element) {
  const auto bar = std::ranges::find_if(
      score.bars, [&](const ScoreBar& one) { return one.first <= element && element <= one.last; });
  if (bar == score.bars.end()) return {};
  return is_whole_number(bar->printed) ? Json(std::stoi(bar->printed)) : Json(bar->printed);
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
  for (const ScoreBar& bar : score.bars) {
    const ScoreMeasure& first = score.measures[static_cast<std::size_t>(bar.first) - 1];
    bars.push_back({{"elements", {bar.first, bar.last}},
                    {"printed", bar.printed},
                    {"quarters", number(bar.length.value())},
                    {"meter", first.meter ? Json(first.meter->text) : Json()},
                    {"fifths", first.key ? Json(first.key->fifths) : Json()},
                    {"mode", first.key ? or_null(first.key->mode) : Json()},
                    {"tempo", first.tempo ? number(first.tempo->per_minute) : Json()},
                    {"pickup", bar.pickup}});
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
  for (const ElementRun& run : score.play_order) runs.push_back({run.first, run.last});
  return runs;
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
    warnings.push_back({{"bar", one.element > 0 ? printed_bar_at(score, one.element) : Json()},
                        {"element", one.element > 0 ? Json(one.element) : Json()},
                        {"say", one.say}});
  return warnings;
}

}  // namespace

std::string score_json(const Score& score) {
  const Json json = {{"format", "cahier-score-1"},
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
                     {"rests", rests_json(score)},
                     {"lyrics", lyrics_json(score)},
                     {"warnings", warnings_json(score)}};
  return json_lines(json,
                    {{1,
                      {".title", ".composer", ".part", ".part_reason", ".parts", ".hands",
                       ".elements", ".bars", ".identical", ".play_order", ".play_order_policy",
                       ".rests", ".lyrics", ".warnings"}},
                     {2, {".bars:", ".identical:", ".rests:", ".lyrics:", ".warnings:"}},
                     {3, {".bars[]", ".identical[]", ".rests[]", ".lyrics[]", ".warnings[]"}}}) +
         "\n";
}

}  // namespace cahier
