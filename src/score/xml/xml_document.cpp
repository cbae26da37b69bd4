#include "score/xml/xml_document.h"

#include <fmt/format.h>

#include "score/xml/xml_limits.h"

namespace cahier {

XmlDocument::XmlDocument(ScoreText text, std::string_view roots, std::string_view what)
    : text_(std::make_unique<ScoreText>(std::move(text))),
      tree_(std::make_unique<pugi::xml_document>()) {
  check_xml_limits(*text_, roots, what);
  const std::string& all = text_->text();
  const pugi::xml_parse_result read =
      tree_->load_buffer(all.data(), all.size(), pugi::parse_default, pugi::encoding_utf8);
  if (read) return;
  text_->refuse(static_cast<std::size_t>(std::max<std::ptrdiff_t>(read.offset, 0)),
                "this is not well-formed XML",
                "the file was damaged, or not written by a notation program: export it again");
}

}  // namespace cahier
