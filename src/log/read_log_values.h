// Values in the entries of a log. Each reader reports what is wrong and leaves it out; what is left
// blank counts as not reported.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "log/written_log.h"
#include "text/diagnostics.h"
#include "text/yaml.h"

namespace cahier {

inline constexpr double kMostMinutesOfADay = 1440;

// Nothing, or a list or map of nothing.
bool is_blank(const YamlNode& node);

// A date.
std::optional<Written<Date>> read_log_date(YamlFields& fields, std::string_view key);

// More than 0, at most 1440.
std::optional<Written<double>> read_log_minutes(YamlFields& fields);

std::optional<bool> read_told(YamlFields& fields, std::string_view key);

// One number or a list of them; `what` names one in messages: "a bar".
std::vector<Written<int>> read_numbers(const Source& source, const YamlNode* node,
                                       std::string_view what, Diagnostics& diagnostics);

// One bar or a list of them; "none" and an empty list mean that there were none; a blank is not
// reported. `what` names one in messages.
std::optional<std::vector<Written<int>>> read_bars_or_none(YamlFields& fields, std::string_view key,
                                                           std::string_view what);

// "bars 17-20" or "17-20"; where `chunks` is true also the name of a chunk. One, a list, or a map
// of {minutes: …} by such names.
std::vector<LoggedBars> read_logged_bars(YamlFields& fields, std::string_view key, bool chunks);

// The code of a task, "0105-2"; a number alone belongs to `date`.
std::optional<Written<std::string>> read_code(const Source& source, const YamlNode& node,
                                              std::optional<Date> date, Diagnostics& diagnostics);

// The entry that begins with `edition:`.
std::optional<LoggedEdition> read_logged_edition(YamlFields& fields);

}  // namespace cahier
