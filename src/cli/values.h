// Values of options, read from their text.
#pragma once

#include <optional>
#include <string>

#include "cli/typed_line.h"
#include "piece/wishes.h"
#include "text/diagnostics.h"

namespace cahier {

// Reads option values; each adds an error under the value, says what was expected, and returns
// nullopt when the text is not valid.
class Values {
 public:
  Values(const TypedLine& typed, Diagnostics& diagnostics)
      : typed_(typed), diagnostics_(diagnostics) {}

  std::optional<Date> date(std::string_view option, const std::string& text);
  // "8", "8mm" or "8 mm".
  std::optional<double> millimetres(std::string_view option, const std::string& text, double least,
                                    double most);
  std::optional<int> whole(std::string_view option, const std::string& text, int least, int most,
                           std::string_view unit);
  // "22", or "mon:15,sat:30".
  std::optional<WeekMinutes> minutes(std::string_view option, const std::string& text);
  std::optional<DaysOff> days_off(std::string_view option, const std::string& text);
  std::optional<int> weekday(std::string_view option, const std::string& text);
  // What was typed, where it can be a person's name; else empty, as for an empty text.
  std::string name(std::string_view option, const std::string& text);
  std::optional<bool> yes_no(std::string_view option, const std::string& text);
  void refuse(std::string_view option, const std::string& message, const std::string& hint,
              MessageKind kind = MessageKind::current());
  // The same for an argument without a value, an option or a file; the first one typed like this or
  // a later one, counted from 1.
  void refuse_argument(std::string_view argument, int occurrence, const std::string& message,
                       const std::string& hint, MessageKind kind = MessageKind::current());

 private:
  const TypedLine& typed_;
  Diagnostics& diagnostics_;
};

}  // namespace cahier
