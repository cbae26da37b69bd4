#include "targets.h"

#include <sstream>
#include <stdexcept>

#include "cli/request.h"
#include "command_target.h"
#include "import/score_json.h"
#include "import/write_piece.h"
#include "inputs/read_programme.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "piece/read_piece.h"
#include "plan/search/planner.h"
#include "practice/read_method.h"
#include "sample_work.h"
#include "score/read_score.h"
#include "text/errors.h"
#include "text/words.h"
#include "workbook/packet.h"

namespace fuzz {
namespace {

using namespace cahier;

enum class Far { told, printed };

template <Far far>
void carry_on(const Plan& plan) {
  if (far == Far::told)
    tell(plan, english_words());
  else
    print(plan, full_packet(), english_words());
}

template <Far far>
void take_piece(const std::string& input) {
  static const Method method = steady();
  std::optional<Piece> piece;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    piece = read_piece(source, diagnostics);
    if (piece.has_value() == diagnostics.has_errors())
      throw std::logic_error("a piece and its errors disagree");
  });
  const int most = far == Far::told ? kMostBars : kMostBarsPrinted;
  if (sound && piece->bars <= most) carry_on<far>(plan_of(*piece, method));
}

// Two pieces under the dates, minutes and days off that the programme asks for.
template <Far far>
void take_programme(const std::string& input) {
  static const Method method = steady();
  std::optional<Programme> programme;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    programme = read_programme(source, diagnostics);
  });
  if (!sound) return;
  const Date from = programme->occasion.from.value_or(first_day());
  const Date by = programme->occasion.by.value_or(from + days{30});
  if (from >= by || by > from + days{kMostDays}) return;
  carry_on<far>(
      make_plan({piece_of(8), piece_of(4)}, settle(from, by, programme->practice, method)));
}

template <Far far>
void take_method(const std::string& input) {
  Method method;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    method = read_method(source, "input", diagnostics);
  });
  if (!sound) return;
  Piece piece = piece_of(11);
  piece.level = 4;
  carry_on<far>(plan_of(piece, method));
}

// A log beside a piece of 24 bars; a sound one all the way to the next plan.
template <Far far>
void take_log(const std::string& input) {
  static const Method method = steady();
  const Piece piece = piece_of(24);
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
  carry_on<far>(make_plan({piece}, terms));
}

template <Far far>
void take_packet(const std::string& input) {
  static const Plan plan = plan_of(piece_of(8), steady());
  Packet packet;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    packet = read_packet(source, diagnostics);
  });
  if (sound && far == Far::printed) print(plan, packet, english_words());
}

template <Far far>
void take_words(const std::string& input) {
  static const Plan plan = plan_of(piece_of(6), steady());
  std::optional<Words> words;
  const bool sound = reads(input, [&](const Source& source, Diagnostics& diagnostics) {
    words.emplace(read_words(source, diagnostics));
  });
  if (!sound) return;
  if (far == Far::told)
    tell(plan, *words);
  else
    print(plan, full_packet(), *words);
}

// A score, compressed or not, all the way to its JSON and to a piece file, which must be a sound
// one.
void take_score(const std::string& input) {
  Score score;
  try {
    score = read_score("input", input, "");
  } catch (const InputError& error) {
    if (error.diagnostics().size() != 1) throw std::logic_error("not one refusal");
    if (compose(error.diagnostics().front()).find("input:") != 0)
      throw std::logic_error("a refusal that does not name the file");
    throw;
  }
  score_json(score);
  Diagnostics diagnostics;
  if (!read_piece(Source("piece.yaml", write_piece(score)), diagnostics))
    throw std::logic_error("a piece file that cannot be read: " +
                           compose(diagnostics.all().front()));
}

// One argument a line.
void take_arguments(const std::string& input) {
  const std::vector<std::string> arguments = lines_of(input);
  const TypedLine typed(arguments);
  try {
    parse_command_line(arguments, typed);
  } catch (const InputError& error) {
    if (error.diagnostics().empty()) throw std::logic_error("a refusal that says nothing");
    for (const Diagnostic& each : error.diagnostics()) compose(each);
  }
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
      {"piece", "piece", false, refusing<take_piece<Far::told>>},
      {"programme", "programme", false, refusing<take_programme<Far::told>>},
      {"method", "method", false, refusing<take_method<Far::told>>},
      {"log", "log", false, refusing<take_log<Far::told>>},
      {"packet", "packet", false, refusing<take_packet<Far::told>>},
      {"words", "words", false, refusing<take_words<Far::told>>},
      {"score", "score", false, refusing<take_score>},
      {"archive", "archive", false, refusing<take_score>},
      {"arguments", "arguments", false, refusing<take_arguments>},
      {"printed-piece", "piece", true, refusing<take_piece<Far::printed>>},
      {"printed-programme", "programme", true, refusing<take_programme<Far::printed>>},
      {"printed-method", "method", true, refusing<take_method<Far::printed>>},
      {"printed-log", "log", true, refusing<take_log<Far::printed>>},
      {"printed-packet", "packet", true, refusing<take_packet<Far::printed>>},
      {"printed-words", "words", true, refusing<take_words<Far::printed>>},
      {"command", "arguments", true, run_command_line}};
  return all;
}

}  // namespace fuzz
