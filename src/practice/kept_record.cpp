#include "practice/kept_record.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

Done done_on(Date date, int piece, Drill drill, BarRange bars) {
  Done done;
  done.date = date;
  done.piece = piece;
  done.drill = drill;
  done.bars = bars;
  return done;
}

}  // namespace

std::vector<Done> taken_as_done(const Piece& piece, int index, const Method& method, Date from,
                                const LearnedBars& known) {
  const Date performed = from - days{1};
  std::vector<Done> taken;
  const bool nothing_known = known.at_one_time().empty();
  const Date learned =
      nothing_known ? performed - days{method.quiet_days + numbers::kKeptLearnedBefore} : performed;
  for (const BarRange& missing : known.unlearned())
    taken.push_back(done_on(learned, index, Drill::learn, missing));
  if (!nothing_known) return taken;
  for (const Drill drill : {Drill::recall, Drill::spoken_part, Drill::write_out})
    taken.push_back(done_on(performed - days{1}, index, drill, piece.whole()));
  taken.push_back(done_on(performed, index, Drill::run_through, piece.whole()));
  return taken;
}

Record as_kept(Record record, const std::vector<Piece>& pieces, const Method& method, Date from) {
  for (int index = 0; index < static_cast<int>(pieces.size()); ++index) {
    const LearnedBars known(record, index, pieces[index]);
    for (const Done& done : taken_as_done(pieces[index], index, method, from, known))
      record.done.insert(std::ranges::upper_bound(record.done, done.date, {}, &Done::date), done);
  }
  return record;
}

}  // namespace cahier
