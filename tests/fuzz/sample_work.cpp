#include "sample_work.h"
#include "practice/read_method.h"

#include <stdexcept>

#include "cli/printable.h"
#include "plan/search/planner.h"
#include "report/plan_json.h"
#include "report/plan_text.h"
#include "text/templates.h"
#include "workbook/too_many_pages.h"
#include "workbook/workbook.h"

namespace fuzz {

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces faces;
  return faces;
}

}  // namespace

Date first_day() { return *parse_date("2027-01-04"); }

Method steady() {
  Diagnostics diagnostics;
  return read_method(Templates().read("methods", "steady"), "steady", diagnostics);
}

Packet full_packet() {
  Diagnostics diagnostics;
  return read_packet(Templates().read("packets", "full"), diagnostics);
}

Piece piece_of(int bars) {
  Piece piece;
  piece.title = "Fuzz";
  piece.bars = bars;
  return piece;
}

Plan plan_of(const Piece& piece, const Method& method) {
  const Date by = first_day() + days{21 + piece.bars};
  return make_plan({piece}, settle(first_day(), by, piece.practice, method));
}

void tell(const Plan& plan, const Words& words) {
  plan_json(plan);
  plan_text(plan, words, true, true);
}

void print(const Plan& plan, const Packet& packet, const Words& words) {
  try {
    print_book(typefaces(), plan, packet, words, Print{kA4, 8, true});
  } catch (const TooManyPages&) {
    // Refused in words.
  }
}

void require_typefaces(const Source& source, Diagnostics& diagnostics) {
  name_unprintable(typefaces(), source, diagnostics);
}

void require_words(const Diagnostics& diagnostics) {
  for (const Diagnostic& each : diagnostics.all()) {
    const std::string text = compose(each);
    if (each.message.empty() || text.find('\n') == std::string::npos)
      throw std::logic_error("a refusal that says nothing");
    if (text.size() > 20000) throw std::logic_error("a refusal without end");
  }
}

}  // namespace fuzz
