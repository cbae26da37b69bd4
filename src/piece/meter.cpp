#include "piece/meter.h"

#include <fmt/core.h>

#include <array>
#include <numeric>
#include <utility>

namespace cahier {
namespace {

constexpr int kMostCounts = 64;

constexpr std::array<std::pair<Beat, std::string_view>, 6> kBeats = {{
    {Beat::eighth, "eighth"},
    {Beat::dotted_eighth, "dotted eighth"},
    {Beat::quarter, "quarter"},
    {Beat::dotted_quarter, "dotted quarter"},
    {Beat::half, "half"},
    {Beat::dotted_half, "dotted half"},
}};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// A positive number of at most two digits, without a leading zero; 0 when it is not one.
int small_number(std::string_view text) {
  text = trimmed(text);
  if (text.empty() || text.size() > 2 || text.front() == '0') return 0;
  int value = 0;
  for (const char letter : text) {
    if (letter < '0' || letter > '9') return 0;
    value = value * 10 + (letter - '0');
  }
  return value;
}

}  // namespace

int Meter::count() const { return std::accumulate(groups.begin(), groups.end(), 0); }

double Meter::quarters() const { return 4.0 * count() / unit; }

std::string Meter::text() const {
  std::string upper;
  for (const int group : groups) {
    upper += fmt::format("{}{}", upper.empty() ? "" : "+", group);
  }
  return fmt::format("{}/{}", upper, unit);
}

std::optional<Meter> parse_meter(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  Meter meter{{}, small_number(text.substr(slash + 1))};
  if (meter.unit < 1 || meter.unit > 32 || (meter.unit & (meter.unit - 1)) != 0) {
    return std::nullopt;
  }
  std::string_view upper = text.substr(0, slash);
  while (true) {
    const std::size_t plus = upper.find('+');
    const int group = small_number(upper.substr(0, plus));
    if (group == 0) return std::nullopt;
    meter.groups.push_back(group);
    if (meter.count() > kMostCounts) return std::nullopt;
    if (plus == std::string_view::npos) return meter;
    upper.remove_prefix(plus + 1);
  }
}

double quarters(Beat beat) {
  switch (beat) {
    case Beat::eighth:
      return 0.5;
    case Beat::dotted_eighth:
      return 0.75;
    case Beat::quarter:
      return 1;
    case Beat::dotted_quarter:
      return 1.5;
    case Beat::half:
      return 2;
    case Beat::dotted_half:
      return 3;
  }
  return 1;
}

std::optional<Beat> parse_beat(std::string_view text) {
  for (const auto& [beat, name] : kBeats) {
    if (name == text) return beat;
  }
  return std::nullopt;
}

std::string_view beat_name(Beat beat) {
  for (const auto& [each, name] : kBeats) {
    if (each == beat) return name;
  }
  return {};
}

Beat natural_beat(const Meter& meter) {
  if (meter.unit == 2) return Beat::half;
  if (meter.unit != 8) return Beat::quarter;
  const bool compound = meter.groups.size() == 1 && meter.count() > 3 && meter.count() % 3 == 0;
  return compound ? Beat::dotted_quarter : Beat::eighth;
}

}  // namespace cahier
