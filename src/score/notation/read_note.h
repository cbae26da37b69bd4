// One note or rest, without its place in the bar.
#pragma once

#include <string>

#include "score/notation/score_note.h"
#include "score/xml/xml_element.h"

namespace cahier {

// Staff, pitch, ties, kind and syllables; the reader of the part adds onset and duration. `where`
// names the bar for errors. Throws InputError for a pitch that cannot be.
ScoreNote read_note(const XmlElement& element, const std::string& where);

}  // namespace cahier
