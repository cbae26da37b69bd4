# Makes the library one whose numbers can be set from outside, for tests/alter/alter.sh: a copy of
# practice/numbers.h whose numbers are asked from the environment once, found before the true one, and
# a built-in method that can be replaced. Nothing of it is in any other build.
set(NUMBERS ${PROJECT_SOURCE_DIR}/src/practice/numbers.h)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${NUMBERS})
file(READ ${NUMBERS} TEXT)
string(REGEX REPLACE "inline constexpr ([a-z:_]+) (k[A-Za-z]+) = ([^;]+);"
  "inline const \\1 \\2 = altered<\\1>(\"\\2\", \\3);" TEXT "${TEXT}")
string(REPLACE "#include <cstddef>" "#include <cstddef>\n\n#include \"altered.h\"" TEXT "${TEXT}")
# Copied only where it changed, so that nothing is compiled again for it.
file(WRITE ${PROJECT_BINARY_DIR}/altered_numbers.h "${TEXT}")
configure_file(${PROJECT_BINARY_DIR}/altered_numbers.h
  ${PROJECT_BINARY_DIR}/alterable/practice/numbers.h COPYONLY)

foreach(part cahier_planner cahier_lib)
  target_include_directories(${part} BEFORE PUBLIC ${PROJECT_BINARY_DIR}/alterable
    ${PROJECT_SOURCE_DIR}/tests/alter)
endforeach()
target_sources(cahier_lib PRIVATE ${PROJECT_SOURCE_DIR}/tests/alter/altered_templates.cpp)
set_source_files_properties(${BUILT_IN} PROPERTIES
  COMPILE_DEFINITIONS built_in_templates=unaltered_templates)
