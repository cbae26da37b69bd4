#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

#include "cli/commands.h"
#include "cli/file_kind.h"
#include "cli/input_source.h"
#include "cli/piece_files.h"
#include "cli/printable.h"
#include "cli/read_template.h"
#include "cli/read_terms.h"
#include "cli/say.h"
#include "cli/unfit.h"
#include "log/read_log.h"
#include "plan/search/planner.h"
#include "practice/read_method.h"
#include "text/errors.h"
#include "text/templates.h"
#include "text/terminal.h"
#include "text/words.h"
#include "workbook/packet.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

constexpr Date kSomeMonday = std::chrono::sys_days(std::chrono::January / 4 / 2027);
constexpr int kMostBarsDrawn = 1000;
constexpr std::size_t kMostDaysDrawn = 400;

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

bool has_errors(const std::vector<Diagnostic>& all) {
  return std::ranges::any_of(
      all, [](const Diagnostic& one) { return one.severity == Diagnostic::Severity::error; });
}

bool is_same(const Diagnostic& one, const Diagnostic& other) {
  return one.file == other.file && one.at.line == other.at.line &&
         one.at.column == other.at.column && one.message == other.message;
}

struct Checked {
  Source source;
  FileKind kind;
};

// Checks files one by one, and logs together with the piece or programme that they are of, each by
// what `print` itself reads them with. Goes on after what is wrong, to the end.
class Check {
 public:
  Check(const Request& request, const TypedLine& typed) : request_(request), typed_(typed) {
    reach([&] { templates_.emplace(request.templates); });
    for (const std::string& path : request.files) reach([&] { add(read_source(path)); });
  }

  // Says what each valid file holds, then which cannot be read. Throws InputError with everything
  // else that is wrong.
  void run() {
    check_templates();
    compare();
    for (const Checked& file : files_) check(file);
    if (errors_.empty() && unread_.empty() && templates_)
      for (const Checked& file : files_)
        if (file.kind == FileKind::piece || file.kind == FileKind::programme)
          reach([&] { try_print(file); });
    for (const std::string& one : unread_) say_err(line_for_terminal(one) + "\n");
    if (!errors_.empty()) throw InputError(errors_);
  }

  bool all_were_read() const { return unread_.empty(); }

 private:
  // What `step` throws is noted, and the check goes on.
  template <typename Step>
  void reach(Step step) {
    try {
      step();
    } catch (const InputError& error) {
      note(error.diagnostics());
    } catch (const FileError& error) {
      note_unread(error.what());
    }
  }

  void add(Source source) {
    const FileKind kind = kind_of(source);
    files_.push_back({std::move(source), kind});
  }

  // A piece may be read for itself and for its programme; each problem is named once.
  void note(const std::vector<Diagnostic>& all) {
    for (const Diagnostic& one : all)
      if (std::ranges::none_of(errors_, [&](const Diagnostic& old) { return is_same(old, one); }))
        errors_.push_back(one);
  }

  void note_unread(const std::string& what) {
    if (std::ranges::find(unread_, what) == unread_.end()) unread_.push_back(what);
  }

  // The templates that `print` would use.
  void check_templates() {
    if (!templates_) return;
    reach([&] { read_template(*templates_, "words", request_.language, read_words); });
    reach([&] { read_template(*templates_, "packets", request_.packet, read_packet); });
    reach([&] { read_terms_method(request_, typed_, *templates_); });
    if (request_.templates.empty()) return;
    reach([&] { refuse_unprintable(typefaces(), {templates_->read("words", request_.language)}); });
  }

  void check(const Checked& file) {
    Diagnostics alone;
    std::vector<std::string> unread;
    std::string holds = read(file, alone, unread);
    for (const std::string& one : unread) note_unread(one);
    const bool together = compared_ && file.kind == FileKind::log;
    const std::vector<Diagnostic> said = together ? found_in(file.source) : alone.all();
    if (has_errors(said)) return note(said);
    if (!unread.empty()) return;
    if (together) holds += " that agrees with " + played()->source.name();
    say_all(said);
    say_text(fmt::format("{}: OK, {}\n", line_for_terminal(file.source.name()), holds));
  }

