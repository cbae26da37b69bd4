#include "paper/pdf_canvas.h"

#include <fmt/format.h>
#include <hpdf.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "paper/own_pdf.h"

namespace cahier {

namespace {

// What the library's error callback saw. It must neither throw nor leave through C frames, so it
// only takes notes; the first note tells the cause.
struct LibraryError {
  HPDF_STATUS number = 0;
  HPDF_STATUS detail = 0;
};

void take_note(HPDF_STATUS number, HPDF_STATUS detail, void* user) {
  auto& error = *static_cast<LibraryError*>(user);
  if (error.number == 0) error = {number, detail};
}

HPDF_REAL real(double value) { return static_cast<HPDF_REAL>(value); }

// An outline entry and where it is to lead, once that page is there.
struct PendingEntry {
  HPDF_Outline entry = nullptr;
  int target = 1;
};

struct PendingLink {
  HPDF_Page page = nullptr;
  HPDF_Rect area{};
  int target = 1;
};

// What the current page's drawing state is known to be; set again only when it changes.
struct PenState {
  double fill_grey = -1;
  double stroke_grey = -1;
  double width = -1;
  double dash = 0;
  double gap = 0;
};

}  // namespace

struct PdfCanvas::State {
  LibraryError error;
  HPDF_Doc document = nullptr;
  std::vector<HPDF_Page> pages;
  PageSize size;
  PenState pen;
  std::array<HPDF_Font, kFaceCount> fonts{};
  std::vector<HPDF_Outline> open_entries;  // the last entry of each level
  std::vector<PendingEntry> entries;
  std::vector<PendingLink> links;
  bool ended = false;

  ~State() {
    if (document != nullptr) HPDF_Free(document);
  }

  // Call after every use of the library.
  void check() const {
    if (error.number == 0) return;
    throw PdfError(fmt::format("the PDF cannot be composed (libharu error {:#06x}, detail {})",
                               static_cast<unsigned long>(error.number),
                               static_cast<unsigned long>(error.detail)));
  }

  HPDF_Page page() const {
    if (pages.empty()) throw std::logic_error("drawing before the first page");
    if (ended) throw std::logic_error("drawing after the file was taken");
    return pages.back();
  }

  // The page's y grows upwards.
  double y(double millimetres_down) const { return points(size.height - millimetres_down); }

  HPDF_Font font(Face face, const Typefaces& typefaces) {
    HPDF_Font& known = fonts[static_cast<std::size_t>(face)];
    if (known == nullptr) {
      const char* name = HPDF_LoadTTFontFromFile(document, typefaces.file(face).c_str(), HPDF_TRUE);
      check();
      known = HPDF_GetFont(document, name, "UTF-8");
      check();
    }
    return known;
  }

  void set_fill(double grey) {
    if (pen.fill_grey == grey) return;
    HPDF_Page_SetGrayFill(page(), real(grey));
    pen.fill_grey = grey;
  }

  void set_stroke(const Stroke& stroke) {
    if (pen.stroke_grey != stroke.grey) HPDF_Page_SetGrayStroke(page(), real(stroke.grey));
    if (pen.width != stroke.width) HPDF_Page_SetLineWidth(page(), real(points(stroke.width)));
    if (pen.dash != stroke.dash || pen.gap != stroke.gap) set_dash(stroke);
    pen = {pen.fill_grey, stroke.grey, stroke.width, stroke.dash, stroke.gap};
  }

  // The library takes dashes in whole points only.
  void set_dash(const Stroke& stroke) {
    const auto whole_points = [](double length) {
      return static_cast<HPDF_UINT16>(std::max(1L, std::lround(points(length))));
    };
    if (stroke.dash <= 0) {
      HPDF_Page_SetDash(page(), nullptr, 0, 0);
      return;
    }
    const std::array<HPDF_UINT16, 2> pattern{
        whole_points(stroke.dash), whole_points(stroke.gap > 0 ? stroke.gap : stroke.dash)};
    HPDF_Page_SetDash(page(), pattern.data(), 2, 0);
  }

  void paint_path(const Paint& paint) {
    if (paint.fill && paint.stroke) {
      HPDF_Page_FillStroke(page());
    } else if (paint.fill) {
      HPDF_Page_Fill(page());
    } else {
      HPDF_Page_Stroke(page());
    }
    check();
  }

