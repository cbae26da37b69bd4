#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

#include "cli/commands.h"
#include "cli/input_source.h"
#include "cli/piece_files.h"
#include "cli/printable.h"
#include "cli/read_terms.h"
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

// What a file is, by a key that only its kind has; a piece when there is no such key.
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

// Reads a file, and says in a few words what a valid one contains.
std::string read(const Source& source, Kind kind, Diagnostics& diagnostics) {
  switch (kind) {
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

bool has_errors(const std::vector<Diagnostic>& all) {
  return std::ranges::any_of(
      all, [](const Diagnostic& one) { return one.severity == Diagnostic::Severity::error; });
}

struct Checked {
  Source source;
  Kind kind;
};

// Checks files one by one, and logs together with the piece or programme that they are of.
class Check {
 public:
  Check(const Request& request, const TypedLine& typed)
      : request_(request), typed_(typed), templates_(request.templates) {
    for (Source& source : read_sources(request.files)) {
      const Kind kind = kind_of(source);
      files_.push_back({std::move(source), kind});
    }
  }

  // Throws InputError with everything that is wrong, after a line for each valid file.
  void run() {
    compare();
    for (const Checked& file : files_) {
      Diagnostics alone;
      std::string holds = read(file.source, file.kind, alone);
      if (is_printed(file.kind)) name_unprintable(typefaces(), file.source, alone);
      const bool together = compared_ && file.kind == Kind::log;
      const std::vector<Diagnostic> said = together ? found_in(file.source) : alone.all();
      if (has_errors(said)) {
        errors_.insert(errors_.end(), said.begin(), said.end());
        continue;
      }
      if (together) holds += " that agrees with " + played()->source.name();
      say_all(said);
      say_out(fmt::format("{}: OK, {}\n", file.source.name(), holds));
    }
    if (!errors_.empty()) throw InputError(errors_);
  }

 private:
  static bool is_printed(Kind kind) {
    return kind == Kind::piece || kind == Kind::programme || kind == Kind::words;
  }

  // Loaded when they are needed: a log can be checked without them.
  const Typefaces& typefaces() {
    if (!typefaces_) typefaces_.emplace();
    return *typefaces_;
  }

  // The one programme, or else the one piece, that logs are compared with; nullptr where there is
  // none or more than one.
  const Checked* played() const {
    for (const Kind kind : {Kind::programme, Kind::piece}) {
      const auto is_kind = [&](const Checked& file) { return file.kind == kind; };
      const auto first = std::ranges::find_if(files_, is_kind);
      if (first == files_.end()) continue;
      return std::ranges::count_if(files_, is_kind) == 1 ? &*first : nullptr;
    }
    return nullptr;
  }

  // Reads the logs as `print` would. When the pieces or a log cannot be read, each file is checked
  // on its own, which reports what is wrong.
  void compare() {
    const Checked* piece = played();
    std::vector<Source> sources;
    for (const Checked& file : files_)
      if (file.kind == Kind::log) sources.push_back(file.source);
    if (!piece || sources.empty()) return;
    try {
      const PieceFiles files(piece->source);
      const std::vector<Log> logs = read_logs(sources, found_);
      if (!dates_are_known(request_, files, logs)) {
        say_all({not_compared(sources.front(), *piece)});
        return;
      }
      compare_logs(request_, files, read_terms_method(request_, typed_, templates_), logs, found_);
      compared_ = true;
    } catch (const InputError& error) {
      for (const Diagnostic& one : error.diagnostics())
        if (!is_checked(one.file)) errors_.push_back(one);
    }
  }

  bool is_checked(const std::string& name) const {
    return std::ranges::any_of(files_,
                               [&](const Checked& file) { return file.source.name() == name; });
  }

  static Diagnostic not_compared(const Source& log, const Checked& piece) {
    Diagnostics diagnostics;
    diagnostics.warning(log, {1, 1},
                        fmt::format("not compared with {}: the date of the workbook is not known",
                                    piece.source.name()),
                        "write it in the line of the edition, as in - {edition: 1, from: "
                        "2027-01-04, by: 2027-03-20}, or add --by to the command");
    return diagnostics.all().front();
  }

  // What the comparison found in one log, in its order.
  std::vector<Diagnostic> found_in(const Source& log) const {
    Diagnostics of_log;
    for (const Diagnostic& one : found_.all())
      if (one.file == log.name()) of_log.add(one);
    of_log.sort_by_place();
    return of_log.all();
  }

  const Request& request_;
  const TypedLine& typed_;
  Templates templates_;
  std::optional<Typefaces> typefaces_;
  std::vector<Checked> files_;
  Diagnostics found_;      // when the logs were compared with the pieces
  bool compared_ = false;  // otherwise each log was checked by itself
  std::vector<Diagnostic> errors_;
};

}  // namespace

int check_files(const Request& request, const TypedLine& typed) {
  Check(request, typed).run();
  return 0;
}

}  // namespace cahier
