#include "score/xml/compressed_score.h"

#include <fmt/format.h>
#include <zip.h>

#include <array>
#include <memory>
#include <set>

#include "score/xml/score_limits.h"
#include "score/xml/score_text.h"
#include "score/xml/text_encoding.h"
#include "score/xml/xml_document.h"

namespace cahier {
namespace {

constexpr const char* kContainer = "META-INF/container.xml";
constexpr std::string_view kExportHint = "export the score again as MusicXML: .mxl or .musicxml";

struct CloseArchive {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
struct CloseEntry {
  void operator()(zip_file_t* entry) const { zip_fclose(entry); }
};

class Archive {
 public:
  Archive(const std::string& file, const std::string& bytes) : file_(file) {
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, nullptr);
    if (source) archive_.reset(zip_open_from_source(source, ZIP_RDONLY, nullptr));
    if (source && !archive_) zip_source_free(source);
    if (!archive_)
      refuse("this compressed score is damaged or cut short", "copy or download it again");
    check_entries();
  }

  // Throws InputError where there is none.
  std::string read(const std::string& name, std::size_t most, std::string_view called) {
    const zip_int64_t index = zip_name_locate(archive_.get(), name.c_str(), 0);
    if (index < 0)
      refuse(fmt::format("this compressed score has no {}", called), std::string(kExportHint));
    zip_stat_t status;
    zip_stat_init(&status);
    const std::unique_ptr<zip_file_t, CloseEntry> entry(
        zip_stat_index(archive_.get(), static_cast<zip_uint64_t>(index), 0, &status) == 0
            ? zip_fopen_index(archive_.get(), static_cast<zip_uint64_t>(index), 0)
            : nullptr);
    if (!entry) refuse_damaged(called);
    if ((status.valid & ZIP_STAT_SIZE) == 0) refuse_damaged(called);
    if (status.size > most) refuse_size(most, called);
    std::string text;
    text.reserve(static_cast<std::size_t>(status.size));
    std::array<char, 65536> buffer;
    for (;;) {
      const zip_int64_t size = zip_fread(entry.get(), buffer.data(), buffer.size());
      if (size < 0) refuse_damaged(called);
      if (size == 0) break;
      // A size that is not the one announced is a damaged archive, or one made to fill the memory.
      if (text.size() + static_cast<std::size_t>(size) > status.size) refuse_damaged(called);
      text.append(buffer.data(), static_cast<std::size_t>(size));
    }
    if (text.size() != status.size) refuse_damaged(called);
    return text;
  }

  [[noreturn]] void refuse(std::string message, std::string hint) const {
    refuse_score_file(file_, std::move(message), std::move(hint));
  }

 private:
  void check_entries() {
    const zip_int64_t entries = zip_get_num_entries(archive_.get(), 0);
    if (entries > static_cast<zip_int64_t>(kMostArchiveEntries))
      refuse(fmt::format("this compressed score holds more than {} files", kMostArchiveEntries),
             std::string(kExportHint));
    std::set<std::string> names;
    std::size_t total = 0;
    for (zip_int64_t index = 0; index < entries; ++index) {
      zip_stat_t status;
      zip_stat_init(&status);
      if (zip_stat_index(archive_.get(), static_cast<zip_uint64_t>(index), 0, &status) != 0 ||
          (status.valid & ZIP_STAT_NAME) == 0)
        refuse_damaged("table of its files");
      if (!names.insert(status.name).second)
        refuse("this compressed score holds two files of one name, and which is meant is unclear",
               std::string(kExportHint));
      if ((status.valid & ZIP_STAT_SIZE) != 0 &&
          (status.size > kMostUnpackedBytes || (total += status.size) > kMostUnpackedBytes))
        refuse_size(kMostUnpackedBytes, "content");
    }
  }

  [[noreturn]] void refuse_damaged(std::string_view called) const {
    refuse(fmt::format("the {} of this compressed score cannot be unpacked", called),
           "the file is damaged, encrypted, or not what it says of itself: export it again");
  }

  [[noreturn]] void refuse_size(std::size_t most, std::string_view called) const {
    refuse(fmt::format("the {} of this compressed score is larger than {} KiB unpacked", called,
                       most / 1024),
           std::string(kExportHint));
  }

  const std::string& file_;
  std::unique_ptr<zip_t, CloseArchive> archive_;
};

bool is_score_type(const std::string& type) {
  return type.empty() || type == "application/vnd.recordare.musicxml+xml" ||
         type == "application/vnd.recordare.musicxml" || type == "text/xml" ||
         type == "application/xml";
}

bool leads_outside(const std::string& path) {
  return path.starts_with('/') || path.find("..") != std::string::npos ||
         path.find('\\') != std::string::npos;
}

std::string named_score(Archive& archive, const std::string& file) {
  const std::string name = kContainer;
  const XmlDocument container(
      ScoreText(file, name, to_utf8(file, archive.read(name, kMostContainerBytes, name))),
      "|container|", "a list of what a compressed score holds");
  for (const XmlElement& rootfile : container.root().child("rootfiles").children("rootfile")) {
    const std::string path = rootfile.attribute("full-path");
    if (path.empty() || !is_score_type(rootfile.attribute("media-type"))) continue;
    if (leads_outside(path))
      archive.refuse("this compressed score names a file outside itself",
                     "no notation program writes that; nothing outside was read");
    return path;
  }
  archive.refuse("this compressed score does not say which of its files is the score",
                 std::string(kExportHint));
}

}  // namespace

bool is_archive(std::string_view bytes) {
  return bytes.starts_with("PK\x03\x04") || bytes.starts_with("PK\x05\x06");
}

UnpackedScore unpack_score(const std::string& file, const std::string& bytes) {
  Archive archive(file, bytes);
  std::string name = named_score(archive, file);
  std::string score = archive.read(name, kMostUnpackedBytes, "score");
  return {std::move(name), std::move(score)};
}

}  // namespace cahier
