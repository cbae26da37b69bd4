// The structure of src/ itself, read from its includes: rooms.txt says which way they may go.

#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "catch.h"
#include "paths.h"

namespace fs = std::filesystem;

namespace {

using Names = std::set<std::string>;
using Graph = std::map<std::string, Names>;

constexpr int kMostFiles = 40;  // of a room

struct Include {
  std::string file;  // from src/: "plan/plan.h"
  std::string what;  // as written, with its brackets or quotation marks
};

struct House {
  std::vector<std::string> files;
  std::vector<Include> includes;
};

std::string room_of(const std::string& file) {
  const std::string room = fs::path(file).parent_path().string();
  return room.empty() ? "." : room;
}

// A header and its .cpp count as one.
std::string unit_of(const std::string& file) { return fs::path(file).replace_extension().string(); }

House read_house(const fs::path& root) {
  House house;
  for (const auto& entry : fs::recursive_directory_iterator(root)) {
    const std::string ending = entry.path().extension().string();
    if (ending != ".h" && ending != ".cpp") continue;
    const std::string file = fs::relative(entry.path(), root).string();
    house.files.push_back(file);
    std::ifstream text(entry.path());
    for (std::string line; std::getline(text, line);)
      if (const std::string word = "#include "; line.starts_with(word))
        house.includes.push_back({file, line.substr(word.size())});
  }
  return house;
}

// The target of one of our own includes, as a path from src/; empty for a library's.
std::string own(const Include& include) {
  if (!include.what.starts_with('"')) return {};
  return include.what.substr(1, include.what.find('"', 1) - 1);
}

struct Rules {
  Graph rooms;      // what each may include, as written
  Graph libraries;  // how an include begins, and its only files
};

Rules read_rules(const fs::path& path) {
  Rules rules;
  std::ifstream text(path);
  for (std::string line; std::getline(text, line);) {
    if (line.empty() || line.starts_with('#')) continue;
    std::istringstream words(line);
    std::string first;
    words >> first;
    if (first.starts_with('<')) {
      for (std::string file; words >> file;) rules.libraries[first].insert(file);
      continue;
    }
    first.pop_back();  // the colon
    Names& allowed = rules.rooms[first];
    for (std::string room; words >> room;) allowed.insert(room);
  }
  return rules;
}

// Everything that can be reached, the start itself only by a circle.
Names reach(const Graph& graph, const std::string& from) {
  Names seen;
  std::vector<std::string> next = {from};
  while (!next.empty()) {
    const auto found = graph.find(next.back());
    next.pop_back();
    if (found == graph.end()) continue;
    for (const std::string& to : found->second)
      if (seen.insert(to).second) next.push_back(to);
  }
  return seen;
}

Names in_circles(const Graph& graph) {
  Names circles;
  for (const auto& [name, to] : graph)
    if (reach(graph, name).contains(name)) circles.insert(name);
  return circles;
}

Names upward(const House& house, const Rules& rules) {
  Names faults;
  for (const Include& include : house.includes) {
    const std::string target = own(include);
    if (target.empty()) continue;
    const std::string from = room_of(include.file);
    const std::string to = room_of(target);
    if (from != to && !reach(rules.rooms, from).contains(to))
      faults.insert(include.file + " includes " + target);
  }
  return faults;
}

Names out_of_their_room(const House& house, const Rules& rules) {
  Names faults;
  for (const Include& include : house.includes)
    for (const auto& [begins, files] : rules.libraries)
      if (include.what.starts_with(begins) && !files.contains(include.file))
        faults.insert(include.file + " includes " + include.what);
  return faults;
}

std::string text_of(const fs::path& path) {
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string developers_page() { return text_of(fs::path(SOURCES).parent_path() / "DEVELOPERS.md"); }

// What a text quotes as code, on one line and without a blank, that has a slash.
Names paths_in(const std::string& text) {
  Names paths;
  for (auto open = text.find('`'); open != std::string::npos; open = text.find('`', open + 1)) {
    const auto close = text.find('`', open + 1);
    if (close == std::string::npos) break;
    const std::string quoted = text.substr(open + 1, close - open - 1);
    if (quoted.find('/') != std::string::npos && quoted.find_first_of(" \n*") == std::string::npos)
      paths.insert(quoted);
    open = close;
  }
  return paths;
}

// Whether a path from the top or from src/ is there, as written or as a module without its ending.
bool is_there(const std::string& path) {
  const fs::path root = fs::path(SOURCES).parent_path();
  for (const fs::path& folder : {root, root / "src"})
    for (const char* ending : {"", ".h", ".cpp"})
      if (fs::exists(folder / (path + ending))) return true;
  return false;
}

// What stands between grave accents in a recipe of DEVELOPERS.md and is a path.
Names paths_in_recipe(const std::string& title) {
  const std::string text = developers_page();
  const auto begin = text.find("**" + title + "**");
  REQUIRE(begin != std::string::npos);
  return paths_in(text.substr(begin, text.find("\n\n", begin) - begin));
}

// The files that have a case for each of an enumeration's values.
Names files_with_cases_of(const std::string& enumeration) {
  Names files;
  for (const auto& entry : fs::recursive_directory_iterator(SOURCES))
    if (entry.is_regular_file() &&
        text_of(entry.path()).find("case " + enumeration + "::") != std::string::npos)
      files.insert(fs::relative(entry.path(), SOURCES).string());
  return files;
}

const House& house() {
  static const House house = read_house(SOURCES);
  return house;
}

}  // namespace

TEST_CASE("includes go the ways that rooms.txt allows, and no other") {
  const Rules rules = read_rules(ROOMS);
  CHECK(house().files.size() > 300);
  CHECK(upward(house(), rules) == Names{});
  CHECK(out_of_their_room(house(), rules) == Names{});
  CHECK(in_circles(rules.rooms) == Names{});
}

TEST_CASE("every room is written down, and no room that is not there") {
  Names rooms;
  for (const std::string& file : house().files) rooms.insert(room_of(file));
  Names written;
  for (const auto& [room, allowed] : read_rules(ROOMS).rooms) written.insert(room);
  CHECK(rooms == written);
}

TEST_CASE("no circle between files, and none between rooms") {
  Graph files;
  Graph rooms;
  for (const Include& include : house().includes) {
    const std::string target = own(include);
    if (target.empty()) continue;
    if (unit_of(include.file) != unit_of(target))
      files[unit_of(include.file)].insert(unit_of(target));
    if (room_of(include.file) != room_of(target))
      rooms[room_of(include.file)].insert(room_of(target));
  }
  CHECK(in_circles(files) == Names{});
  CHECK(in_circles(rooms) == Names{});
}

TEST_CASE("no room holds more files than one can look over") {
  std::map<std::string, int> count;
  for (const std::string& file : house().files) ++count[room_of(file)];
  for (const auto& [room, files] : count) {
    CAPTURE(room);
    CHECK(files <= kMostFiles);
  }
}

TEST_CASE("the recipes for a drill and a sheet name every place to touch") {
  for (const auto& [title, enumeration] :
       {std::pair("A drill.", "Drill"), std::pair("A sheet.", "SheetKind")}) {
    CAPTURE(title);
    const Names paths = paths_in_recipe(title);
    const Names places = files_with_cases_of(enumeration);
    CHECK(places.size() >= 1);
    for (const std::string& place : places) {
      CAPTURE(place);
      CHECK(paths.contains(place));
    }
  }
}

TEST_CASE("what the developers' page names is there") {
  const Names paths = paths_in(developers_page());
  CHECK(paths.size() > 50);
  for (const std::string& path : paths) {
    CAPTURE(path);
    // Not a file of the repository: made by the build.
    if (!path.starts_with("build/")) CHECK(is_there(path));
  }
}
