// The XML of a score as a tree.
#pragma once

#include <memory>
#include <string_view>

#include "score/xml/score_text.h"
#include "score/xml/xml_element.h"

namespace cahier {

class XmlDocument {
 public:
  // Builds the tree, after check_xml_limits has passed `text` for `roots` and `what`. Throws
  // InputError at the first fault.
  XmlDocument(ScoreText text, std::string_view roots, std::string_view what);

  XmlElement root() const { return {*text_, tree_->document_element()}; }
  const ScoreText& text() const { return *text_; }

 private:
  std::unique_ptr<ScoreText> text_;
  std::unique_ptr<pugi::xml_document> tree_;
};

}  // namespace cahier