  void set(const Paint& paint) {
    if (paint.fill) set_fill(paint.fill->grey);
    if (paint.stroke) set_stroke(*paint.stroke);
  }

  void draw_run(const TextRun& run, Point at, const TextStyle& style, const Typefaces& typefaces) {
    const HPDF_Font run_font = font(run.face, typefaces);
    const std::string text(run.text);
    const HPDF_REAL x = real(points(at.x));
    const HPDF_REAL up = real(y(at.y));
    HPDF_Page_BeginText(page());
    HPDF_Page_SetFontAndSize(page(), run_font, real(style.size_pt * run.scale));
    const HPDF_REAL cosine = style.turn == Turn::none ? 1 : style.turn == Turn::over ? -1 : 0;
    const HPDF_REAL sine = style.turn == Turn::upwards ? 1 : 0;
    HPDF_Page_SetTextMatrix(page(), cosine, sine, -sine, cosine, x, up);
    HPDF_Page_ShowText(page(), text.c_str());
    HPDF_Page_EndText(page());
    check();
  }

  HPDF_Destination destination(int target) {
    if (target < 1 || target > static_cast<int>(pages.size()))
      throw std::logic_error(fmt::format("a link leads to page {}", target));
    const HPDF_Destination destination =
        HPDF_Page_CreateDestination(pages[static_cast<std::size_t>(target - 1)]);
    check();
    HPDF_Destination_SetFit(destination);
    return destination;
  }

