// Archives made in memory.
#pragma once

#include <zip.h>

#include <string>
#include <utility>
#include <vector>

namespace cahier::written {

using Entries = std::vector<std::pair<std::string, std::string>>;  // name and content

inline std::string zipped(const Entries& entries) {
  zip_source_t* buffer = zip_source_buffer_create(nullptr, 0, 0, nullptr);
  zip_t* archive = zip_open_from_source(buffer, ZIP_TRUNCATE, nullptr);
  zip_source_keep(buffer);
  for (const auto& [name, text] : entries) {
    const zip_int64_t added =
        zip_file_add(archive, name.c_str(), zip_source_buffer(archive, text.data(), text.size(), 0),
                     ZIP_FL_ENC_UTF_8);
    // No clock in it.
    zip_file_set_dostime(archive, static_cast<zip_uint64_t>(added), 0, 0x21, 0);
  }
  zip_close(archive);
  zip_source_open(buffer);
  zip_source_seek(buffer, 0, SEEK_END);
  std::string bytes(static_cast<std::size_t>(zip_source_tell(buffer)), '\0');
  zip_source_seek(buffer, 0, SEEK_SET);
  zip_source_read(buffer, bytes.data(), bytes.size());
  zip_source_close(buffer);
  zip_source_free(buffer);
  return bytes;
}

inline std::string container(const std::string& path, const std::string& type = "") {
  return "<container><rootfiles><rootfile full-path=\"" + path + "\"" +
         (type.empty() ? "" : " media-type=\"" + type + "\"") + "/></rootfiles></container>";
}

}  // namespace cahier::written
