#include "cli/inputs.h"

#include <algorithm>

#include "piece/read_piece.h"
#include "practice/method.h"

namespace cahier {
namespace {

constexpr int kMostDays = 3700;  // about ten years

Method read_terms_method(const Request& request, const Templates& templates) {
  Method method = read_template(templates, "methods", request.method,
                                [&](const Source& source, Diagnostics& diagnostics) {
                                  return read_method(source, request.method, diagnostics);
                                });
  if (request.repetitions) method.repetitions = *request.repetitions;
  return method;
}

void check_dates(const Request& request, const TypedLine& typed, const Terms& terms) {
  Diagnostics diagnostics;
  const auto refuse = [&](std::string message, std::string hint) {
    diagnostics.error(typed.source(), typed.value_of("--by"), std::move(message), std::move(hint));
    throw InputError(diagnostics.all());
  };
  if (terms.by <= terms.from)
    refuse("the date " + iso(terms.by) + " is not after the first day, " + iso(terms.from),
           request.from ? "choose a later --by, or an earlier --from"
                        : "choose a later --by; without --from, practice begins today");
  if ((terms.by - terms.from).count() > kMostDays)
    refuse("the date is more than ten years after the first day", "plan nearer to the date");
  const std::vector<Day> days_of_plan = calendar(terms);
  if (std::none_of(days_of_plan.begin(), days_of_plan.end(), [](const Day& day) { return day.allowance > 0; }))
    refuse("there is no practice day between " + iso(terms.from) + " and " + iso(terms.by),
           "allow some days: see --minutes and --days-off, or minutes: and days off: in the piece file");
}

}  // namespace

Inputs read_inputs(const Request& request, const TypedLine& typed, Date today) {
  Templates templates(request.templates);
  Words words = read_template(templates, "words", request.language, read_words);
  const Method method = read_terms_method(request, templates);
  Inputs inputs{std::move(templates), std::move(words), {}, {}, {}};

  const Source source = Source::from_file(request.files.front());
  Diagnostics diagnostics;
  std::optional<Piece> piece = read_piece(source, diagnostics);
  if (!piece) throw InputError(diagnostics.all());
  inputs.warnings = diagnostics.all();
  const Wishes wishes = request.wishes.over(piece->practice);
  inputs.pieces.push_back(std::move(*piece));
  inputs.terms = settle(request.from.value_or(today), *request.by, wishes, method);
  check_dates(request, typed, inputs.terms);
  return inputs;
}

}  // namespace cahier
