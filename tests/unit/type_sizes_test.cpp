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

const std::vector<SizeOfPrint>& sizes_of_print() {
  static const std::vector<SizeOfPrint> all = {
      {"A4", usual_print(kA4, PunchedEdge::inner), 9},
      {"Letter", usual_print(kLetter, PunchedEdge::inner), 9},
      {"A5", usual_print(kA5, PunchedEdge::inner), 9},
      {"folded A4", booklet_print(kA4), 9},
      {"folded Letter", booklet_print(kLetter), 9},
      {"A4, clear", clear_print(kA4, PunchedEdge::inner), 12},
      {"Letter, clear", clear_print(kLetter, PunchedEdge::inner), 12},
      {"A4, large", large_print(kA4, PunchedEdge::inner), 14},
      {"Letter, large", large_print(kLetter, PunchedEdge::inner), 14}};
  return all;
}

Packet packet_of(const char* name) {
  Diagnostics diagnostics;
  return read_packet(Templates().read("packets", name), diagnostics);
}

std::vector<DrawnText> texts_of(const Plan& plan, const char* packet, const Print& print) {
  const Packet sheets = packet_of(packet);
  const DrawnBook book =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        return draw_workbook(canvas, plan, sheets, english_words(), print, known);
      });
  std::vector<DrawnText> texts;
  for (const DrawnPage& page : book.canvas->pages())
    for (DrawnText& text : page.texts()) texts.push_back(std::move(text));
  return texts;
}

Plan of_two_pieces() {
  const std::vector<Piece> pieces = {
      sample::piece("{title: \"Sonata in C minor, first movement\", bars: 24, tempo: 96}"),
      sample::piece("{title: Nocturne of the Harbour Lights, bars: 16, tempo: 60}")};
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-02-20"), pieces[0].practice,
                       sample::steady());
  terms.minutes.fill(40);
  return make_plan(pieces, terms);
}

}  // namespace

TEST_CASE("nothing is printed smaller than its size of print promises") {
  for (const Plan& plan : {sample::plan(sample::kLantern), of_two_pieces()})
    for (const SizeOfPrint& size : sizes_of_print())
      for (const char* packet : {"full", "wall"}) {
        INFO(size.name << ", " << packet);
        std::string small;
        for (const DrawnText& text : texts_of(plan, packet, size.print))
          // The bar numbers over staves are engraved, as in a score.
          if (size.print.printed(text.style.size_pt) < size.least - 1e-9 &&
              text.style.face != Face::serif_italic && text.ink.width > 0)
            small += text.text + "\n";
        CHECK(small == "");
      }
}

TEST_CASE("nothing of ours is cut, nor ends in an ellipsis, on any paper") {
  for (const Plan& plan : {sample::plan(sample::kLantern), of_two_pieces()})
    for (const SizeOfPrint& size : sizes_of_print())
      for (const char* packet : {"full", "student", "wall"}) {
        INFO(size.name << ", " << packet);
        std::string cut;
        for (const DrawnText& text : texts_of(plan, packet, size.print))
          if (text.style.cut || text.text.ends_with("…")) cut += text.text + "\n";
        CHECK(cut == "");
      }
}
