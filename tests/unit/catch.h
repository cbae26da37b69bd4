// Catch2, version 2 or 3.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>

namespace Catch {
using Matchers::EndsWith;
using Matchers::StartsWith;
inline auto Contains(const std::string& part) { return Matchers::ContainsSubstring(part); }
}  // namespace Catch
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
