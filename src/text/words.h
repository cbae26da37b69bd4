// The sentences of the workbook in one language, read from templates/words/NAME.yaml.
#pragma once

#include <concepts>
#include <functional>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

// What stands in a sentence for {name}.
struct WordValue {
  WordValue(std::string_view named, std::string said) : name(named), text(std::move(said)) {}
  WordValue(std::string_view named, std::string_view said) : name(named), text(said) {}
  WordValue(std::string_view named, const char* said) : name(named), text(said) {}
  template <std::integral Whole>
  WordValue(std::string_view named, Whole number) : name(named), text(std::to_string(number)) {}

  std::string_view name;
  std::string text;
};
using WordValues = std::initializer_list<WordValue>;

class Words {
 public:
  // The sentence under "group.key", with every placeholder filled. Values that the sentence does
  // not use are ignored. Throws std::logic_error for an unknown key, a list, or a missing value.
  std::string say(std::string_view key, WordValues values = {}) const;

  // The sentence under key + "_one" when `number` is 1, else under key + "_other"; {number} is
  // filled with it. Throws as say().
  std::string count(std::string_view key, int number, WordValues values = {}) const;

  // The paragraphs under "group.key". Throws as say(), also for what is not a list.
  std::vector<std::string> list(std::string_view key, WordValues values = {}) const;

  // Every "group.key", sorted.
  std::vector<std::string> keys() const;

 private:
  friend Words read_words(const Source& source, Diagnostics& diagnostics);
  friend const Words& english_words();
  friend class WordsReader;

  struct Entry {
    bool is_list = false;
    std::vector<std::string> texts;
  };
  const Entry& entry(std::string_view key, bool is_list) const;

  std::map<std::string, Entry, std::less<>> entries_;
};

// Reads a language and checks it against the built-in English: the same keys, texts that are not
// empty and at most 2,000 characters long, no placeholder that the English text does not have
// (one may be left out), lists of months and weekdays of the same length. Adds every problem found;
// the words are usable only when no error was added.
Words read_words(const Source& source, Diagnostics& diagnostics);

// The built-in English, templates/words/en.yaml.
const Words& english_words();

}  // namespace cahier
