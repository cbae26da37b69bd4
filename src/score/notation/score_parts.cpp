#include "score/notation/score_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "score/xml/score_limits.h"

namespace cahier {
namespace {

// A text on one line, its blanks single.
std::string one_line(std::string_view text) {
  std::string line;
  for (const char letter : trimmed(text)) {
    const bool blank = letter == ' ' || letter == '\n' || letter == '\r' || letter == '\t';
    if (!blank)
      line += letter;
    else if (!line.ends_with(' '))
      line += ' ';
  }
  return line;
}

class PartList {
 public:
  explicit PartList(const XmlElement& root) : root_(root) {
    for (const XmlElement& listed : root.child("part-list").children("score-part")) {
      WrittenPart part;
      part.id = listed.attribute("id");
      part.name = one_line(listed.child("part-name").text());
      for (const XmlElement& instrument : listed.children("score-instrument"))
        if (part.sound.empty()) part.sound = instrument.child("instrument-sound").text();
      if (at_.contains(part.id))
        listed.refuse(fmt::format("two parts have the id \"{}\"", part.id),
                      "each part has an id of its own");
      at_[part.id] = parts_.size();
      parts_.push_back(std::move(part));
      if (parts_.size() > kMostScoreParts)
        listed.refuse(fmt::format("the score has more than {} parts", kMostScoreParts),
                      "export the part you play alone");
    }
  }

  void add_partwise() {
    for (const XmlElement& part : root_.children("part")) {
      WrittenPart& one = listed(part);
      if (!one.measures.empty())
        part.refuse(fmt::format("part \"{}\" stands here a second time", one.id),
                    "each part has an id of its own");
      for (const XmlElement& measure : part.children("measure"))
        add(one, measure, measure, measure);
    }
  }

  void add_timewise() {
    std::size_t count = 0;
    for (const XmlElement& measure : root_.children("measure")) {
      ++count;
      for (const XmlElement& part : measure.children("part")) {
        WrittenPart& one = listed(part);
        if (one.measures.size() >= count)
          part.refuse(fmt::format("part \"{}\" stands twice in one measure", one.id),
                      "each part has an id of its own");
        while (one.measures.size() + 1 < count) one.measures.push_back({measure.none(), "", false});
        add(one, part, measure, measure);
      }
    }
  }

  std::vector<WrittenPart> take() { return std::move(parts_); }

 private:
  WrittenPart& listed(const XmlElement& part) {
    const std::string id = part.attribute("id");
    const auto found = at_.find(id);
    if (found == at_.end())
      part.refuse(fmt::format("part \"{}\" is not in the list of parts", id),
                  "the file was put together wrongly: export it again");
    return parts_[found->second];
  }

  static void add(WrittenPart& part, const XmlElement& content, const XmlElement& measure,
                  const XmlElement& at) {
    if (part.measures.size() >= kMostMeasureElements)
      at.refuse(fmt::format("the score has more than {} bars", kMostMeasureElements),
                "export the movements one by one");
    part.measures.push_back(
        {content, one_line(measure.attribute("number")), measure.says_yes("implicit")});
  }

  XmlElement root_;
  std::vector<WrittenPart> parts_;
  std::map<std::string, std::size_t> at_;
};

int staff_number(const XmlElement& element, std::string_view what) {
  const std::optional<int> number = xml_whole(element.text());
  if (!number || *number < 1 || *number > kMostStaves)
    element.refuse(fmt::format("{} must be a number from 1 to {}", what, kMostStaves),
                   "correct the staves in the notation program");
  return *number;
}

int staves_of(const WrittenPart& part) {
  int staves = 1;
  for (const WrittenMeasure& measure : part.measures)
    for (const XmlElement& child : measure.content.children()) {
      if (child.is("attributes") && child.has("staves"))
        staves = std::max(staves, staff_number(child.child("staves"), "the number of staves"));
      else if (child.is("note") && child.has("staff"))
        staves = std::max(staves, staff_number(child.child("staff"), "a staff"));
    }
  return staves;
}

void make_equal(std::vector<WrittenPart>& parts, const XmlElement& none, ScoreWarnings& warnings) {
  std::size_t most = 0;
  for (const WrittenPart& part : parts) most = std::max(most, part.measures.size());
  for (WrittenPart& part : parts) {
    const std::size_t bars = part.measures.size();
    if (bars == most) continue;
    warnings.add(
        static_cast<int>(bars) + 1,
        fmt::format("part {} ends here; it is taken to be silent from here on", part.called()));
    part.measures.resize(most, WrittenMeasure{none, "", false});
  }
  const auto whole = std::ranges::find_if(
      parts, [&](const WrittenPart& part) { return !part.measures.back().number.empty(); });
  if (whole == parts.end()) return;
  for (WrittenPart& part : parts)
    for (std::size_t bar = 0; bar < most; ++bar)
      if (!part.measures[bar].content) {
        part.measures[bar].number = whole->measures[bar].number;
        part.measures[bar].implicit = whole->measures[bar].implicit;
      }
}

}  // namespace

std::string WrittenPart::called() const {
  return name.empty() ? id : fmt::format("{} ({})", id, name);
}

std::vector<WrittenPart> written_parts(const XmlDocument& score, ScoreWarnings& warnings) {
  const XmlElement root = score.root();
  PartList list(root);
  if (root.is("score-timewise"))
    list.add_timewise();
  else
    list.add_partwise();
  std::vector<WrittenPart> parts = list.take();
  std::erase_if(parts, [](const WrittenPart& part) { return part.measures.empty(); });
  if (parts.empty()) root.refuse("this score has no bars", "export it again with its music");
  make_equal(parts, root.none(), warnings);
  for (WrittenPart& part : parts) part.staves = staves_of(part);
  return parts;
}

}  // namespace cahier
