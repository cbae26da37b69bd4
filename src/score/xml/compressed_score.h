// Compressed MusicXML: a zip archive that holds a score (MusicXML 4.0, container elements).
#pragma once

#include <string>
#include <string_view>

namespace cahier {

// True for the bytes of a zip archive, whatever its file is called.
bool is_archive(std::string_view bytes);

struct UnpackedScore {
  std::string name;   // in the archive
  std::string bytes;  // as they stand there, in whatever encoding
};

// The score that META-INF/container.xml names first. Throws InputError that names `file` where the
// archive is damaged, larger than score_limits.h allows, holds a name twice, or has no such score.
// What is unpacked is counted while it is unpacked; nothing is written to the disk.
UnpackedScore unpack_score(const std::string& file, const std::string& bytes);

}  // namespace cahier
