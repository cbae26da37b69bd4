// The typefaces: what a text measures, what its ink covers, and which characters can be printed.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "paper/geometry.h"
#include "paper/outline.h"

namespace cahier {

// `symbols` is a fallback and seldom asked for by name.
enum class Face { sans, sans_bold, sans_italic, serif, serif_bold, serif_italic, music, symbols };
inline constexpr int kFaceCount = 8;

// Of a face at a size, in millimetres, all positive.
struct FaceMetrics {
  double ascent = 0;
  double descent = 0;
  double x_height = 0;    // of the letter x
  double cap_height = 0;  // of the letter H
};

// A stretch of text that one face prints.
struct TextRun {
  Face face = Face::sans;
  std::string_view text;  // part of the text that was asked about
  double scale = 1;  // of the type size: borrowed ♭ ♮ ♯ ♩ are enlarged to stand beside capitals
};

// "U+1D11E" and the like, at least four digits.
std::string code_point_name(char32_t character);

// Remembers what it has measured: for one thread at a time.
class Typefaces {
 public:
  // Loads the faces from CAHIER_FONT_DIR of the environment if that is set, else from the
  // directory found when the program was built. Throws FileError when one is missing or broken.
  Typefaces();
  explicit Typefaces(std::string directory);
  ~Typefaces();
  Typefaces(const Typefaces&) = delete;
  Typefaces& operator=(const Typefaces&) = delete;

  // The TrueType file of a face.
  std::string file(Face face) const;

  // Characters of `text` that neither `face` nor the fallbacks can print as text, each once, in
  // order of appearance. Control characters, text written from right to left, characters beyond
  // the basic plane and scripts whose letters change shape by their neighbours are among them.
  std::vector<char32_t> missing(std::string_view text, Face face) const;

  // `text` cut into runs: a character that `face` lacks is printed by Noto Sans Symbols (whose
  // ♭ ♮ ♯ ♩ are the larger ones), else by Noto Music. Every canvas measures and draws by these
  // runs. Throws std::logic_error on a missing character: callers ask missing() first.
  std::vector<TextRun> runs(std::string_view text, Face face) const;

  // Advance width in millimetres. Without kerning, as it is printed. Throws like runs().
  double width(std::string_view text, Face face, double size_pt) const;
  FaceMetrics metrics(Face face, double size_pt) const;
  // What the ink of `text` covers when its baseline starts at (0, 0); y is negative above the
  // baseline. An empty box for blanks. Throws like runs().
  Box ink(std::string_view text, Face face, double size_pt) const;

  // The shape of one character, baseline at (0, 0), y downwards, an em being `em_mm` long; any
  // plane. Throws std::logic_error when the face has no such character.
  Outline glyph(char32_t character, Face face, double em_mm) const;
  // Its advance width in millimetres.
  double glyph_width(char32_t character, Face face, double em_mm) const;
  bool has(char32_t character, Face face) const;

 private:
  struct Loaded;
  std::unique_ptr<Loaded> loaded_;
};

}  // namespace cahier
