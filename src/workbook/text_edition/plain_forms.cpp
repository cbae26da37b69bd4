#include "workbook/text_edition/plain_forms.h"

#include <vector>

#include "text/phrasing.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr char32_t kEnDash = 0x2013;
constexpr char32_t kHalf = 0xBD;
constexpr char32_t kArrow = 0x2192;
constexpr char32_t kMiddleDot = 0xB7;
constexpr char32_t kFlat = 0x266D;
constexpr char32_t kSharp = 0x266F;
constexpr char32_t kNoBreakSpace = 0xA0;

bool is_digit(char32_t character) { return character >= U'0' && character <= U'9'; }

// Whether a sign follows a word without a space.
bool closes(char32_t character) {
  return std::u32string_view(U".,;:!?)”").find(character) != std::u32string_view::npos;
}

void trim_end(std::string& text) {
  while (!text.empty() && text.back() == ' ') text.pop_back();
}

std::string_view beat_key(Beat beat) {
  switch (beat) {
    case Beat::eighth:
      return "in_words.eighth";
    case Beat::dotted_eighth:
      return "in_words.dotted_eighth";
    case Beat::quarter:
      return "in_words.quarter";
    case Beat::dotted_quarter:
      return "in_words.dotted_quarter";
    case Beat::half:
      return "in_words.half";
    case Beat::dotted_half:
      return "in_words.dotted_half";
  }
  return "in_words.quarter";
}

}  // namespace

std::string in_plain_signs(const Words& words, std::string_view text) {
  const std::vector<char32_t> characters = decode_utf8(text);
  std::string plain;
  // A word in the place of a sign, with a space on either side; spaces around the sign go.
  std::size_t at = 0;
  const auto put = [&](const std::string& word) {
    trim_end(plain);
    plain += (plain.empty() ? "" : " ") + word;
    while (at + 1 < characters.size() &&
           (characters[at + 1] == U' ' || characters[at + 1] == kNoBreakSpace))
      ++at;
    if (at + 1 < characters.size() && !closes(characters[at + 1])) plain += ' ';
  };
  for (; at < characters.size(); ++at) {
    const char32_t character = characters[at];
    const bool after_digit = at > 0 && is_digit(characters[at - 1]);
    if (character == kEnDash) {
      put(words.say("in_words.to"));
    } else if (character == kArrow) {
      put(words.say("in_words.then"));
    } else if (character == kHalf) {
      put(words.say(after_digit ? "in_words.and_a_half" : "in_words.half_of_one"));
    } else if (character == kFlat) {
      put(words.say("in_words.flat"));
    } else if (character == kSharp) {
      put(words.say("in_words.sharp"));
    } else if (character == kMiddleDot) {
      trim_end(plain);
      plain += ',';
    } else {
      plain += encode_utf8(character == kNoBreakSpace ? U' ' : character);
    }
  }
  return plain;
}

std::string plain_bars(const Words& words, BarRange bars) {
  if (bars.first == bars.last) return words.say("in_words.bar", {{"bar", bars.first}});
  return words.say("in_words.bars", {{"first", bars.first}, {"last", bars.last}});
}

std::string plain_times(const Words& words, int times) {
  return words.count("in_words.times", times);
}

std::string plain_tempo(const Words& words, const Tempo& tempo) {
  return words.say("in_words.tempo", {{"beat", words.say(beat_key(tempo.beat))},
                                      {"number", number_text(tempo.per_minute)}});
}

}  // namespace cahier
