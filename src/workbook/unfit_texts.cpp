#include "workbook/unfit_texts.h"

#include <set>

namespace cahier {
namespace {

constexpr double kSeen = 0.5;  // millimetres; less is rounding

}  // namespace

std::vector<UnfitText> unfit_texts(const RecordingCanvas& drawn, const Margins& margins) {
  std::vector<UnfitText> found;
  std::set<std::string> lines;
  int page = 0;
  for (const DrawnPage& each : drawn.pages()) {
    const Box inside = margins.inside(each.size, ++page);
    std::string beyond;
    for (const DrawnItem& item : each.items) {
      const auto* text = std::get_if<DrawnText>(&item);
      if (!text || text->ink.width <= 0) continue;
      if (!inside.contains(text->ink, kSeen)) {
        if (text->text.size() > beyond.size()) beyond = text->text;
      } else if (text->style.cut && lines.insert(text->text).second) {
        found.push_back({UnfitText::Kind::cut, text->text, page});
      }
    }
    if (!beyond.empty() && lines.insert(beyond).second)
      found.push_back({UnfitText::Kind::beyond_page, beyond, page});
  }
  return found;
}

}  // namespace cahier
