#include "text/templates.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "catch.h"
#include "text/errors.h"

using namespace cahier;

namespace {

// A folder of its own that goes when the test ends.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "cahier-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
    std::filesystem::create_directories(path_ / "methods");
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream(path_ / name) << text;
  }
  std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

}  // namespace

TEST_CASE("a file of the folder stands in place of the built-in one, the others stay") {
  const Folder folder;
  folder.write("methods/my-own.yaml", "repeat: 3\n");
  const Templates templates(folder.path());
  CHECK(templates.read("methods", "my-own").text() == "repeat: 3\n");
  const auto names = templates.names("methods");
  CHECK(std::count(names.begin(), names.end(), "my-own") == 1);
  CHECK(std::is_sorted(names.begin(), names.end()));
  for (const std::string& name : Templates().names("methods")) {
    CHECK(std::count(names.begin(), names.end(), name) == 1);
    CHECK_FALSE(templates.read("methods", name).text().empty());
  }
}

TEST_CASE("an unknown template is refused with the nearest name") {
  const Folder folder;
  folder.write("methods/patient.yaml", "a: 1\n");
  const Templates templates(folder.path());
  CHECK_THROWS_WITH(templates.read("methods", "pateint"),
                    Catch::Contains("no method called \"pateint\"; did you mean \"patient\"?"));
}

TEST_CASE("a name never leads out of the folder") {
  const Folder folder;
  folder.write("methods/.hidden.yaml", "a: 1\n");
  const Templates templates(folder.path());
  folder.write(".secret.yaml", "a: 1\n");
  for (const char* name : {"../.secret", "..", "", ".hidden", "/etc/passwd"}) {
    CAPTURE(name);
    CHECK_THROWS_AS(templates.read("methods", name), InputError);
  }
}

TEST_CASE("a folder that is not there is a file error") {
  CHECK_THROWS_AS(Templates("no/such/folder"), FileError);
}

TEST_CASE("everything in the folder that would not be used is named") {
  const Folder folder;
  folder.write("methods/notes.txt", "no template\n");
  folder.write("methods/slow.yml", "a: 1\n");
  folder.write("wrods", "a: 1\n");
  try {
    const Templates templates(folder.path());
    FAIL("nothing was named");
  } catch (const InputError& error) {
    REQUIRE(error.diagnostics().size() == 3);
    CHECK(error.diagnostics()[0].file == folder.path() + "/methods/notes.txt");
    CHECK(error.diagnostics()[1].hint == "rename it to end in .yaml");
    CHECK(error.diagnostics()[2].message.ends_with("did you mean \"words\"?"));
  }
}

TEST_CASE("a folder that has become a file is a file error") {
  const Folder folder;
  std::filesystem::remove(std::filesystem::path(folder.path()) / "methods");
  folder.write("methods", "a: 1\n");
  CHECK_THROWS_AS(Templates(folder.path()), FileError);
}
