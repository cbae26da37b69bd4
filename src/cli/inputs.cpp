#include "cli/inputs.h"

#include "cli/input_source.h"
#include "cli/piece_files.h"
#include "cli/read_template.h"
#include "cli/read_terms.h"
#include "workbook/packet.h"

namespace cahier {

std::optional<Date> earliest_start(const Terms& terms, Date today) {
  if (terms.from < today) return std::nullopt;
  return today;
}

void check_templates(const Request& request, const TypedLine& typed) {
  const Templates templates(request.templates);
  read_template(templates, "words", request.language, read_words);
  read_template(templates, "packets", request.packet, read_packet);
  read_terms_method(request, typed, templates);
}

Inputs read_inputs(const Request& request, const TypedLine& typed, Date today) {
  Templates templates(request.templates);
  const Source language = templates.read("words", request.language);
  Words words = read_checked(language, "words", read_words);
  const Method method = read_terms_method(request, typed, templates);
  PieceFiles files(read_sources(request.files), &words);
  Diagnostics diagnostics;
  const std::vector<Log> logs = read_logs(read_sources(request.logs), diagnostics);
  Terms terms = read_terms(request, typed, today, files, method, logs, diagnostics);
  const Occasion occasion = occasion_of(request, files);
  PrintedNames names{occasion.student, occasion.teacher,
                     request.studio ? request.studio->note : ""};
  std::vector<Source> printed = {language};
  if (request.studio) printed.push_back(*request.studio->source);
  printed.insert(printed.end(), files.sources.begin(), files.sources.end());
  std::vector<std::string> piece_files;
  for (const Source& source : files.sources) piece_files.push_back(source.name());
  std::vector<Diagnostic> warnings = files.warnings();
  warnings.insert(warnings.end(), diagnostics.all().begin(), diagnostics.all().end());
  return {std::move(templates),   std::move(words),        std::move(files.title),
          std::move(printed),     std::move(files.pieces), std::move(terms),
          std::move(names),       std::move(warnings),     std::move(piece_files),
          std::move(files.scores)};
}

}  // namespace cahier
