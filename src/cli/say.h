// Output to the terminal.
#pragma once

#include <exception>
#include <string>
#include <vector>

#include "text/errors.h"

namespace cahier {

// Nobody reads standard output any more: the program ends without a word, as filters do.
class NobodyReads : public std::exception {};

// Makes sure that a file which is opened never takes the place of a standard stream that was closed
// when the program began. REQUIRES: called before anything is opened.
void keep_closed_streams();

// To standard output. Throws FileError when it cannot be written (a full disk, a closed file),
// NobodyReads when it is a pipe without a reader and SIGPIPE is ignored.
void say_out(const std::string& text);

// The same for text that a person reads on a terminal: without control characters.
void say_text(const std::string& text);

// To standard error, without control characters. Where that is full or closed there is nobody to be
// told.
void say_err(const std::string& text);

// Writes the messages to standard error; of many of one kind only the first ones, and how many more
// there are.
void say_all(const std::vector<Diagnostic>& diagnostics);

}  // namespace cahier
