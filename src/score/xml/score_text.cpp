#include "score/xml/score_text.h"

#include <algorithm>
#include <string_view>

#include "text/errors.h"
#include "text/utf8.h"

namespace cahier {

ScoreText::ScoreText(std::string file, std::string inside, std::string text)
    : file_(std::move(file)), inside_(std::move(inside)), text_(std::move(text)) {}

Diagnostic ScoreText::error(std::size_t offset, std::string message, std::string hint,
                            std::string where) const {
  constexpr std::size_t kQuoted = 400;  // bytes each way: a score may be one line of a megabyte
  const std::string_view all = text_;
  offset = std::min(offset, all.size());
  const std::string_view before = all.substr(0, offset);
  const std::size_t end_before = before.rfind('\n');
  const std::size_t start = end_before == std::string_view::npos ? 0 : end_before + 1;

  Diagnostic found;
  found.file = file_;
  found.at.line = static_cast<int>(std::ranges::count(before, '\n')) + 1;
  found.at.column = static_cast<int>(count_characters(before.substr(start))) + 1;
  found.message = std::move(message);
  found.hint = std::move(hint);
  if (!where.empty()) found.chain.push_back(std::move(where));
  if (!inside_.empty()) found.chain.push_back("in " + inside_ + ", which it holds");
  if (!quotable_) return found;
  const std::size_t end = std::min(all.find_first_of("\r\n", offset), all.size());
  const std::size_t first = std::max(start, offset > kQuoted ? offset - kQuoted : 0);
  found.source_line = all.substr(first, std::min(end - first, 2 * kQuoted));
  found.caret_column = static_cast<int>(count_characters(all.substr(first, offset - first))) + 1;
  return found;
}

void ScoreText::refuse(std::size_t offset, std::string message, std::string hint,
                       std::string where) const {
  throw InputError({error(offset, std::move(message), std::move(hint), std::move(where))});
}

void refuse_score_file(const std::string& file, std::string message, std::string hint) {
  Diagnostic found;
  found.file = file;
  found.message = std::move(message);
  found.hint = std::move(hint);
  throw InputError({found});
}

}  // namespace cahier