  // Reads a file, and says in a few words what a valid one contains.
  std::string read(const Checked& file, Diagnostics& diagnostics,
                   std::vector<std::string>& unread) {
    const Source& source = file.source;
    switch (file.kind) {
      case FileKind::piece:
      case FileKind::programme:
      case FileKind::stranger: {
        if (!admit(source, "a piece, a programme, a log or a template", diagnostics)) return "";
        const PieceFiles files = PieceFiles::read(source, diagnostics, unread);
        for (const Source& one : files.sources) name_unprintable(typefaces(), one, diagnostics);
        if (file.kind == FileKind::programme)
          return "a programme of " + counted(files.pieces.size(), "piece");
        return files.pieces.empty() ? "" : sound(files.pieces.front());
      }
      case FileKind::studio:  // checked by itself, with the files of its students
        return "";
      case FileKind::log: {
        const auto log = read_log(source, diagnostics);
        return log ? "a log of " + counted(days_of(*log), "day") : "";
      }
      case FileKind::method:
        read_method(source, source.name(), diagnostics);
        return "a method";
      case FileKind::packet:
        return "a packet of " + counted(read_packet(source, diagnostics).sheets.size(), "sheet");
      case FileKind::words:
        read_words(source, diagnostics);
        name_unprintable(typefaces(), source, diagnostics);
        return "words";
    }
    return "";
  }

  // Draws the workbook, so that a text too long for its page is found before the day it is wanted.
  // Where no date is known, ten weeks stand for it.
  void try_print(const Checked& file) {
    const Source language = templates_->read("words", request_.language);
    const Words words = read_checked(language, "words", read_words);
    const PieceFiles files(file.source, &words);
    const Date from = request_.from.value_or(files.occasion.from.value_or(kSomeMonday));
    const Date by = request_.by.value_or(files.occasion.by.value_or(from + days{70}));
    const Method method = read_terms_method(request_, typed_, *templates_);
    const Terms terms = settle(from, by, request_.wishes.over(files.practice), method);
    if (!is_drawn(files, terms)) return;
    Plan plan = make_plan(files.pieces, terms);
    plan.programme = files.title;
    const PrintedBook book = print_book(
        typefaces(), plan, read_template(*templates_, "packets", request_.packet, read_packet),
        words, usual_print(kA4, PunchedEdge::inner));
    std::vector<Source> printed = {language};
    printed.insert(printed.end(), files.sources.begin(), files.sources.end());
    refuse_unfit(book.unfit, printed);
  }

  // A long piece takes too long to draw for a mere check; without a practice day there is no plan.
  static bool is_drawn(const PieceFiles& files, const Terms& terms) {
    int bars = 0;
    for (const Piece& piece : files.pieces) bars += piece.bars;
    const std::vector<Day> all = terms.by > terms.from ? calendar(terms) : std::vector<Day>{};
    return bars <= kMostBarsDrawn && all.size() <= kMostDaysDrawn &&
           std::ranges::any_of(all, [](const Day& day) { return day.allowance > 0; });
  }

  // Loaded when they are needed: a log can be checked without them.
  const Typefaces& typefaces() {
    if (!typefaces_) typefaces_.emplace();
    return *typefaces_;
  }

  // The one programme, or else the one piece, that logs are compared with; nullptr where there is
  // none or more than one.
  const Checked* played() const {
    for (const FileKind kind : {FileKind::programme, FileKind::piece}) {
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
      if (file.kind == FileKind::log) sources.push_back(file.source);
    if (!piece || sources.empty() || !templates_) return;
    try {
      const PieceFiles files(piece->source);
      const std::vector<Log> logs = read_logs(sources, found_);
      if (!dates_are_known(request_, files, logs)) {
        say_all({not_compared(sources.front(), *piece)});
        return;
      }
      compare_logs(request_, files, read_terms_method(request_, typed_, *templates_), logs, found_);
      compared_ = true;
    } catch (const InputError& error) {
      for (const Diagnostic& one : error.diagnostics())
        if (!is_checked(one.file)) note({one});
    } catch (const FileError& error) {
      note_unread(error.what());
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
  std::optional<Templates> templates_;  // none when their folder cannot be used
  std::optional<Typefaces> typefaces_;
  std::vector<Checked> files_;
  Diagnostics found_;      // when the logs were compared with the pieces
  bool compared_ = false;  // otherwise each log was checked by itself
  std::vector<Diagnostic> errors_;
  std::vector<std::string> unread_;  // what was said of files that cannot be read
};

}  // namespace

int check_files(const Request& request, const TypedLine& typed) {
  Check check(request, typed);
  check.run();
  return check.all_were_read() ? 0 : 3;
}

}  // namespace cahier
