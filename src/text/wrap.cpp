#include "text/wrap.h"

#include "text/line_breaks.h"
#include "text/utf8.h"

namespace cahier {
namespace {

int width_of(std::string_view text) { return static_cast<int>(count_characters(text)); }

class Lines {
 public:
  Lines(std::string_view lead, int hang, int width)
      : line_(lead), used_(width_of(lead)), hang_(hang), width_(width) {}

  bool fits(int characters) const { return used_ + characters <= width_; }
  bool could_fit(int characters) const { return hang_ + characters <= width_; }

  void add(std::string_view text) {
    line_ += text;
    used_ += width_of(text);
    begun_ = true;
  }

  void next_line() {
    if (!begun_) return;
    text_ += trimmed() + "\n";
    line_ = std::string(hang_, ' ');
    used_ = hang_;
    begun_ = false;
  }

  std::string finish() { return text_ + trimmed() + "\n"; }

 private:
  std::string trimmed() const { return line_.substr(0, line_.find_last_not_of(' ') + 1); }

  std::string text_;
  std::string line_;
  int used_;
  int hang_;
  int width_;
  bool begun_ = false;
};

std::string_view without_end_space(std::string_view text) {
  return text.substr(0, text.find_last_not_of(' ') + 1);
}

// Broken at those spaces only at which a line may end.
std::vector<std::string> words_of(std::string_view text) {
  const std::vector<char32_t> characters = decode_utf8(text);
  std::vector<std::string> words(1);
  for (std::size_t at = 0; at < characters.size(); ++at)
    if (characters[at] == U' ' && !begins_badly(characters, at))
      words.emplace_back();
    else
      words.back() += encode_utf8(characters[at]);
  return words;
}

void add_by_words(Lines& lines, std::string_view item, int end) {
  const std::vector<std::string> words = words_of(item);
  for (const std::string& word : words) {
    const bool is_last = &word == &words.back();
    if (!lines.fits(width_of(word) + (is_last ? end : 0))) lines.next_line();
    lines.add(word);
    if (!is_last) lines.add(" ");
  }
}

}  // namespace

std::string wrap(std::string_view lead, const std::vector<std::string>& items,
                 std::string_view separator, int hang, int width) {
  Lines lines(lead, hang, width);
  for (std::size_t at = 0; at < items.size(); ++at) {
    // A separator stays on the line of the item before it.
    const bool is_last = at + 1 == items.size();
    const int end = is_last ? 0 : width_of(without_end_space(separator));
    const int needed = width_of(items[at]) + end;
    if (!lines.fits(needed) && lines.could_fit(needed)) lines.next_line();
    if (lines.fits(needed))
      lines.add(items[at]);
    else
      add_by_words(lines, items[at], end);
    if (!is_last) lines.add(separator);
  }
  return lines.finish();
}

}  // namespace cahier
