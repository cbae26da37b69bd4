#define CATCH_CONFIG_RUNNER
#include "catch.h"

int main(int count, char** words) { return Catch::Session().run(count, words); }
