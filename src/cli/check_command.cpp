#include <fmt/format.h>

#include <set>

#include "cli/commands.h"
#include "cli/say.h"
#include "inputs/read_programme.h"
#include "log/read_log.h"
#include "piece/read_piece.h"
#include "practice/method.h"
#include "text/errors.h"
#include "text/templates.h"
#include "text/words.h"
#include "text/yaml.h"
#include "workbook/packet.h"

namespace cahier {
namespace {

// What a file is, by a key that only its kind has; a piece when nothing tells.
enum class Kind { piece, programme, log, method, packet, words };

Kind kind_of(const Source& source) {
  Diagnostics ignored;
  const auto root = parse_yaml(source, ignored);
  if (!root || root->find("title")) return Kind::piece;
  if (is_log(*root)) return Kind::log;
  if (is_programme(*root)) return Kind::programme;
  if (root->find("sheets")) return Kind::packet;
  if (root->find("repetitions") || root->find("spacing")) return Kind::method;
  if (root->find("weekdays") || root->find("months")) return Kind::words;
  return Kind::piece;
}

std::string counted(std::size_t number, std::string_view thing) {
  return fmt::format("{} {}{}", number, thing, number == 1 ? "" : "s");
}

std::string sound(const Piece& piece) {
  return counted(static_cast<std::size_t>(piece.bars), "bar") + " in " +
         (piece.sections.empty() ? "no named sections" : counted(piece.sections.size(), "section"));
}

std::size_t days_of(const Log& log) {
  std::set<Date> dates;
  for (const LoggedDay& day : log.days) dates.insert(day.date.value);
  return dates.size();
}

// One line on what a sound file holds.
std::string read(const Source& source, Diagnostics& diagnostics) {
  switch (kind_of(source)) {
    case Kind::piece: {
      const auto piece = read_piece(source, diagnostics);
      return piece ? sound(*piece) : "";
    }
    case Kind::programme: {
      const auto programme = read_programme(source, diagnostics);
      return programme ? "a programme of " + counted(programme->pieces.size(), "piece") : "";
    }
    case Kind::log: {
      const auto log = read_log(source, diagnostics);
      return log ? "a log of " + counted(days_of(*log), "day") : "";
    }
    case Kind::method:
      read_method(source, source.name(), diagnostics);
      return "a method";
    case Kind::packet:
      return "a packet of " + counted(read_packet(source, diagnostics).sheets.size(), "sheet");
    case Kind::words:
      read_words(source, diagnostics);
      return "words";
  }
  return "";
}

}  // namespace

int check_files(const Request& request) {
  const Templates there(request.templates);  // a folder that is not there is an error here too
  std::vector<Diagnostic> errors;
  for (const std::string& path : request.files) {
    const Source source = Source::from_file(path);
    Diagnostics diagnostics;
    const std::string holds = read(source, diagnostics);
    if (diagnostics.has_errors()) {
      errors.insert(errors.end(), diagnostics.all().begin(), diagnostics.all().end());
    } else {
      say_all(diagnostics.all());
      say_out(fmt::format("{}: sound, {}\n", path, holds));
    }
  }
  if (!errors.empty()) throw InputError(errors);
  return 0;
}

}  // namespace cahier
