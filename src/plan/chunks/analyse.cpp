#include "plan/chunks/analyse.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <set>

#include "plan/chunks/divide.h"
#include "plan/chunks/fork_drills.h"
#include "plan/chunks/group_at_phrases.h"
#include "plan/chunks/rejoin_bars.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// The chunk of every bar that is learned where it stands; -1 elsewhere. Indexed by bar.
std::vector<int> chunk_at_bar(const Piece& piece, const std::vector<Chunk>& chunks) {
  std::vector<int> chunk_at(piece.bars + 1, -1);
  for (int index = 0; index < static_cast<int>(chunks.size()); ++index)
    for (int bar = chunks[index].bars.first; bar <= chunks[index].bars.last; ++bar)
      chunk_at[bar] = index;
  return chunk_at;
}

std::vector<Passage> passages_of(const Piece& piece, const std::vector<PlannedSection>& sections,
                                 const std::vector<Chunk>& chunks) {
  const std::vector<int> chunk_at = chunk_at_bar(piece, chunks);
  const std::vector<int> learned_bars = piece.learned_bars();
  std::vector<Passage> passages;
  for (int section = 0; section < static_cast<int>(sections.size()); ++section) {
    const bool in_return = sections[section].same_as.has_value();
    bool opens = true;
    for (int bar = sections[section].bars.first; bar <= sections[section].bars.last; ++bar) {
      const int learned = learned_bars[bar];
      const int chunk = chunk_at[learned];
      Passage* last = opens ? nullptr : &passages.back();
      if (last && last->chunk == chunk && last->learned.last + 1 == learned) {
        last->bars.last = bar;
        last->learned.last = learned;
      } else {
        passages.push_back({{bar, bar}, chunk, section, in_return, {learned, learned}});
      }
      opens = false;
    }
  }
  return passages;
}

// Each section's chunks as stretches that begin with phrases.
std::vector<Stretch> stretches_of(const PlannedPiece& planned, const PhraseMap& phrases,
                                  int most_bars) {
  const std::vector<Chunk>& chunks = planned.chunks;
  std::vector<Stretch> stretches;
  const int count = static_cast<int>(chunks.size());
  for (int first = 0, end = 0; first < count; first = end) {
    std::vector<BarRange> ranges;
    for (; end < count && chunks[end].section == chunks[first].section; ++end)
      ranges.push_back(chunks[end].bars);
    std::vector<int> opens = group_at_phrases(ranges, phrases, most_bars);
    opens.push_back(end - first);
    for (std::size_t group = 0; group + 1 < opens.size(); ++group) {
      const int open = first + opens[group];
      const int close = first + opens[group + 1] - 1;
      stretches.push_back({{chunks[open].bars.first, chunks[close].bars.last}, open, close});
    }
  }
  return stretches;
}

// REQUIRES: both sorted.
std::vector<int> without(const std::vector<int>& all, const std::vector<int>& some) {
  std::vector<int> rest;
  std::set_difference(all.begin(), all.end(), some.begin(), some.end(), std::back_inserter(rest));
  return rest;
}

// Raises a chunk's level to the weakness that its slips show.
void weigh(Chunk& chunk, const Method& method, const History& history) {
  const SlipCount slips = history.slips(chunk.bars);
  const int weak = weakness(method, chunk.level, slips);
  chunk.raised =
      slips.slips > 0 &&
      (weak > chunk.level || slip_chance(method, chunk.level, slips) >= method.slip_chance.back());
  chunk.level = weak;
  chunk.slips = slips;
  chunk.last_slip = history.last_slip(chunk.bars);
}

