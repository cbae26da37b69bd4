// A file that a command writes, and what it must not overwrite.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/inputs.h"
#include "cli/request.h"
#include "files/atomic_file.h"
#include "text/source.h"

namespace cahier {

// What an existing file may be replaced for without --replace.
enum class Replaces { own_pdf, own_text, nothing };

class Output {
 public:
  // `inputs` are the paths of all files that the command reads. Throws FileError, at once and not
  // after a long plan, when the file must not be written: it is an input by whatever name or link,
  // it is write-protected, it is a link to nothing; and without --replace when it is neither new
  // nor made by this program, or has other hard links. A device or a pipe is always written to.
  // Where a `packet` is named, neither is a workbook of another packet replaced without --replace.
  Output(std::string path, Replaces replaces, bool replace, std::vector<std::string> inputs,
         std::string packet = {});

  // Writes `bytes`, but not under the path yet. Looks once more at what is there. Throws FileError.
  void write(const std::string& bytes);
  // Puts what was written in its place. What there is to say is said before: where that fails,
  // nothing is replaced. Throws FileError. REQUIRES: write() was called.
  void commit() { file_->commit(); }

 private:
  Existing check() const;

  std::string path_;
  Replaces replaces_;
  bool replace_;
  std::vector<std::string> inputs_;
  std::string packet_;
  std::optional<PendingFile> file_;
};

// True for "-" and the system's own name of standard output.
bool is_standard_output(const std::string& path);

// Every path that a request for a plan reads: pieces, programmes and scores, logs, files of
// --templates.
std::vector<std::string> input_paths(const Request& request, const Inputs& inputs);

}  // namespace cahier
