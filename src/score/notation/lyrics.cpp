#include "score/notation/lyrics.h"

#include <algorithm>

namespace cahier {
namespace {

constexpr std::size_t kMostVerses = 64;  // of a part in one bar; more are left out

void add_syllable(std::vector<ScoreLyric>& all, std::size_t from, const ScoreLyric& lyric,
                  const std::string& syllabic) {
  const auto same = std::find_if(all.begin() + static_cast<std::ptrdiff_t>(from), all.end(),
                                 [&](const ScoreLyric& one) { return one.verse == lyric.verse; });
  if (same == all.end()) {
    if (all.size() - from < kMostVerses) all.push_back(lyric);
    return;
  }
  same->text += (syllabic == "middle" || syllabic == "end" ? "-" : " ") + lyric.text;
}

}  // namespace

std::vector<ScoreLyric> read_lyrics(const std::vector<WrittenPart>& parts) {
  std::vector<ScoreLyric> all;
  const std::size_t count = parts.front().measures.size();
  for (std::size_t at = 0; at < count; ++at)
    for (const WrittenPart& part : parts) {
      const std::size_t from = all.size();
      for (const XmlElement& note : part.measures[at].content.children("note"))
        for (const XmlElement& lyric : note.children("lyric")) {
          const std::string text = lyric.child("text").text();
          if (!text.empty())
            add_syllable(all, from,
                         {static_cast<int>(at) + 1, part.id, lyric.attribute("number"), text},
                         lyric.child("syllabic").text());
        }
    }
  return all;
}

}  // namespace cahier