class Analyser {
 public:
  Analyser(const Piece& piece, const Method& method, std::vector<Chunk> chunks,
           const NumberedStarts& numbered)
      : piece_(piece),
        method_(method),
        numbered_(numbered),
        result_{{}, TimeModel(piece, method), {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}} {
    result_.planned.piece = piece;
    result_.planned.forks = forks_of(piece);
    for (const Section& section : divide_into_sections(piece))
      result_.planned.sections.push_back({section.name, section.bars, section.same_as});
    result_.planned.chunks = std::move(chunks);
    result_.passages = passages_of(piece, result_.planned.sections, result_.planned.chunks);
    const PhraseMap phrases(result_.planned);
    result_.stretches = stretches_of(result_.planned, phrases, method.stretch_bars);
    for (const Chunk& chunk : this->chunks())
      result_.begins_phrase.push_back(phrases.begins(chunk.bars.first));
    group_returns(phrases, method.stretch_bars);
    index_stretches();
    find_joins();
    find_cues(phrases);
    find_rivals();
    for (const Chunk& chunk : result_.planned.chunks)
      result_.learn_minutes.push_back(result_.time.learn(chunk.bars, chunk.level));
  }

  Analysis take() { return std::move(result_); }

 private:
  const std::vector<Chunk>& chunks() const { return result_.planned.chunks; }

  void index_stretches() {
    result_.stretch_of.resize(chunks().size());
    for (int i = 0; i < static_cast<int>(result_.stretches.size()); ++i)
      for (int chunk = result_.stretches[i].first_chunk; chunk <= result_.stretches[i].last_chunk;
           ++chunk)
        result_.stretch_of[chunk] = i;
  }

  // What comes back is passed through where it comes back.
  void group_returns(const PhraseMap& phrases, int most_bars) {
    const auto& passages = result_.passages;
    for (std::size_t first = 0, end = 0; first < passages.size(); first = end) {
      std::vector<BarRange> ranges;
      for (; end < passages.size() && passages[end].section == passages[first].section; ++end)
        ranges.push_back(passages[end].bars);
      if (!passages[first].in_return) continue;
      std::vector<int> opens = group_at_phrases(ranges, phrases, most_bars);
      opens.push_back(static_cast<int>(ranges.size()));
      for (std::size_t group = 0; group + 1 < opens.size(); ++group)
        result_.return_stretches.push_back(
            {ranges[opens[group]].first, ranges[opens[group + 1] - 1].last});
    }
  }

  void find_joins() {
    result_.joins_of.resize(chunks().size());
    for (int left = 0; left + 1 < static_cast<int>(result_.passages.size()); ++left) {
      const Passage& a = result_.passages[left];
      const Passage& b = result_.passages[left + 1];
      const bool played_at_source = a.in_return && b.in_return && a.section == b.section &&
                                    a.learned.last + 1 == b.learned.first;
      if (played_at_source) continue;
      const int index = static_cast<int>(result_.joins.size());
      result_.joins.push_back({left, a.chunk, b.chunk});
      result_.joins_of[a.chunk].push_back(index);
      if (b.chunk != a.chunk) result_.joins_of[b.chunk].push_back(index);
    }
  }

  void find_cues(const PhraseMap& phrases) {
    std::set<int> inner;
    for (const PlannedSection& section : result_.planned.sections) {
      inner.insert(section.bars.first);
      add_inner_cues(section.bars, phrases, inner);
    }
    result_.planned.rejoin = rejoin_bars(result_.planned, method_, inner);
    std::set<int> bars(piece_.cues.begin(), piece_.cues.end());
    bars.insert(inner.begin(), inner.end());
    bars.insert(numbered_.bars.begin(), numbered_.bars.end());
    for (const Chunk& chunk : chunks())
      if (chunk.raised) bars.insert(chunk.bars.first);
    add_cues_before_forks(result_, method_, numbered_.bars, bars);
    for (const int bar : numbered_.bars) add_cue(bar);
    for (const int bar : bars)
      if (!is_numbered(bar)) add_cue(bar);
    add_fork_drills(result_, method_);
  }

  bool is_numbered(int bar) const {
    return std::ranges::find(numbered_.bars, bar) != numbered_.bars.end();
  }

