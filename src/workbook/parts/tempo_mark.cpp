#include "workbook/parts/tempo_mark.h"

#include "paper/music_glyphs.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

NoteValue note_value(Beat beat) {
  switch (beat) {
    case Beat::eighth:
    case Beat::dotted_eighth:
      return NoteValue::eighth;
    case Beat::quarter:
    case Beat::dotted_quarter:
      return NoteValue::quarter;
    case Beat::half:
    case Beat::dotted_half:
      return NoteValue::half;
  }
  return NoteValue::quarter;
}

bool is_dotted(Beat beat) {
  return beat == Beat::dotted_eighth || beat == Beat::dotted_quarter || beat == Beat::dotted_half;
}

}  // namespace

double draw_tempo(Canvas& canvas, const Box& box, const Tempo& tempo, const TextStyle& style) {
  return draw_tempo_mark(canvas, box, note_value(tempo.beat), is_dotted(tempo.beat),
                         number_text(tempo.per_minute), style);
}

double tempo_width(const Typefaces& typefaces, const Tempo& tempo, const TextStyle& style) {
  return tempo_mark_width(typefaces, note_value(tempo.beat), is_dotted(tempo.beat),
                          number_text(tempo.per_minute), style);
}

}  // namespace cahier
