#include "plan/chunks/divide_to_fill.h"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

namespace cahier {
namespace {

// How far learning has come: days begun, minutes used of the last, chunks.
struct Reached {
  int day = std::numeric_limits<int>::max();
  double used = 0;
  int chunks = 0;
  int size = 0;  // bars of the last chunk

  bool never() const { return day == std::numeric_limits<int>::max(); }
  bool operator<(const Reached& other) const {
    return std::tie(day, used, chunks) < std::tie(other.day, other.used, other.chunks);
  }
};

class Filling {
 public:
  Filling(const Piece& piece, const Method& method, const std::vector<double>& minutes)
      : piece_(piece), method_(method), time_(piece, method), minutes_(minutes) {}

  // Cuts the next phrase, going on where the one before it ended.
  std::vector<BarRange> cut(BarRange phrase) {
    const int pickup = phrase.first == 0 ? 1 : 0;
    const int bars = phrase.size() - pickup;
    const int first = phrase.first + pickup;
    const auto uncut = [&] {
      at_ = after(at_, phrase);
      return std::vector<BarRange>{phrase};
    };
    if (bars <= method_.chunk_least) return uncut();
    std::vector<Reached> best(static_cast<std::size_t>(bars) + 1);
    best[0] = at_;
    const auto chunk_to = [&](int end, int size) {
      return BarRange{end == size ? phrase.first : first + end - size, first + end - 1};
    };
    for (int end = 1; end <= bars; ++end)
      for (int size = method_.chunk_least; size <= std::min(method_.chunk_most, end); ++size) {
        if (best[end - size].never()) continue;
        Reached next = after(best[end - size], chunk_to(end, size));
        next.size = size;
        best[end] = std::min(best[end], next);
      }
    if (best[bars].never()) return uncut();
    std::vector<BarRange> chunks;
    for (int end = bars; end > 0; end -= best[end].size)
      chunks.push_back(chunk_to(end, best[end].size));
    std::reverse(chunks.begin(), chunks.end());
    at_ = best[bars];
    return chunks;
  }

 private:
  double minutes_of(int day) const {
    return minutes_[std::min(day, static_cast<int>(minutes_.size()) - 1)];
  }

  Reached after(Reached reached, BarRange chunk) const {
    const double learn = time_.learn(chunk, piece_.hardest_level(chunk));
    ++reached.chunks;
    if (reached.used + learn <= minutes_of(reached.day)) {
      reached.used += learn;
      return reached;
    }
    const int last = static_cast<int>(minutes_.size()) - 1;
    do ++reached.day;
    while (reached.day < last && learn > minutes_of(reached.day));
    reached.used = learn;
    return reached;
  }

  const Piece& piece_;
  const Method& method_;
  TimeModel time_;
  const std::vector<double>& minutes_;
  Reached at_{0, 0, 0, 0};
};

}  // namespace

std::vector<Chunk> divide_to_fill(const Piece& piece, const std::vector<int>& section_order,
                                  const std::vector<BarRange>& learned, const Method& method,
                                  const std::vector<double>& minutes) {
  const std::vector<Section> sections = divide_into_sections(piece);
  Filling filling(piece, method, minutes);
  std::map<int, std::vector<BarRange>> cuts;  // by the phrase's first bar
  for (const int section : section_order)
    if (!sections[section].same_as)
      for (const Uncut& uncut : uncut_bars(sections[section], learned, method))
        if (!uncut.whole) cuts[uncut.bars.first] = filling.cut(uncut.bars);
  return cut_into_chunks(piece, sections, learned, method,
                         [&](BarRange phrase) { return cuts.at(phrase.first); });
}

}  // namespace cahier
