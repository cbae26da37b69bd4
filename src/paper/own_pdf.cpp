#include "paper/own_pdf.h"

#include <fmt/format.h>

#include <charconv>

#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::string_view kTrailer = "\ntrailer\n";
constexpr std::string_view kInfo = "\n/Info ";

// The dictionary that the trailer names as the document information; empty when there is none.
std::string_view information(std::string_view bytes) {
  const std::size_t trailer = bytes.rfind(kTrailer);
  if (trailer == std::string_view::npos) return {};
  const std::size_t info = bytes.find(kInfo, trailer);
  if (info == std::string_view::npos) return {};
  int number = 0;
  std::from_chars(bytes.data() + info + kInfo.size(), bytes.data() + bytes.size(), number);
  const std::size_t begin = bytes.find(fmt::format("\n{} 0 obj\n", number));
  if (begin == std::string_view::npos) return {};
  const std::size_t end = bytes.find("\nendobj", begin);
  return end == std::string_view::npos ? std::string_view() : bytes.substr(begin, end - begin);
}

// As a text of a PDF: UTF-16 in hexadecimal figures.
std::string in_hexadecimal(std::string_view text) {
  std::string figures = "<FEFF";
  for (const char32_t character : decode_utf8(text))
    figures += fmt::format("{:04X}", static_cast<unsigned>(character));
  return figures + ">";
}

}  // namespace

bool is_own_pdf(std::string_view bytes) {
  if (!bytes.starts_with("%PDF-")) return false;
  // An appended change has a trailer of its own.
  if (bytes.find(kTrailer) != bytes.rfind(kTrailer)) return false;
  const std::string_view told = information(bytes);
  // "cahier" in the encoding of document texts (UTF-16), or as plain text.
  return told.find("/Creator <FEFF006300610068006900650072>") != std::string_view::npos ||
         told.find("/Creator (cahier)") != std::string_view::npos;
}

std::string packet_keyword(std::string_view packet) { return "packet " + std::string(packet); }

bool is_of_other_packet(std::string_view bytes, std::string_view packet) {
  constexpr std::string_view kKeywords = "/Keywords ";
  const std::string_view told = information(bytes);
  const std::size_t at = told.find(kKeywords);
  if (at == std::string_view::npos) return false;
  const std::string keyword = packet_keyword(packet);
  const std::string_view named = told.substr(at + kKeywords.size());
  return !named.starts_with(in_hexadecimal(keyword)) && !named.starts_with("(" + keyword + ")");
}

}  // namespace cahier
