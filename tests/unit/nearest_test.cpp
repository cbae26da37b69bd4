#include "text/did_you_mean.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("a slip of the finger finds the word meant") {
  const std::vector<std::string> words = {"title", "tempo", "meter", "bars", "same as"};
  CHECK(nearest("tepmo", words) == "tempo");
  CHECK(nearest("Tempo", words) == "tempo");
  CHECK(nearest("bar", words) == "bars");
  CHECK(nearest("titel", words) == "title");
  CHECK(nearest("same-as", words) == "same as");
  CHECK_FALSE(nearest("xyzzy", words));
  CHECK_FALSE(nearest("", words));
  CHECK_FALSE(nearest(std::string(100000, 'a'), words));
}

TEST_CASE("swapped neighbours count as one slip, so the swap wins over two changes") {
  CHECK(nearest("abdc", {"abxy", "abcd"}) == "abcd");
  CHECK(nearest("ba", {"xy", "ab"}) == "ab");
}

TEST_CASE("did you mean is worded once, and is empty when nothing is near") {
  CHECK(did_you_mean("tepmo", {"tempo"}) == "; did you mean \"tempo\"?");
  CHECK(did_you_mean("zzz", {"tempo"}).empty());
}
