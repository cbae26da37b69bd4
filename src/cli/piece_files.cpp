#include "cli/piece_files.h"

#include <fmt/format.h>

#include <filesystem>

#include "cli/file_kind.h"
#include "import/scored_piece.h"
#include "inputs/read_programme.h"
#include "text/errors.h"
#include "text/phrasing.h"

namespace cahier {

PieceFiles::PieceFiles(const Source& source, const Words* words) : words_(words) {
  std::vector<std::string> unread;
  add(source, diagnostics_, unread);
  if (diagnostics_.has_errors()) throw InputError(diagnostics_.all());
  if (!unread.empty()) throw FileError(unread.front());
}

PieceFiles::PieceFiles(const std::vector<Source>& all, const Words* words) : words_(words) {
  std::vector<std::string> unread;
  if (all.size() == 1)
    add(all.front(), diagnostics_, unread);
  else
    add_several(all, diagnostics_);
  if (diagnostics_.has_errors()) throw InputError(diagnostics_.all());
  if (!unread.empty()) throw FileError(unread.front());
}

void PieceFiles::add_several(const std::vector<Source>& all, Diagnostics& diagnostics) {
  std::vector<std::string> titles;
  for (const Source& source : all) {
    if (!admit(source, "a piece", diagnostics)) continue;
    const FileKind kind = kind_of(source);
    if (kind == FileKind::piece || kind == FileKind::stranger)
      add_piece(source, diagnostics);
    else
      diagnostics.error(source, {1, 1}, fmt::format("this is {}, not a piece", called(kind)),
                        "a list of several has pieces only; a programme stands alone");
  }
  for (const Piece& piece : pieces) titles.push_back(piece.title);
  title = list_text(words_ ? *words_ : english_words(), titles);
}

PieceFiles PieceFiles::read(const Source& source, Diagnostics& diagnostics,
                            std::vector<std::string>& unread) {
  PieceFiles files;
  files.add(source, diagnostics, unread);
  return files;
}

void PieceFiles::add(const Source& source, Diagnostics& diagnostics,
                     std::vector<std::string>& unread) {
  if (!admit(source, "a piece or a programme", diagnostics)) return;
  const FileKind kind = kind_of(source);
  if (kind == FileKind::programme) {
    const auto programme = read_programme(source, diagnostics);
    sources.push_back(source);
    if (!programme) return;
    title = programme->title;
    occasion = programme->occasion;
    practice = programme->practice;
    for (const Programme::File& file : programme->pieces)
      add_listed(source, file.path, file.at, diagnostics, unread);
  } else if (kind == FileKind::piece || kind == FileKind::stranger) {
    add_piece(source, diagnostics);
    if (pieces.empty()) return;
    practice = pieces.front().practice;
    occasion = pieces.front().occasion;
  } else {
    diagnostics.error(source, {1, 1},
                      fmt::format("this is {}, not a piece or a programme", called(kind)),
                      kind == FileKind::studio
                          ? "print, plan and check take a studio, by the name of its file; here "
                            "name the piece or the programme of one student"
                          : "name the piece or the programme here");
  }
}

void PieceFiles::add_listed(const Source& programme, const std::string& path, Place at,
                            Diagnostics& diagnostics, std::vector<std::string>& unread) {
  const std::filesystem::path folder = std::filesystem::path(programme.name()).parent_path();
  try {
    const Source source = Source::from_file((folder / path).string());
    if (!admit(source, "a piece", diagnostics)) return;
    const FileKind kind = kind_of(source);
    if (kind == FileKind::piece || kind == FileKind::stranger)
      add_piece(source, diagnostics);
    else
      diagnostics.error(
          programme, at,
          fmt::format("{} is {}, not a piece", path,
                      source.text() == programme.text() ? "this programme itself" : called(kind)),
          "a programme lists the files of pieces");
  } catch (const FileError& error) {
    unread.push_back(error.what());
  }
}

void PieceFiles::add_piece(const Source& source, Diagnostics& diagnostics) {
  sources.push_back(source);
  ScoredPiece read = read_scored_piece(source, words_, diagnostics);
  if (read.piece) pieces.push_back(std::move(*read.piece));
  if (!read.score.empty()) scores.push_back(std::move(read.score));
}

}  // namespace cahier
