#include "score/xml/xml_limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "score/xml/score_limits.h"

namespace cahier {
namespace {

constexpr std::string_view kBlank = " \t\r\n";

class XmlWalk {
 public:
  XmlWalk(ScoreText& source, std::string_view roots, std::string_view what)
      : source_(source), all_(source.text()), roots_(roots), what_(what) {}

  void run() {
    if (all_.find_first_not_of(kBlank) == std::string_view::npos)
      refuse_score_file(source_.file(), "this file is empty",
                        fmt::format("{} was expected", what_));
    while (at_ < all_.size()) {
      if (all_[at_] == '<')
        markup();
      else
        text();
    }
    if (elements_ == 0) refuse_stranger();
    if (depth_ > 0)
      source_.refuse(all_.size(), "the file ends in the middle",
                     "it was cut short when it was written or copied: get it again");
  }

 private:
  [[noreturn]] void refuse_stranger() const {
    refuse_score_file(source_.file(), fmt::format("this file is not {}", what_),
                      "export the score from the notation program as MusicXML: .musicxml, .xml "
                      "or .mxl");
  }

  bool next_is(std::string_view sign) const { return all_.substr(at_).starts_with(sign); }

  // Passes over what begins here and ends with `end`.
  void pass(std::string_view begin, std::string_view end) {
    const std::size_t found = all_.find(end, at_ + begin.size());
    if (found == std::string_view::npos) {
      if (elements_ == 0) refuse_stranger();
      source_.refuse(at_, fmt::format("what begins with {} here has no end", begin),
                     "the file was cut short, or is not XML");
    }
    at_ = found + end.size();
  }

  void markup() {
    if (next_is("<!--")) return pass("<!--", "-->");
    if (next_is("<?")) return pass("<?", "?>");
    if (next_is("<![CDATA[")) {
      const std::size_t begin = at_;
      pass("<![CDATA[", "]]>");
      check_length(begin, at_ - begin);
      return;
    }
    if (next_is("<!")) return doctype();
    tag();
  }

  void doctype() {
    if (!next_is("<!DOCTYPE") || elements_ > 0) {
      if (elements_ == 0) refuse_stranger();
      source_.refuse(at_, "there is no such mark inside a score", "the file is not MusicXML");
    }
    const std::size_t begin = at_;
    const std::size_t end = all_.find('>', at_);
    const std::size_t subset = std::min(all_.find('[', at_), all_.size());
    if (end == std::string_view::npos) refuse_stranger();
    if (subset > end) {
      at_ = end + 1;
      return;
    }
    const std::size_t close = all_.find("]", subset);
    if (all_.substr(subset, std::min(close, all_.size()) - subset).find("<!ENTITY") !=
        std::string_view::npos)
      source_.refuse(begin, "this file declares entities of its own",
                     "no score needs them, and they can be used to fill the memory or to read "
                     "other files: export it again as MusicXML");
    if (close == std::string_view::npos) refuse_stranger();
    at_ = close;
    pass("", ">");
  }

  void tag() {
    const std::size_t begin = at_;
    const bool closes = next_is("</");
    std::size_t end = begin + (closes ? 2 : 1);
    while (end < all_.size() && all_[end] != '>' && all_[end] != '<') {
      if (all_[end] == '"' || all_[end] == '\'') {
        const std::size_t close = all_.find(all_[end], end + 1);
        if (close == std::string_view::npos) break;
        check_length(end, close - end);
        end = close;
      }
      ++end;
    }
    if (end >= all_.size() || all_[end] != '>') {
      if (elements_ == 0) refuse_stranger();
      source_.refuse(begin, "this tag has no end", "the file was cut short, or is not XML");
    }
    at_ = end + 1;
    if (closes) {
      if (depth_ == 0) {
        if (elements_ == 0) refuse_stranger();
        source_.refuse(begin, "this tag ends what was never begun", "the file is not XML");
      }
      --depth_;
      return;
    }
    open(begin, all_[end - 1] == '/');
  }

  void open(std::size_t begin, bool is_empty) {
    if (++elements_ == 1)
      know_root(begin);
    else if (depth_ == 0)
      source_.refuse(begin, "a second score begins here", "a file holds one score");
    if (elements_ > kMostXmlElements)
      source_.refuse(begin,
                     fmt::format("the score has more than {} XML elements", kMostXmlElements),
                     "export the movements one by one");
    if (depth_ + 1 > kMostXmlDepth)
      source_.refuse(begin,
                     fmt::format("elements stand in one another more than {} deep", kMostXmlDepth),
                     "no MusicXML does that");
    if (!is_empty) ++depth_;
  }

  void know_root(std::size_t begin) {
    const std::size_t end = all_.find_first_of(" \t\r\n/>", begin);
    const std::string_view name = all_.substr(begin + 1, std::min(end, all_.size()) - begin - 1);
    if (name.empty() || roots_.find(fmt::format("|{}|", name)) == std::string_view::npos)
      refuse_stranger();
    source_.may_be_quoted();
  }

  void text() {
    const std::size_t begin = all_.find_first_not_of(kBlank, at_);
    std::size_t end = std::min(all_.find('<', at_), all_.size());
    at_ = end;
    if (begin == std::string_view::npos || begin >= end) return;
    if (elements_ == 0) refuse_stranger();
    if (depth_ == 0) source_.refuse(begin, "there is text after the end", "the file is not XML");
    while (kBlank.find(all_[end - 1]) != std::string_view::npos) --end;
    check_length(begin, end - begin);
  }

  void check_length(std::size_t begin, std::size_t size) const {
    if (size > kMostXmlTextBytes)
      source_.refuse(begin, fmt::format("a text here is longer than {} bytes", kMostXmlTextBytes),
                     "shorten it in the notation program");
  }

  ScoreText& source_;
  std::string_view all_;
  std::string_view roots_;
  std::string_view what_;
  std::size_t at_ = 0;
  std::size_t elements_ = 0;
  std::size_t depth_ = 0;
};

}  // namespace

void check_xml_limits(ScoreText& text, std::string_view roots, std::string_view what) {
  XmlWalk(text, roots, what).run();
}

}  // namespace cahier
