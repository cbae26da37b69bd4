// The pieces of a request, and what their files ask for: one piece, or a programme of several.
#pragma once

#include <string>
#include <vector>

#include "piece/occasion.h"
#include "piece/piece.h"
#include "piece/wishes.h"
#include "text/diagnostics.h"
#include "text/source.h"
#include "text/words.h"

namespace cahier {

class PieceFiles {
 public:
  PieceFiles() = default;
  // Reads a piece, or a programme and the files that it names, from the programme's own folder; one
  // from standard input names them from the current folder. Throws InputError with every problem
  // of the files, FileError when one cannot be read.
  // With `words` the pieces know in them how their bars begin, where a score tells it.
  explicit PieceFiles(const Source& source, const Words* words = nullptr);
  // Several pieces are one programme, titled by theirs.
  PieceFiles(const std::vector<Source>& sources, const Words* words);

  // The same for one who goes on to other files: adds every problem to `diagnostics`, and what()
  // of the FileError of each file that cannot be read to `unread`. The result is usable only when
  // neither was added to.
  static PieceFiles read(const Source& source, Diagnostics& diagnostics,
                         std::vector<std::string>& unread);

  const std::vector<Diagnostic>& warnings() const { return diagnostics_.all(); }

  std::string title;                // of the programme; empty for a single piece
  std::vector<Source> sources;      // the programme's and the pieces'
  std::vector<std::string> scores;  // paths of those that pieces name
  // Of the programme, or of a single piece; its `by_at` is a place in the first of the sources.
  Occasion occasion;
  Wishes practice;
  std::vector<Piece> pieces;

 private:
  void add_several(const std::vector<Source>& all, Diagnostics& diagnostics);
  void add(const Source& source, Diagnostics& diagnostics, std::vector<std::string>& unread);
  void add_listed(const Source& programme, const std::string& path, Place at,
                  Diagnostics& diagnostics, std::vector<std::string>& unread);
  void add_piece(const Source& source, Diagnostics& diagnostics);

  const Words* words_ = nullptr;
  Diagnostics diagnostics_;
};

}  // namespace cahier
