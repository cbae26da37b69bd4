// The file of a studio.
#include "inputs/read_studio.h"

#include <fmt/format.h>

#include "catch.h"

namespace cahier {
namespace {

struct ReadStudio {
  explicit ReadStudio(const std::string& text)
      : source("studio.yaml", text), studio(read_studio(source, diagnostics)) {}

  Source source;
  Diagnostics diagnostics;
  std::optional<Studio> studio;
};

std::string first_error(const std::string& text) {
  const ReadStudio read(text);
  REQUIRE_FALSE(read.studio);
  const Diagnostic& first = read.diagnostics.all().front();
  return fmt::format("{}:{}: {}", first.at.line, first.at.column, first.message);
}

}  // namespace

TEST_CASE("a student's values stand over the studio's") {
  const ReadStudio read(
      "studio: Spring\nby: 2027-03-20\nfrom: 2027-01-04\nteacher: A. Ott\npacket: student\n"
      "practice: {minutes: 15, lesson: thu}\n"
      "students:\n"
      "  - {name: Mia, piece: mia.yaml, minutes: 10, by: 2027-02-20, packet: child, paper: a5}\n"
      "  - {name: Jonas, piece: [a.yaml, b.yaml], log: logs/jonas.yaml, teacher: B. Lund}\n");
  REQUIRE(read.studio);
  const Student& mia = read.studio->students.at(0);
  CHECK(mia.practice.minutes->front() == 10);
  CHECK(mia.practice.lesson == 3);
  CHECK(iso(*mia.occasion.by) == "2027-02-20");
  CHECK(iso(*mia.occasion.from) == "2027-01-04");
  CHECK(mia.occasion.by_at.line == 8);  // where a message about the date is to point
  CHECK(mia.occasion.student == "Mia");
  CHECK(mia.occasion.teacher == "A. Ott");
  CHECK(mia.packing.packet == "child");
  CHECK(mia.packing.paper == kA5);
  const Student& jonas = read.studio->students.at(1);
  CHECK(jonas.practice.minutes->front() == 15);
  CHECK(jonas.occasion.by_at.line == 2);
  CHECK(jonas.occasion.teacher == "B. Lund");
  CHECK(jonas.packing.packet == "student");
  CHECK_FALSE(jonas.packing.paper);
  CHECK(jonas.pieces.size() == 2);
  CHECK(jonas.logs.front().path == "logs/jonas.yaml");
}

TEST_CASE("a name becomes the beginning of a file's name") {
  CHECK(as_file_name("Mia") == "mia");
  CHECK(as_file_name("Mia K.") == "mia-k");
  CHECK(as_file_name("..  -rf *") == "rf");
  CHECK(as_file_name("Åsa Öberg") == "Åsa-Öberg");
  CHECK(as_file_name("...").empty());
}

TEST_CASE("names that make the same file are refused with both lines") {
  const std::string two = "studio: S\nstudents:\n- {name: Mia K, piece: a.yaml}\n";
  CHECK(first_error(two + "- {name: mia k., piece: b.yaml}\n") ==
        "4:10: \"mia k.\" and \"Mia K\" of line 3 make the same file name, mia-k.pdf");
  // By way of the packet.
  CHECK(first_error("studio: S\nstudents:\n- {name: Mia, piece: a.yaml, packet: child}\n"
                    "- {name: Mia Child, piece: b.yaml}\n") ==
        "4:10: \"Mia Child\" and \"Mia\" of line 3 make the same file name, mia-child.pdf");
}

TEST_CASE("names that no file can have are refused") {
  CHECK(first_error("studio: S\nstudents: [{name: a/b, piece: a.yaml}]\n") ==
        "2:19: a student's name cannot have a slash: it becomes a file's name");
  CHECK(first_error("studio: S\nstudents: [{name: \"a\\u0007\", piece: a.yaml}]\n")
            .find("control character") != std::string::npos);
  CHECK(first_error("studio: S\nstudents: [{name: ..., piece: a.yaml}]\n") ==
        "2:19: this name has no letter that a file's name could be made of");
}

TEST_CASE("what a studio lacks is named where it is missing") {
  CHECK(first_error("studio: S\n").find("\"students\" is missing") != std::string::npos);
  CHECK(first_error("studio: S\nstudents: [{name: Mia}]\n").find("\"piece\" is missing") !=
        std::string::npos);
  CHECK(first_error("studio: S\nstudents: [{piece: a.yaml}]\n").find("\"name\" is missing") !=
        std::string::npos);
  CHECK(first_error("studio: S\nstudents: [Mia]\n").starts_with("2:12: "));
  CHECK(first_error("studio: S\nstudents: [{name: Mia, piece: a.yaml, peice: b}]\n")
            .find("unknown key \"peice\"") != std::string::npos);
}

}  // namespace cahier
