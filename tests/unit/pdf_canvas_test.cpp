#include "paper/pdf_canvas.h"

#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>

#include "catch.h"
#include "paper/own_pdf.h"
#include "paper/staff.h"

using namespace cahier;

namespace {

namespace fs = std::filesystem;

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

// A PDF on disk for the outside judges (poppler-utils, qpdf), gone afterwards.
class PdfOnDisk {
 public:
  explicit PdfOnDisk(const std::string& bytes)
      : path_((fs::temp_directory_path() / ("cahier-pdf-" + std::to_string(::getpid()) + ".pdf"))
                  .string()) {
    std::ofstream(path_, std::ios::binary) << bytes;
  }
  ~PdfOnDisk() { fs::remove(path_); }
  PdfOnDisk(const PdfOnDisk&) = delete;
  PdfOnDisk& operator=(const PdfOnDisk&) = delete;

  // What `judge` prints about the file; `rest` follows the file's name.
  std::string judged(const std::string& judge, const std::string& rest = "") const {
    const std::string command = judge + " " + path_ + " " + rest + " 2>/dev/null";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
    REQUIRE(pipe != nullptr);
    std::string output;
    std::array<char, 4096> buffer{};
    while (std::fgets(buffer.data(), buffer.size(), pipe.get()) != nullptr) output += buffer.data();
    return output;
  }

 private:
  std::string path_;
};

constexpr Box kPage{0, 0, 210, 297};

std::string sample() {
  PdfCanvas canvas(typefaces());
  canvas.metadata({"Lantern Study ♭ – Dvořák", "Nobody №1", "A workbook", "en"});
  canvas.begin_page(kA4);
  canvas.outline_entry("Cover", 1, 1);
  canvas.outline_entry("Étude in E♭", 2, 3);
  canvas.text({30, 30}, "Dvořák “quoted” – E♭ major №3", {Face::serif, 14}, kPage);
  TextStyle upwards{Face::sans_bold, 10};
  upwards.turn = Turn::upwards;
  canvas.text({20, 100}, "upwards", upwards, kPage);
  canvas.link({30, 40, 20, 10}, 3);
  canvas.line({30, 60}, {100, 60}, {0.3, 0.2, 1, 0.5, false});
  canvas.circle({50, 80}, 6, {Stroke{}, Fill{0.9, false}}, CircleUse::tick);
  canvas.begin_page(kA5.landscape());
  canvas.rectangle({20, 20, 50, 30}, {Stroke{}, {}});
  canvas.begin_page(kLetter);
  canvas.outline_entry("Staves", 1, 3);
  draw_system(canvas, {20, 20, 180, 40}, StaffSystem{}, StaffMeasures{});
  return canvas.bytes();
}

}  // namespace

TEST_CASE("pages have the sizes of ISO 216 and US Letter in points") {
  // ISO 216 in points: A4 595.276 x 841.890, A5 419.528 x 595.276; Letter 612 x 792.
  const std::string info = PdfOnDisk(sample()).judged("pdfinfo -f 1 -l 3");
  CHECK_THAT(info, Catch::Contains("Pages:           3"));
  CHECK_THAT(info, Catch::Contains("size:  595.276 x 841.89 pts (A4)"));
  CHECK_THAT(info, Catch::Contains("size:  595.276 x 419.528 pts"));
  CHECK_THAT(info, Catch::Contains("size:  612 x 792 pts (letter)"));
}

TEST_CASE("a checker of PDF files finds nothing wrong") {
  CHECK_THAT(PdfOnDisk(sample()).judged("qpdf --check"),
             Catch::Contains("No syntax or stream encoding errors found"));
}

TEST_CASE("only the faces in use are embedded, every one as a subset") {
  std::istringstream fonts(PdfOnDisk(sample()).judged("pdffonts"));
  std::string line;
  std::getline(fonts, line);
  std::getline(fonts, line);
  std::string names;
  while (std::getline(fonts, line)) {
    names += line.substr(0, line.find(' ')) + " ";
    CHECK_THAT(line, Catch::Contains("CID TrueType") && Catch::Contains("yes yes yes"));
  }
  CHECK_THAT(names, Catch::Contains("NotoSerif-Regular") && Catch::Contains("NotoSans-Bold") &&
                        Catch::Contains("NotoSansSymbols"));
  CHECK_THAT(names, !Catch::Contains("NotoSans-Regular") && !Catch::Contains("NotoMusic"));
}

TEST_CASE("text reads back as it was written") {
  const std::string text = PdfOnDisk(sample()).judged("pdftotext -layout", "-");
  CHECK_THAT(text, Catch::Contains("Dvořák “quoted” – E♭ major №3"));
  CHECK_THAT(text, Catch::Contains("upwards"));
}

