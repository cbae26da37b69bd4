#include "targets.h"

#include <sstream>
#include <stdexcept>

#include "cli/request.h"
#include "inputs/read_programme.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "piece/read_piece.h"
#include "plan/search/planner.h"
#include "plan/search/remedies.h"
#include "practice/method.h"
#include "report/plan_json.h"
#include "report/plan_text.h"
#include "text/errors.h"
#include "text/templates.h"
#include "text/words.h"
#include "workbook/packet.h"
#include "workbook/workbook.h"

namespace fuzz {
namespace {

using namespace cahier;

constexpr int kBarsPlanned = 48;  // longer ones are read but not planned, to keep the fuzz quick

void require_words(const Diagnostics& diagnostics) {
  for (const Diagnostic& each : diagnostics.all()) {
    const std::string text = compose(each);
    if (each.message.empty() || text.find('\n') == std::string::npos)
      throw std::logic_error("a refusal that says nothing");
    if (text.size() > 20000) throw std::logic_error("a refusal without end");
  }
}

// Reads the input; true when it was sound.
template <typename Read>
bool reads(const std::string& input, Read read) {
  Diagnostics diagnostics;
  const Source source("input.yaml", input);
  read(source, diagnostics);
  require_words(diagnostics);
  return !diagnostics.has_errors();
}

Method steady() {
  Diagnostics diagnostics;
  return read_method(Templates().read("methods", "steady"), "steady", diagnostics);
}

void plan_for(const Piece& piece, const Method& method) {
  static const Date from = *parse_date("2027-01-04");
  const Date by = from + days{30 + piece.bars};
  const Terms terms = settle(from, by, piece.practice, method);
  const Plan plan = make_plan({piece}, terms);
  plan_json(plan);
  plan_text(plan, english_words(), true, true);
}

void take_piece(const std::string& input) {
  static const Method method = steady();
  std::optional<Piece> piece;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    piece = read_piece(source, diagnostics);
  });
  if (sound != piece.has_value()) throw std::logic_error("a piece and its errors disagree");
  if (piece && piece->bars <= kBarsPlanned) plan_for(*piece, method);
}

void take_programme(const std::string& input) {
  reads(input, [](const Source& source, Diagnostics& diagnostics) {
    read_programme(source, diagnostics);
  });
}

void take_method(const std::string& input) {
  Method method;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    method = read_method(source, "input", diagnostics);
  });
  if (!sound) return;
  Piece piece;
  piece.title = "Fuzz";
  piece.bars = 11;
  piece.level = 4;
  plan_for(piece, method);
}

// A log beside a piece of 24 bars; a sound one all the way to the next plan.
void take_log(const std::string& input) {
  static const Method method = steady();
  Piece piece;
  piece.title = "Fuzz";
  piece.bars = 24;
  Terms terms = settle(*parse_date("2027-03-01"), *parse_date("2027-04-01"), {}, method);
  const auto read = [&](const Source& source, Diagnostics& diagnostics) {
    const auto log = read_log(source, diagnostics);
    if (log) terms.record = record_of({*log}, {piece}, terms, diagnostics);
  };
  if (!reads(input, read)) return;
  Date last{};
  for (const Done& done : terms.record.done) {
    const bool inside = BarRange{1, 24}.contains(done.bars) && done.date < terms.from;
    if (!inside || done.date < last) throw std::logic_error("a record that cannot be");
    last = done.date;
  }
  plan_json(make_plan({piece}, terms));
}

void take_packet(const std::string& input) {
  reads(input,
        [](const Source& source, Diagnostics& diagnostics) { read_packet(source, diagnostics); });
}

void take_words(const std::string& input) {
  reads(input, [](const Source& source, Diagnostics& diagnostics) {
    const Words words = read_words(source, diagnostics);
    if (diagnostics.has_errors()) return;
    Piece piece;
    piece.title = "Fuzz";
    piece.bars = 6;
    const Terms terms = settle(*parse_date("2027-01-04"), *parse_date("2027-01-30"), {}, steady());
    plan_text(make_plan({piece}, terms), words, true, true);
  });
}

// One argument a line.
void take_arguments(const std::string& input) {
  std::vector<std::string> arguments;
  std::istringstream stream(input);
  for (std::string line; std::getline(stream, line);) arguments.push_back(line);
  const TypedLine typed(arguments);
  try {
    parse_command_line(arguments, typed);
  } catch (const InputError& error) {
    if (error.diagnostics().empty()) throw std::logic_error("a refusal that says nothing");
    for (const Diagnostic& each : error.diagnostics()) compose(each);
  }
}

// A piece that is sound, all the way to the PDF.
void take_print(const std::string& input) {
  static const Typefaces typefaces;
  static const Method method = steady();
  Diagnostics diagnostics;
  const auto piece = read_piece(Source("input.yaml", input), diagnostics);
  if (!piece || piece->bars > kBarsPlanned) return;
  const Terms terms =
      settle(*parse_date("2027-01-04"), *parse_date("2027-03-01"), piece->practice, method);
  Diagnostics ignored;
  const Packet packet = read_packet(Templates().read("packets", "full"), ignored);
  const Plan plan = make_plan({*piece}, terms);
  print_book(typefaces, plan, packet, english_words(), Print{kA4, 8, true});
}

template <void (*take)(const std::string&)>
void refusing(const std::string& input) {
  try {
    take(input);
  } catch (const InputError&) {
  } catch (const FileError&) {
  }
}

}  // namespace

const std::vector<Target>& targets() {
  static const std::vector<Target> all = {
      {"piece", refusing<take_piece>},   {"programme", refusing<take_programme>},
      {"method", refusing<take_method>}, {"packet", refusing<take_packet>},
      {"words", refusing<take_words>},   {"arguments", refusing<take_arguments>},
      {"print", refusing<take_print>},   {"log", refusing<take_log>}};
  return all;
}

}  // namespace fuzz
