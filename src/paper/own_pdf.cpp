#include "paper/own_pdf.h"

#include <fmt/format.h>

#include <charconv>

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

}  // namespace cahier
