#include "paper/typeface.h"

#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_BBOX_H
#include FT_OUTLINE_H

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <stdexcept>
#include <unordered_map>

#include "paper/page_size.h"
#include "text/errors.h"
#include "text/utf8.h"

namespace cahier {

namespace {

constexpr std::array<std::string_view, kFaceCount> kFiles = {
    "NotoSans-Regular.ttf",  "NotoSans-Bold.ttf",          "NotoSans-Italic.ttf",
    "NotoSerif-Regular.ttf", "NotoSerif-Bold.ttf",         "NotoSerif-Italic.ttf",
    "NotoMusic-Regular.ttf", "NotoSansSymbols-Regular.ttf"};

// Noto Sans Symbols draws ♭ 0.61 em high, capitals are 0.71 em.
constexpr double kBorrowedScale = 1.25;

std::string font_directory() {
  const char* chosen = std::getenv("CAHIER_FONT_DIR");
  return chosen != nullptr && *chosen != '\0' ? chosen : CAHIER_FONTS;
}

// Characters that a face may have a glyph for and that still would not print as they should:
// without shaping, without a right-to-left order, or without any ink at all. (The fonts of 2020
// have no Devanagari; later releases of Noto Sans do.)
bool is_unprintable(char32_t c) {
  if (is_control(c) || c == 0xAD) return true;  // 0xAD: soft hyphen
  if (c >= 0x0590 && c < 0x10A0) return true;   // Hebrew, Arabic, Indic, Thai, Tibetan, Burmese …
  if (c >= 0x1780 && c < 0x1C80) return true;   // Khmer, Mongolian and others alike
  if (c >= 0x200B && c <= 0x200F) return true;  // zero width, direction marks
  if (c >= 0x2060 && c <= 0x206F) return true;  // invisible operators, isolates
  if (c >= 0xD800 && c < 0xF900) return true;   // surrogates, private use
  if (c >= 0xFB1D && c <= 0xFEFF) return true;  // presentation forms, variation selectors, BOM
  return c >= 0xFFF0;                           // specials, and beyond the basic plane
}

Point scaled(const FT_Vector* at, double factor) {
  return {static_cast<double>(at->x) * factor, -static_cast<double>(at->y) * factor};
}

struct Drawing {
  Outline outline;
  double factor = 1;
  bool open = false;
};

int on_move(const FT_Vector* to, void* user) {
  auto& drawing = *static_cast<Drawing*>(user);
  if (drawing.open) drawing.outline.close();
  drawing.open = true;
  drawing.outline.move_to(scaled(to, drawing.factor));
  return 0;
}

int on_line(const FT_Vector* to, void* user) {
  auto& drawing = *static_cast<Drawing*>(user);
  drawing.outline.line_to(scaled(to, drawing.factor));
  return 0;
}

int on_quadratic(const FT_Vector* control, const FT_Vector* to, void* user) {
  auto& drawing = *static_cast<Drawing*>(user);
  drawing.outline.quadratic_to(scaled(control, drawing.factor), scaled(to, drawing.factor));
  return 0;
}

int on_cubic(const FT_Vector* first, const FT_Vector* second, const FT_Vector* to, void* user) {
  auto& drawing = *static_cast<Drawing*>(user);
  drawing.outline.curve_to(scaled(first, drawing.factor), scaled(second, drawing.factor),
                           scaled(to, drawing.factor));
  return 0;
}

struct LibraryDone {
  void operator()(FT_Library library) const { FT_Done_FreeType(library); }
};
struct FaceDone {
  void operator()(FT_Face face) const { FT_Done_Face(face); }
};

// One character of one face, in font units, y upwards.
struct GlyphMeasure {
  double advance = 0;
  bool inked = false;
  double left = 0, right = 0, bottom = 0, top = 0;
};

}  // namespace

struct Typefaces::Loaded {
  std::string directory;
  std::unique_ptr<FT_LibraryRec_, LibraryDone> library;
  std::array<std::unique_ptr<FT_FaceRec_, FaceDone>, kFaceCount> faces;
  // Measuring the same letters again and again is most of the layout's work.
  std::array<std::unordered_map<char32_t, GlyphMeasure>, kFaceCount> measured;
  std::array<std::unordered_map<char32_t, std::optional<Face>>, kFaceCount> printing;

  FT_Face face(Face which) const { return faces[static_cast<std::size_t>(which)].get(); }
  double unit(Face which, double em_mm) const { return em_mm / face(which)->units_per_EM; }

  // nullopt when the face has no such character.
  bool load(char32_t character, Face which) const {
    const FT_UInt index = FT_Get_Char_Index(face(which), character);
    return index != 0 && FT_Load_Glyph(face(which), index, FT_LOAD_NO_SCALE) == 0;
  }

  const GlyphMeasure& measure(char32_t character, Face which) {
    auto& known = measured[static_cast<std::size_t>(which)];
    if (const auto found = known.find(character); found != known.end()) return found->second;
    GlyphMeasure result;
    if (load(character, which)) {
      FT_GlyphSlot slot = face(which)->glyph;
      result.advance = static_cast<double>(slot->metrics.horiAdvance);
      result.inked = slot->outline.n_points > 0;
      FT_BBox box{};
      if (result.inked && FT_Outline_Get_BBox(&slot->outline, &box) == 0) {
        result.left = static_cast<double>(box.xMin);
        result.right = static_cast<double>(box.xMax);
        result.bottom = static_cast<double>(box.yMin);
        result.top = static_cast<double>(box.yMax);
      }
    }
    return known.emplace(character, result).first->second;
  }

