#include "cli/commands.h"
#include "cli/output.h"
#include "cli/say.h"
#include "text/terminal.h"

namespace cahier {
namespace {

constexpr std::string_view kStarter =
    R"yaml(# A piece for cahier. Lines that begin with # are comments; remove the # to use one.
# The first five lines are enough for a workbook.
title: My piece
bars: 32                # written bars, as numbered in your own score; bar 0 (a pickup) not counted
meter: 4/4              # also 6/8, 5/8, 2+3/8
tempo: 96               # performance tempo, in beats a minute
key: C major            # also "2 flats"; for the staves

# short title: My piece # for narrow columns, 24 letters at most; made from a long title if not given
# composer: Somebody
# instrument: piano     # also organ, harp, guitar, violin, cello, voice and others
# parts: [right hand, left hand]        # what is learned apart
# staves: [treble, bass]                # other clefs: alto, tenor, treble 8 below, and others
# pickup: 1             # beats in bar 0
# beat: quarter         # what the tempo counts: eighth, quarter, dotted quarter, half
# level: 2              # 1 easy to 5 very hard

# What changes, from a bar on:
# changes:
#   - {bar: 17, meter: 3/4, key: G major, tempo: 72}

# Sections in the order of the score. A return is not learned a second time.
# sections:
#   - {name: A, bars: 1-8, phrases: [1-4, 5-8]}
#   - {name: B, bars: 9-24, level: 3}
#   - {name: A again, bars: 25-32, same as: 1-8}

# hard: [{bars: 13-14, level: 5}]
# look-alikes: [{bars: [5-8, 21-24], fork: [7, 23]}]    # alike at first; the fork is where they part
# repeats: [{bars: 1-8, times: 2}]
# endings: [{bars: 8, times: [1]}, {bars: 9, times: [2]}]           # at the end of a repeat
# marks:                # with holds: yes it is in force until the next one that holds
#   - {bar: 9, note: "softer than it looks"}
#   - {bar: 17, note: "new manual", holds: yes}
# cues: [5, 13]         # more places to start from memory
# fingering: ready      # or: not yet

# by: 2027-03-20        # the day it must be ready, in place of --by
# from: 2027-01-04      # the first day of practice, in place of --from
# student: Mia          # printed on the cover and at the foot of every page
# teacher: A. Ott

# practice:
#   minutes: 15         # a day, or {mon: 15, sat: 30}
#   days off: [sun]     # weekdays, days, or spans such as 2027-02-20..2027-02-23
#   blocks: 1           # sittings a day
#   lesson: thu
#   order: forward      # or backward, or hardest first
#   new to performing: no
#   dice: two dice      # to choose cue starts by chance; or one die, d20, coins
#   temper: weak        # spoken parts and write-outs: yes, no, or weak bars only
)yaml";

}  // namespace

int write_starter(const Request& request) {
  if (request.output.empty() || is_standard_output(request.output)) {
    say_out(std::string(kStarter));
    return 0;
  }
  Output output(request.output, Replaces::nothing, request.replace, {});
  output.write(std::string(kStarter));
  const std::string name = line_for_terminal(request.output);
  say_text(name + ": edit it, then run cahier print " + name + " --by DATE\n");
  output.commit();
  return 0;
}

}  // namespace cahier
