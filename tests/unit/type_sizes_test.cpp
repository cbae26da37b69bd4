// The smallest type of every size of print, on every paper, and that nothing of ours is cut.
#include <algorithm>

#include "catch.h"
#include "drawn_sheet.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "text/templates.h"
#include "workbook/packet.h"

using namespace cahier;

namespace {

struct SizeOfPrint {
  const char* name;
  Print print;
  double least;  // points, as printed
};

Packet packet_of(const char* name) {
  Diagnostics diagnostics;
  return read_packet(Templates().read("packets", name), diagnostics);
}

// Drawn twice: the second time its page numbers are known.
std::vector<DrawnPage> pages_of(const Plan& plan, const char* packet, const Print& print) {
  const Packet sheets = packet_of(packet);
  RecordingCanvas first(sample::typefaces());
  const Contents known = draw_workbook(first, plan, sheets, english_words(), print, Contents{});
  RecordingCanvas second(sample::typefaces());
  draw_workbook(second, plan, sheets, english_words(), print, known);
  return second.pages();
}

// What is wrong with a text, in a word; empty when nothing is.
std::string fault_of(const DrawnText& text, const SizeOfPrint& size) {
  // The bar numbers over staves are engraved, as in a score.
  const bool engraved = text.style.face == Face::serif_italic;
  if (text.ink.width <= 0) return {};
  if (!engraved && size.print.printed(text.style.size_pt) < size.least - 1e-9) return "small";
  if (text.style.cut) return "cut";
  return text.text.ends_with("…") ? "ellipsis" : "";
}

Plan of_two_pieces() {
  const std::vector<Piece> pieces = {
      sample::piece("{title: \"Sonata in C minor, first movement\", bars: 12, tempo: 96}"),
      sample::piece("{title: Nocturne of the Harbour Lights, bars: 8, tempo: 60, repeats: [{bars: "
                    "1-4, times: 3}]}")};
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-01-30"), pieces[0].practice,
                       sample::steady());
  terms.minutes.fill(40);
  return make_plan(pieces, terms);
}

// Nothing too small for its size of print, nothing of ours cut or ending in an ellipsis, and no
// page of panels that is a week's head and empty lines.
void check_type(const SizeOfPrint& size) {
  INFO(size.name);
  const Plan plan = of_two_pieces();
  std::string faults;
  for (const char* packet : {"full", "wall"})
    for (const DrawnPage& page : pages_of(plan, packet, size.print)) {
      const std::vector<DrawnText> texts = page.texts();
      for (const DrawnText& text : texts)
        if (const std::string fault = fault_of(text, size); !fault.empty())
          faults += fault + ": " + text.text + "\n";
      // A week's title, dates and goal, the page's title, "Notes" and the foot are seven texts.
      if (texts.front().text == "Day by day" && texts.size() <= 7) faults += page.words();
    }
  CHECK(faults == "");
}

}  // namespace

TEST_CASE("at usual size nothing is smaller than 9 points, and nothing is cut") {
  for (const PageSize paper : {kA4, kLetter, kA5})
    check_type({"usual", usual_print(paper, PunchedEdge::inner), 9});
}

TEST_CASE("in a booklet nothing is smaller than 9 points, and nothing is cut") {
  for (const PageSize paper : {kA4, kLetter}) check_type({"booklet", booklet_print(paper), 9});
}

TEST_CASE("in clear print nothing is smaller than 12 points, and nothing is cut") {
  for (const PageSize paper : {kA4, kLetter})
    check_type({"clear", clear_print(paper, PunchedEdge::inner), 12});
}

TEST_CASE("in large print nothing is smaller than 14 points, and nothing is cut") {
  for (const PageSize paper : {kA4, kLetter})
    check_type({"large", large_print(paper, PunchedEdge::inner), 14});
}
