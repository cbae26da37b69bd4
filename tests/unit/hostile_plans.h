// Plans and words that strain a sheet: very long names, very many bars, several pieces, a language
// of longer words.
#pragma once

#include <algorithm>
#include <string>

#include "drawn_sheet.h"
#include "sample_plan.h"
#include "text/templates.h"

namespace cahier::sample {

// Long names, look-alikes of three passages, a change of everything, one weak section, a pickup.
inline std::string crowded_piece() {
  const std::string title(200, 'W');
  std::string section = "A section whose name is exactly as long as is allowed, 60 chars";
  section.resize(60, 'x');
  return "title: " + title + R"(
instrument: organ
parts: [the upper manual, with its reeds and mixtures, the lower manual, the pedals]
bars: 120
pickup: 2
meter: 2+3+2/8
key: 7 flats
tempo: 60
changes:
  - {bar: 31, meter: 17/16, key: 7 sharps, tempo: 120}
  - {bar: 32, meter: 3/4, key: F major}
sections:
  - {name: ")" +
         section + R"(", bars: 1-40, level: 5}
  - {name: Middle, bars: 41-80}
  - {name: Back, bars: 81-110, same as: 1-30}
  - {name: End, bars: 111-120}
look-alikes: [{bars: [1-8, 41-48, 111-118], fork: [5, 45, 115]}]
)";
}

// Every sentence half as long again: its first words are said twice.
inline const Words& wordy() {
  static const Words words = [] {
    const Source english = Templates().read("words", "en");
    std::string text;
    const std::string all(english.text());
    for (std::size_t at = 0; at < all.size();) {
      const std::size_t end = std::min(all.find('\n', at), all.size());
      std::string line = all.substr(at, end - at);
      const std::size_t gap = line.find(" \"", line.find_first_not_of(' '));
      const std::size_t opens = gap == std::string::npos ? gap : gap + 1;
      if (opens != std::string::npos && line.size() > opens + 3 && line.back() == '"') {
        std::string said = line.substr(opens + 1, line.size() - opens - 2);
        std::string more = said.substr(0, std::max<std::size_t>(2, said.size() * 2 / 5));
        const bool plain = more.find_first_of("{}\\") == std::string::npos;
        const bool letters = std::all_of(more.begin(), more.end(), [](char letter) {
          return static_cast<unsigned char>(letter) < 128;
        });
        if (plain && letters) line = line.substr(0, opens + 1) + more + said + '"';
      }
      text += line + "\n";
      at = end + 1;
    }
    Diagnostics diagnostics;
    Words read = read_words(Source("words/wordy.yaml", text), diagnostics);
    for (const Diagnostic& diagnostic : diagnostics.all()) UNSCOPED_INFO(compose(diagnostic));
    REQUIRE_FALSE(diagnostics.has_errors());
    return read;
  }();
  return words;
}

// Draws the sheet on every paper, in English and in longer words, and demands a faultless layout.
inline void require_faultless(void (*draw)(Book&), const Plan& plan) {
  for (const PageSize paper : {kA4, kLetter, kA5})
    for (const Words* words : {&english_words(), &wordy()}) {
      const Print print{paper, 8, false};
      INFO("on paper " << paper.width << " mm wide");
      CHECK(DrawnSheet(draw, plan, print, *words).faults() == "");
    }
}

}  // namespace cahier::sample