  // With the next number.
  void add_cue(int bar) {
    const Passage& passage = result_.passages[result_.passage_at(bar)];
    const int weight = chunks()[passage.chunk].raised ? numbers::kWeakFaces : 1;
    const int number = static_cast<int>(result_.planned.cues.size()) + 1;
    const bool is_new = numbered_.before > 0 && number > numbered_.before;
    result_.planned.cues.push_back({number, bar, passage.section, weight, is_new});
    result_.starts.push_back(result_.start_at(bar));
  }

  // Sections longer than eight bars also get starts inside, where phrases begin or else at chunks,
  // about eight bars apart; in long pieces about sixteen, so that one table of two dice holds them
  // where it can.
  void add_inner_cues(BarRange section, const PhraseMap& phrases, std::set<int>& bars) const {
    const int apart =
        piece_.bars > numbers::kLongPiece ? numbers::kStartsFarApart : numbers::kStartsApart;
    const int counted = section.size() - (section.first == 0 ? 1 : 0);
    const int parts = (counted + apart - 1) / apart;
    for (int part = 1; part < parts; ++part) {
      const int goal = section.last - counted + 1 + counted * part / parts;
      if (phrases.is_known(goal)) {
        if (const int start = phrases.nearest_start(goal, section); start > section.first) {
          bars.insert(start);
          continue;
        }
        if (counted <= numbers::kNeedsInnerStart) continue;
      }
      const Passage& passage = result_.passages[result_.passage_at(goal)];
      const int bar = passage.bars.first > section.first ? passage.bars.first : goal;
      bars.insert(is_numbered(bar) ? bar : numbered_before(goal, section).value_or(bar));
    }
  }

  // A start that stood where the chunk around `goal` began when the piece was divided otherwise.
  std::optional<int> numbered_before(int goal, BarRange section) const {
    for (int bar = goal; bar > goal - method_.chunk_most && bar > section.first; --bar)
      if (is_numbered(bar)) return bar;
    return std::nullopt;
  }

  void find_rivals() {
    const std::size_t count = chunks().size();
    std::vector<std::vector<bool>> rival(count);  // by chunk: empty, or by chunk
    for (const LookAlikes& group : piece_.look_alikes) {
      std::vector<std::vector<int>> passages;
      for (const BarRange& bars : group.passages) passages.push_back(result_.chunks_touching(bars));
      for (std::size_t i = 0; i < passages.size(); ++i)
        for (std::size_t j = i + 1; j < passages.size(); ++j) {
          const std::vector<int> ours = without(passages[i], passages[j]);
          const std::vector<int> theirs = without(passages[j], passages[i]);
          for (const int a : ours)
            for (const int b : theirs) {
              for (const int each : {a, b}) rival[each].resize(count);
              rival[a][b] = rival[b][a] = true;
            }
        }
    }
    result_.rivals.resize(count);
    for (std::size_t a = 0; a < count; ++a)
      for (std::size_t b = 0; b < rival[a].size(); ++b)
        if (rival[a][b]) result_.rivals[a].push_back(static_cast<int>(b));
  }

  const Piece& piece_;
  const Method& method_;
  const NumberedStarts& numbered_;
  Analysis result_;
};

}  // namespace

Analysis analyse(const Piece& piece, const Method& method, std::vector<Chunk> chunks,
                 const History& history) {
  for (Chunk& chunk : chunks) weigh(chunk, method, history);
  return Analyser(piece, method, std::move(chunks), history.starts()).take();
}

Analysis analyse(const Piece& piece, const Method& method, double load, const History& history) {
  // The same chunks however long learning takes.
  Method as_reckoned = method;
  as_reckoned.learn_factor = 1;
  return analyse(
      piece, method,
      divide_into_chunks(piece, divide_into_sections(piece), history.learned().at_one_time(),
                         method, TimeModel(piece, as_reckoned), load),
      history);
}

}  // namespace cahier
