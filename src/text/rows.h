// The table of an enumeration, made of one row for each enumerator.
#pragma once

#include <array>
#include <cstddef>
#include <type_traits>
#include <utility>

namespace cahier {

// The rows row_of(value) of the values 0, 1, 2 … up to the first that has none. `row_of` is a
// constexpr function from the enumeration to an optional row: a switch without a default, so that
// the compiler names an enumerator whose row is missing, and nullopt after it.
template <typename Enum, auto row_of>
consteval auto rows() {
  constexpr auto count = [] {
    std::size_t number = 0;
    while (row_of(static_cast<Enum>(number)).has_value()) ++number;
    return number;
  }();
  using Row = std::remove_cvref_t<decltype(*row_of(Enum{}))>;
  return []<std::size_t... at>(std::index_sequence<at...>) {
    return std::array<Row, count>{*row_of(static_cast<Enum>(at))...};
  }
  (std::make_index_sequence<count>{});
}

}  // namespace cahier
