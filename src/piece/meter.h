// Meter, beat and tempo.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cahier {

struct Meter {
  std::vector<int> groups = {4};  // 4/4 is {4}; 2+3/8 is {2, 3}
  int unit = 4;                   // 1, 2, 4, 8, 16 or 32

  int count() const;        // beats of the upper number: 5 for 2+3/8
  double quarters() const;  // length of a bar in quarter notes
  std::string text() const;
  bool operator==(const Meter&) const = default;
};

// "3/4", "6/8", "2+3/8", and "C" and "cut" are not accepted. Counts 1–64, units a power of two.
std::optional<Meter> parse_meter(std::string_view text);

enum class Beat { eighth, dotted_eighth, quarter, dotted_quarter, half, dotted_half };
double quarters(Beat beat);
std::optional<Beat> parse_beat(std::string_view text);  // "dotted quarter"
std::string_view beat_name(Beat beat);

// The beat a tempo counts when the piece does not say: dotted quarter for 6/8, 9/8, 12/8,
// eighth for other meters over 8, half for x/2, else quarter (common practice).
Beat natural_beat(const Meter& meter);

struct Tempo {
  double per_minute = 90;
  Beat beat = Beat::quarter;

  double quarters_per_minute() const { return per_minute * quarters(beat); }
  bool operator==(const Tempo&) const = default;
};

}  // namespace cahier