  // The face that prints a character asked for in `wanted`, if any does.
  std::optional<Face> printing_face(char32_t character, Face wanted) {
    auto& known = printing[static_cast<std::size_t>(wanted)];
    const auto [found, fresh] = known.try_emplace(character);
    if (fresh && !is_unprintable(character)) {
      for (Face candidate : {wanted, Face::symbols, Face::music}) {
        if (FT_Get_Char_Index(face(candidate), character) == 0) continue;
        found->second = candidate;
        break;
      }
    }
    return found->second;
  }
};

std::string code_point_name(char32_t character) {
  return fmt::format("U+{:04X}", static_cast<unsigned>(character));
}

Typefaces::Typefaces() : Typefaces(font_directory()) {}

Typefaces::Typefaces(std::string directory) : loaded_(std::make_unique<Loaded>()) {
  loaded_->directory = std::move(directory);
  FT_Library library = nullptr;
  if (FT_Init_FreeType(&library) != 0) throw std::runtime_error("the font library does not start");
  loaded_->library.reset(library);
  for (std::size_t i = 0; i < kFiles.size(); ++i) {
    const std::string path = file(static_cast<Face>(i));
    FT_Face face = nullptr;
    if (FT_New_Face(library, path.c_str(), 0, &face) != 0) {
      throw FileError(fmt::format(
          "{}: this font cannot be read; it comes with the Debian package fonts-noto-core", path));
    }
    loaded_->faces[i].reset(face);
  }
}

Typefaces::~Typefaces() = default;

std::string Typefaces::file(Face face) const {
  return fmt::format("{}/{}", loaded_->directory, kFiles[static_cast<std::size_t>(face)]);
}

std::vector<char32_t> Typefaces::missing(std::string_view text, Face face) const {
  std::vector<char32_t> result;
  for (char32_t character : decode_utf8(text)) {
    if (loaded_->printing_face(character, face)) continue;
    if (std::find(result.begin(), result.end(), character) == result.end()) {
      result.push_back(character);
    }
  }
  return result;
}

std::vector<TextRun> Typefaces::runs(std::string_view text, Face face) const {
  std::vector<TextRun> result;
  std::size_t start = 0;
  std::size_t at = 0;
  for (char32_t character : decode_utf8(text)) {
    const std::optional<Face> printing = loaded_->printing_face(character, face);
    if (!printing) {
      throw std::logic_error(
          fmt::format("no typeface prints {} in \"{}\"", code_point_name(character), text));
    }
    if (result.empty() || result.back().face != *printing) {
      start = at;
      result.push_back({*printing, {}, *printing == face ? 1 : kBorrowedScale});
    }
    at += encode_utf8(character).size();
    result.back().text = text.substr(start, at - start);
  }
  return result;
}

double Typefaces::width(std::string_view text, Face face, double size_pt) const {
  double total = 0;
  for (const TextRun& run : runs(text, face)) {
    const double unit = loaded_->unit(run.face, millimetres(size_pt * run.scale));
    for (char32_t character : decode_utf8(run.text)) {
      total += loaded_->measure(character, run.face).advance * unit;
    }
  }
  return total;
}

FaceMetrics Typefaces::metrics(Face face, double size_pt) const {
  const double unit = loaded_->unit(face, millimetres(size_pt));
  const FT_Face loaded = loaded_->face(face);
  return {loaded->ascender * unit, -loaded->descender * unit,
          loaded_->measure(U'x', face).top * unit, loaded_->measure(U'H', face).top * unit};
}

Box Typefaces::ink(std::string_view text, Face face, double size_pt) const {
  std::optional<Box> covered;
  double at = 0;
  for (const TextRun& run : runs(text, face)) {
    const double unit = loaded_->unit(run.face, millimetres(size_pt * run.scale));
    for (char32_t character : decode_utf8(run.text)) {
      const GlyphMeasure& glyph = loaded_->measure(character, run.face);
      if (glyph.inked) {
        const Box box{at + glyph.left * unit, -glyph.top * unit, (glyph.right - glyph.left) * unit,
                      (glyph.top - glyph.bottom) * unit};
        covered = covered ? covered->around(box) : box;
      }
      at += glyph.advance * unit;
    }
  }
  return covered.value_or(Box{});
}

Outline Typefaces::glyph(char32_t character, Face face, double em_mm) const {
  if (!loaded_->load(character, face)) {
    throw std::logic_error(fmt::format("{} has no {}", file(face), code_point_name(character)));
  }
  const FT_Outline_Funcs calls{on_move, on_line, on_quadratic, on_cubic, 0, 0};
  Drawing drawing{{}, loaded_->unit(face, em_mm), false};
  if (FT_Outline_Decompose(&loaded_->face(face)->glyph->outline, &calls, &drawing) != 0) {
    throw std::runtime_error(
        fmt::format("{}: the shape of {} cannot be read", file(face), code_point_name(character)));
  }
  if (drawing.open) drawing.outline.close();
  return drawing.outline;
}

double Typefaces::glyph_width(char32_t character, Face face, double em_mm) const {
  return loaded_->measure(character, face).advance * loaded_->unit(face, em_mm);
}

bool Typefaces::has(char32_t character, Face face) const {
  return FT_Get_Char_Index(loaded_->face(face), character) != 0;
}

}  // namespace cahier
