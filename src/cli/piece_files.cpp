#include "cli/piece_files.h"

#include <filesystem>

#include "inputs/read_programme.h"
#include "piece/read_piece.h"
#include "text/errors.h"

namespace cahier {

PieceFiles::PieceFiles(const Source& source) {
  Diagnostics unread;
  const auto root = parse_yaml(source, unread);
  if (!root || !is_programme(*root)) {
    add_piece(source);
    if (!pieces.empty()) practice = pieces.front().practice;
  } else if (const auto programme = read_programme(source, diagnostics_)) {
    sources.push_back(source);
    title = programme->title;
    by = programme->by;
    from = programme->from;
    practice = programme->practice;
    const std::filesystem::path folder = std::filesystem::path(source.name()).parent_path();
    for (const Programme::File& file : programme->pieces)
      add_piece(Source::from_file((folder / file.path).string()));
  }
  if (diagnostics_.has_errors()) throw InputError(diagnostics_.all());
}

void PieceFiles::add_piece(const Source& source) {
  sources.push_back(source);
  if (auto piece = read_piece(source, diagnostics_)) pieces.push_back(std::move(*piece));
}

}  // namespace cahier