  void resolve_destinations() {
    for (const PendingEntry& entry : entries) {
      HPDF_Outline_SetDestination(entry.entry, destination(entry.target));
      check();
    }
    for (const PendingLink& link : links) {
      const HPDF_Annotation annotation =
          HPDF_Page_CreateLinkAnnot(link.page, link.area, destination(link.target));
      check();
      HPDF_LinkAnnot_SetBorderStyle(annotation, 0, 0, 0);
      check();
    }
    entries.clear();
    links.clear();
  }
};

PdfCanvas::PdfCanvas(const Typefaces& typefaces)
    : Canvas(typefaces), state_(std::make_unique<State>()) {
  state_->document = HPDF_New(take_note, &state_->error);
  if (state_->document == nullptr) throw PdfError("the PDF library does not start");
  HPDF_SetCompressionMode(state_->document, HPDF_COMP_ALL);
  HPDF_UseUTFEncodings(state_->document);
  HPDF_SetCurrentEncoder(state_->document, "UTF-8");
  state_->check();
}

PdfCanvas::~PdfCanvas() = default;

int PdfCanvas::page_count() const { return static_cast<int>(state_->pages.size()); }

PageSize PdfCanvas::page_size() const {
  state_->page();
  return state_->size;
}

void PdfCanvas::begin_page(PageSize size) {
  if (state_->ended) throw std::logic_error("a page after the file was taken");
  const HPDF_Page page = HPDF_AddPage(state_->document);
  state_->check();
  HPDF_Page_SetWidth(page, real(points(size.width)));
  HPDF_Page_SetHeight(page, real(points(size.height)));
  state_->check();
  state_->pages.push_back(page);
  state_->size = size;
  state_->pen = {};
}

void PdfCanvas::text(Point baseline, std::string_view text, const TextStyle& style, const Box&) {
  state_->page();
  const std::vector<TextRun> runs = typefaces().runs(text, style.face);
  state_->set_fill(style.grey);
  Point at = baseline;
  for (const TextRun& run : runs) {
    state_->draw_run(run, at, style, typefaces());
    const double advance = typefaces().width(run.text, run.face, style.size_pt * run.scale);
    (style.turn == Turn::upwards ? at.y : at.x) += style.turn == Turn::none ? advance : -advance;
  }
}

void PdfCanvas::line(Point from, Point to, const Stroke& stroke) {
  state_->set_stroke(stroke);
  HPDF_Page_MoveTo(state_->page(), real(points(from.x)), real(state_->y(from.y)));
  HPDF_Page_LineTo(state_->page(), real(points(to.x)), real(state_->y(to.y)));
  state_->paint_path({stroke, std::nullopt});
}

void PdfCanvas::rectangle(const Box& box, const Paint& paint) {
  if (!paint.fill && !paint.stroke) return;
  state_->set(paint);
  HPDF_Page_Rectangle(state_->page(), real(points(box.x)), real(state_->y(box.bottom())),
                      real(points(box.width)), real(points(box.height)));
  state_->paint_path(paint);
}

void PdfCanvas::circle(Point centre, double diameter, const Paint& paint, CircleUse) {
  if (!paint.fill && !paint.stroke) return;
  state_->set(paint);
  HPDF_Page_Circle(state_->page(), real(points(centre.x)), real(state_->y(centre.y)),
                   real(points(diameter / 2)));
  state_->paint_path(paint);
}

void PdfCanvas::fill(const Outline& outline, const Fill& fill) {
  const HPDF_Page page = state_->page();
  if (outline.empty()) return;
  const auto x = [](Point at) { return real(points(at.x)); };
  const auto y = [&](Point at) { return real(state_->y(at.y)); };
  state_->set_fill(fill.grey);
  for (const OutlineStep& step : outline.steps()) {
    switch (step.kind) {
      case OutlineStep::Kind::move:
        HPDF_Page_MoveTo(page, x(step.to), y(step.to));
        break;
      case OutlineStep::Kind::line:
        HPDF_Page_LineTo(page, x(step.to), y(step.to));
        break;
      case OutlineStep::Kind::curve:
        HPDF_Page_CurveTo(page, x(step.first), y(step.first), x(step.second), y(step.second),
                          x(step.to), y(step.to));
        break;
      case OutlineStep::Kind::close:
        HPDF_Page_ClosePath(page);
        break;
    }
  }
  state_->paint_path({std::nullopt, fill});
}

void PdfCanvas::outline_entry(std::string_view title, int level, int page) {
  auto& open = state_->open_entries;
  if (level < 1 || level > static_cast<int>(open.size()) + 1) {
    throw std::logic_error(fmt::format("an outline entry of level {} without its parent", level));
  }
  open.resize(static_cast<std::size_t>(level - 1));
  const HPDF_Outline entry =
      HPDF_CreateOutline(state_->document, open.empty() ? nullptr : open.back(),
                         std::string(title).c_str(), HPDF_GetEncoder(state_->document, "UTF-8"));
  state_->check();
  state_->entries.push_back({entry, page});
  HPDF_SetPageMode(state_->document, HPDF_PAGE_MODE_USE_OUTLINE);
  state_->check();
  open.push_back(entry);
}

void PdfCanvas::link(const Box& area, int page) {
  const HPDF_Page from = state_->page();
  const HPDF_Rect rect{real(points(area.x)), real(state_->y(area.bottom())),
                       real(points(area.right())), real(state_->y(area.y))};
  state_->links.push_back({from, rect, page});
}

void PdfCanvas::metadata(const DocumentInfo& info) {
  const auto set = [&](HPDF_InfoType type, const std::string& value) {
    if (!value.empty()) HPDF_SetInfoAttr(state_->document, type, value.c_str());
  };
  set(HPDF_INFO_TITLE, info.title);
  set(HPDF_INFO_AUTHOR, info.author);
  set(HPDF_INFO_SUBJECT, info.subject);
  set(HPDF_INFO_CREATOR, "cahier");
  if (!info.packet.empty()) set(HPDF_INFO_KEYWORDS, packet_keyword(info.packet));
  // The library has no call of its own for the document's language.
  HPDF_Dict_Add(state_->document->catalog, "Lang",
                HPDF_String_New(state_->document->mmgr, info.language.c_str(), nullptr));
  state_->check();
}

std::string PdfCanvas::bytes() {
  state_->page();
  state_->resolve_destinations();
  HPDF_SaveToStream(state_->document);
  state_->check();
  std::string result(HPDF_GetStreamSize(state_->document), '\0');
  HPDF_ResetStream(state_->document);
  std::size_t done = 0;
  while (done < result.size()) {
    HPDF_UINT32 size = static_cast<HPDF_UINT32>(std::min<std::size_t>(result.size() - done, 65536));
    const HPDF_STATUS status = HPDF_ReadFromStream(
        state_->document, reinterpret_cast<HPDF_BYTE*>(result.data()) + done, &size);
    done += size;
    if (status != HPDF_OK && status != HPDF_STREAM_EOF) break;
    if (size == 0) break;
  }
  if (done != result.size()) {
    state_->check();
    throw PdfError("the PDF library gave back less than it wrote");
  }
  state_->ended = true;
  return result;
}

}  // namespace cahier