TEST_CASE("text is as wide on the page as the typefaces say") {
  PdfCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  const std::string word = "Quodlibet♭♩♯Ωž";
  canvas.text({30, 30}, word, {Face::sans, 20}, kPage);
  const std::string boxes = PdfOnDisk(canvas.bytes()).judged("pdftotext -bbox", "-");
  // A change of type size may part the word in two for the judge.
  double left = 0;
  double right = 0;
  double word_left = 0;
  for (std::size_t at = boxes.find("<word "); at != std::string::npos;
       at = boxes.find("<word ", at + 1)) {
    REQUIRE(std::sscanf(boxes.c_str() + at, "<word xMin=\"%lf\" yMin=\"%*f\" xMax=\"%lf\"",
                        &word_left, &right) == 2);
    if (left == 0) left = word_left;
  }
  CHECK(left == Approx(points(30)).margin(0.01));
  CHECK(right - left == Approx(points(typefaces().width(word, Face::sans, 20))).margin(0.05));
}

TEST_CASE("the y axis is turned once: what is drawn near the top is near the top") {
  PdfCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  canvas.text({30, 30}, "top", {Face::sans, 10}, kPage);
  const std::string boxes = PdfOnDisk(canvas.bytes()).judged("pdftotext -bbox", "-");
  double top = 0;
  double bottom = 0;
  REQUIRE(std::sscanf(boxes.c_str() + boxes.find("<word "),
                      "<word xMin=\"%*f\" yMin=\"%lf\" xMax=\"%*f\" yMax=\"%lf\"", &top,
                      &bottom) == 2);
  CHECK(top < points(30));
  CHECK(bottom > points(30));
}

TEST_CASE("title, author, subject and language are in the file, and no date") {
  const PdfOnDisk pdf(sample());
  const std::string info = pdf.judged("pdfinfo");
  CHECK_THAT(info, Catch::Contains("Lantern Study ♭ – Dvořák"));
  CHECK_THAT(info, Catch::Contains("Nobody №1"));
  CHECK_THAT(info, Catch::Contains("A workbook"));
  CHECK_THAT(info, Catch::Contains("Creator:         cahier"));
  CHECK_THAT(info, !Catch::Contains("Date"));
  CHECK_THAT(pdf.judged("qpdf --qdf", "-"), Catch::Contains("/Lang (en)"));
}

TEST_CASE("the outline and the links lead to their pages") {
  const std::string plain = PdfOnDisk(sample()).judged("qpdf --qdf", "- | strings");
  CHECK_THAT(plain, Catch::Contains("/Type /Outlines"));
  CHECK_THAT(plain, Catch::Contains("/Subtype /Link"));
  PdfCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  CHECK_THROWS_AS(canvas.outline_entry("orphan", 2, 1), std::logic_error);
  canvas.link({10, 10, 10, 10}, 2);
  CHECK_THROWS_AS(canvas.bytes(), std::logic_error);
}

TEST_CASE("the same drawing gives the same bytes") { CHECK(sample() == sample()); }

TEST_CASE("misuse is refused: no page, characters that cannot be printed, drawing afterwards") {
  PdfCanvas canvas(typefaces());
  CHECK_THROWS_AS(canvas.bytes(), std::logic_error);
  CHECK_THROWS_AS(canvas.line({0, 0}, {1, 1}, {}), std::logic_error);
  canvas.begin_page(kA4);
  CHECK_THROWS_AS(canvas.text({20, 20}, "\U0001D11E", {}, kPage), std::logic_error);
  CHECK_NOTHROW(canvas.bytes());
  CHECK_THROWS_AS(canvas.line({0, 0}, {1, 1}, {}), std::logic_error);
  CHECK_THROWS_AS(canvas.begin_page(kA4), std::logic_error);
}

TEST_CASE("an error of the PDF library becomes an exception after the call") {
  PdfCanvas canvas(typefaces());
  CHECK_THROWS_AS(canvas.begin_page({1e9, 1e9}), PdfError);
}

TEST_CASE("a PDF of this program is known by its creator, as long as nobody adds to it") {
  const std::string bytes = sample();
  CHECK(is_own_pdf(bytes));
  CHECK_FALSE(is_own_pdf(bytes + "4 0 obj\n<<\n>>\nendobj\ntrailer\n<<\n/Info 3 0 R\n>>\n%%EOF\n"));
  std::string of_another = bytes;
  of_another.replace(of_another.find("/Creator <FEFF0063"), 18, "/Creator <FEFF0064");
  CHECK_FALSE(is_own_pdf(of_another));
  CHECK_FALSE(is_own_pdf(bytes.substr(0, bytes.size() / 2)));
  CHECK_FALSE(is_own_pdf(""));
}

TEST_CASE("a PDF of this program tells its packet") {
  PdfCanvas canvas(typefaces());
  canvas.metadata({"Title", "", "", "en", "wänd"});
  canvas.begin_page(kA4);
  const std::string bytes = canvas.bytes();
  CHECK_FALSE(is_of_other_packet(bytes, "wänd"));
  CHECK(is_of_other_packet(bytes, "wän"));
  CHECK(is_of_other_packet(bytes, "full"));
  CHECK_FALSE(is_of_other_packet(sample(), "full"));  // where none is named nothing is known
}
