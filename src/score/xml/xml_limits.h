// What XML text must keep to before a tree is built of it.
#pragma once

#include "score/xml/score_text.h"

namespace cahier {

// Walks over the tags of `text` without a tree. Throws InputError where it holds more than
// score_limits.h allows (elements, depth, length of a text) or declares entities of its own, where
// it is no XML, and where its root is not one of `roots`, a list in the form "|score-partwise|…|".
// A DOCTYPE that names an outside file is passed over; nothing is ever fetched. `what` names what
// was expected, "a score". Lines of the text may be quoted once its root is known.
void check_xml_limits(ScoreText& text, std::string_view roots, std::string_view what);

}  // namespace cahier
