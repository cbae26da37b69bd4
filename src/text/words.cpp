#include "text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <stdexcept>

namespace cahier {
namespace {

std::span<const WordValue> as_span(WordValues values) { return {values.begin(), values.size()}; }

std::string filled_in(std::string_view key, std::string_view text,
                      std::span<const WordValue> values) {
  std::string filled;
  while (true) {
    const auto open = text.find('{');
    filled += text.substr(0, open);
    if (open == std::string_view::npos) return filled;
    const auto close = text.find('}', open);
    const std::string_view name = text.substr(open + 1, close - open - 1);
    const auto value = std::find_if(values.begin(), values.end(),
                                    [=](const WordValue& one) { return one.name == name; });
    if (value == values.end())
      throw std::logic_error(fmt::format("no value for {{{}}} in \"{}\"", name, key));
    filled += value->text;
    text.remove_prefix(close + 1);
  }
}

}  // namespace

const Words::Entry& Words::entry(std::string_view key, bool is_list) const {
  const auto found = entries_.find(key);
  if (found == entries_.end()) throw std::logic_error(fmt::format("no words for \"{}\"", key));
  if (found->second.is_list != is_list)
    throw std::logic_error(fmt::format("\"{}\" is {} list", key, is_list ? "no" : "a"));
  return found->second;
}

std::string Words::say(std::string_view key, WordValues values) const {
  return filled_in(key, entry(key, false).texts.front(), as_span(values));
}

std::string Words::count(std::string_view key, int number, WordValues values) const {
  std::vector<WordValue> with_number(values);
  with_number.emplace_back("number", number);
  const std::string whole_key = fmt::format("{}_{}", key, number == 1 ? "one" : "other");
  const std::string& text = entry(whole_key, false).texts.front();
  return filled_in(whole_key, text, with_number);
}

std::vector<std::string> Words::list(std::string_view key, WordValues values) const {
  std::vector<std::string> filled;
  for (const std::string& text : entry(key, true).texts)
    filled.push_back(filled_in(key, text, as_span(values)));
  return filled;
}

std::vector<std::string> Words::keys() const {
  std::vector<std::string> keys;
  for (const auto& [key, entry] : entries_) keys.push_back(key);
  return keys;
}

}  // namespace cahier
