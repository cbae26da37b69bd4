#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <utility>

#include "import/piece_lines.h"
#include "import/yaml_quoted.h"
#include "piece/instrument.h"
#include "text/small_letters.h"

namespace cahier {
namespace {

// By what the part is called, in some of the languages that scores are printed in. Empty where
// nothing tells.
std::string instrument_called(const std::string& name) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 24> kWords = {
      {{"harpsi", "harpsichord"}, {"cembalo", "harpsichord"}, {"clavecin", "harpsichord"},
       {"celesta", "celesta"},    {"accord", "accordion"},    {"organ", "organ"},
       {"orgel", "organ"},        {"orgue", "organ"},         {"harp", "harp"},
       {"harfe", "harp"},         {"violon", "cello"},        {"viola", "viola"},
       {"violin", "violin"},      {"guitar", "guitar"},       {"flute", "flute"},
       {"piano", "piano"},        {"klavier", "piano"},       {"voice", "voice"},
       {"soprano", "voice"},      {"sopran", "voice"},        {"gesang", "voice"},
       {"singstimme", "voice"},   {"chant", "voice"},         {"canto", "voice"}}};
  const std::string small = in_small_letters(name);
  for (const std::string& known : instrument_names())
    if (small == known) return known;
  for (const auto& [word, instrument] : kWords)
    if (small.find(word) != std::string::npos) return std::string(instrument);
  return {};
}

std::string instrument_of(const Score& score) {
  const auto taken = std::ranges::find_if(score.parts, &ScorePart::taken);
  const std::string called = taken == score.parts.end() ? "" : instrument_called(taken->name);
  return called.empty() ? "piano" : called;
}

std::vector<std::string> parts_of(const Score& score) {
  std::vector<std::string> parts;
  for (const ScoreHand& hand : score.hands) parts.push_back(hand.name);
  return parts;
}

}  // namespace

std::string name_lines(const Score& score) {
  std::string title = plain_line(score.title, 200);
  if (title.empty()) title = plain_line(std::filesystem::path(score.file).stem().string(), 200);
  std::string text = fmt::format("title: {}\n", yaml_quoted(title.empty() ? "Piece" : title));
  if (!plain_line(score.composer, 200).empty())
    text += fmt::format("composer: {}\n", yaml_quoted(score.composer));
  const std::string instrument = instrument_of(score);
  text += fmt::format("instrument: {}\n", instrument);
  const Instrument& known = *find_instrument(instrument);
  const std::vector<std::string> parts = parts_of(score);
  if (parts.size() > 1 ? parts == known.parts : known.parts.size() == 1) return text;
  std::string list;
  for (const std::string& part : parts)
    list +=
        (list.empty() ? "" : ", ") + yaml_quoted(plain_line(part, 40).empty() ? "part" : part, 40);
  text += fmt::format("parts: [{}]\n", list);
  if (parts.size() == 1) text += "staves: [treble]\n";
  return text;
}

}  // namespace cahier
