// The numbers by which practice is planned and judged and that no method file names: a teacher
// would hardly discuss them, and most keep a plan on the safe side of a number of the method. A
// number that the planner and the figures of quality share stands here once. All are common
// practice where no source is named. One line each, since tests/alter reads them: type, name,
// value, why.
#pragma once

#include <cstddef>

namespace cahier::numbers {

// practice
inline constexpr int kKeptLearnedBefore = 3;   // days before the quiet ones: a kept piece was new
inline constexpr int kTriesOfARepetition = 2;  // a step of new bars is left after twice its number
inline constexpr double kDoubt = 0.05;         // chance of a bound on clean runs being wrong: 95 %
inline constexpr std::size_t kMostCoins = 6;   // more are no longer seen at a glance
inline constexpr double kCoinPatience = 1.5;   // throws expected of coins, where six of them can
inline constexpr double kMostPaceRatio = 5;    // a pause for lunch must not pace a season
inline constexpr std::size_t kMostPartsAlone = 3;  // with more, none is played and said by itself

// plan, plan/rules
inline constexpr double kDangerOfRepeat = 0.5;   // of a fork: back or on, the times are counted
inline constexpr double kDangerOfOneBar = 0.75;  // the ways are the same again after one bar
inline constexpr int kOverdueWeek = 7;  // days in which what was overdue comes back (rule 5)

// plan/chunks
inline constexpr int kSectionBars = 16;        // a section, where the piece names none
inline constexpr int kNeedsInnerStart = 16;    // a longer section has a start inside (rule 7)
inline constexpr int kStartsApart = 8;         // bars between starts inside a section, about
inline constexpr int kStartsFarApart = 16;     // the same in a long piece: one table holds them
inline constexpr int kLongPiece = 200;         // bars: a longer piece is a long one
inline constexpr int kWeakFaces = 2;           // a start into what slips: times the others' share
inline constexpr int kMostStartsOfADrill = 4;  // at a fork that was found: more take turns
inline constexpr double kTooLongPhrase = 1.5;  // times the most bars: a phrase divided all the same
inline constexpr int kRejoinApart = 4;         // bars between two places to rejoin at
inline constexpr int kRejoinFarApart = 8;      // the same in a long piece
inline constexpr int kRejoinLanding = 2;       // bars that have to hold when one goes on from there
inline constexpr int kRejoinPhrase = 8;        // bars of a phrase: so far an easier place is near

// plan/due, and the figures that measure the same
inline constexpr int kLastWeek = 7;          // days before the date: half of the runs at most
inline constexpr int kDaysLeft = 21;         // from the last new bars: with fewer little is asked
inline constexpr int kGrowingRunsNeed = 18;  // from the last new bars: with fewer they do not grow
inline constexpr int kEve = 1;               // days before the date on which nobody listens
inline constexpr int kLeastWholeBars = 8;    // a shorter section is one stretch anyway
inline constexpr int kSectionSpare = 11;     // days before a section has to be played, it presses
inline constexpr double kEarlyGap = 0.5;     // best gaps: a recall before this is an early one
inline constexpr double kLateGap = 1.5;      // best gaps: a recall after this is a late one
inline constexpr int kCriterionGap = 2;      // days between the first recalls of a chunk
inline constexpr int kTempoGap = 1;          // days, for bars on their way to their tempo
inline constexpr int kProvingDays = 14;      // before the first run-through, bars are proved
inline constexpr double kFirstRecallSpare = 0.05;  // less than allowed: marks are rounded
inline constexpr double kTempoStepSpare = 0.01;    // the same from one recall to the next
inline constexpr double kToTempo = 0.55;  // of the days to the first run, to the full tempo
inline constexpr double kToTempoAtLast = 6.0 / 7;  // of the days to the date, where there is no run
inline constexpr double kReachRipe = 0.5;  // best gaps: a recall goes on to such a neighbour
inline constexpr int kReachBridge = 2;     // chunks played on the way to another that is wanted
inline constexpr int kForkLastSpare = 2;   // days before the last drill of a fork is overdue
inline constexpr int kForkLeastGap = 2;    // days between its first and its second drill
inline constexpr int kForkNextDays = 3;    // practice days: more forks than these, two a day
inline constexpr int kFirstForkBy = 12;    // days before the date: none waits for ever
inline constexpr double kForkRipe = 0.15;  // best gaps: a first drill needs a little forgetting
inline constexpr int kStartsWhileLearning = 2;   // in a session, before the piece is whole
inline constexpr int kSessionsAtLeastEvery = 6;  // practice days, however few starts are ripe
inline constexpr double kNewStartRipe = 0.5;     // best gaps: for a start that was never assigned
inline constexpr double kStartRipe = 0.8;        // best gaps: for one that was
inline constexpr double kDaysForOneTemper = 2;   // about every other day has other work

// plan/schedule
inline constexpr double kLightShare = 0.5;          // of the last day's minutes: the day is light
inline constexpr double kFullShareSpare = 0.00667;  // over the crumbs: a day with so much is full
inline constexpr int kFreeInARow = 1;               // days left free since their work can wait
inline constexpr int kFreeBeforeARun = 2;           // the same, the next day having a run-through
inline constexpr double kWorthwhileMinutes = 3;     // nobody sits down for less
inline constexpr int kThinDaysApart = 5;      // days until the same bars fill a thin day again
inline constexpr double kHardlyABlock = 1.3;  // a day that hardly passes a block needs no break
inline constexpr int kCatchUpWeek = 4;        // practice days: a shorter week has none to catch up
inline constexpr int kNoCatchUpDays = 10;     // before the date every day is needed
inline constexpr double kPassesUpTo = 0.5;    // of a day's minutes: a day of passes is a dull one
inline constexpr int kPassesAtLast = 21;      // days before the date from which they may be all
inline constexpr double kPassRipe = 0.25;     // best gaps since the bars were last played
inline constexpr double kPassAgain = 0.2;     // the same where a day has room
inline constexpr int kManyPasses = 3;         // of each kind, where a day has room
inline constexpr double kWholeAgain = 0.25;   // best gaps, for a stretch where a day has room
inline constexpr int kMoreRuns = 2;           // for one who made them all before this edition
inline constexpr double kUpkeepBeforeRun = 0.5;  // best gaps: so near to a run no sitting is needed
inline constexpr double kSoonDue = 1;            // best gaps: a tight day's room goes to these
inline constexpr int kLookAhead = 24;            // chunks tried before their turn on a tight day
inline constexpr unsigned kRestarts = 40;        // shuffled tries, where every variant is tried

// plan/search, and the figure of spread learning
inline constexpr double kChunkOfADay = 0.6;     // of the longest day: a chunk takes no more
inline constexpr double kMinutesAChunk = 15;    // a day learns one for every quarter of an hour
inline constexpr double kNewShare = 0.6;        // of the time, at most, for new bars
inline constexpr double kSparedDays = 7.0 / 6;  // six days in seven learn
inline constexpr double kMostDaysAChunk = 6;    // of practice: to wait longer spreads nothing
inline constexpr double kFullPaceShare = 0.5;   // of a day's minutes: so much new is full pace
inline constexpr double kLearnShareSpare = 0.00667;  // over the least share: days are whole
inline constexpr std::size_t kTinyWork = 12;         // chunks: of less every variant is tried
inline constexpr std::size_t kTinyDivisions = 32;    // all are tried where there are no more
inline constexpr std::size_t kBeamWidth = 100;       // beginnings of a plan kept after each day
inline constexpr double kMostLeverMinutes = 240;     // a day: no remedy asks for more
inline constexpr int kFewestRepetitions = 2;         // no remedy asks for fewer
inline constexpr int kMostLeverChunk = 8;            // bars: no remedy asks for longer chunks
inline constexpr int kMostDaysMoved = 366;           // no remedy moves a date farther
inline constexpr std::size_t kMostRemedies = 8;      // more would not be read
inline constexpr int kCoarseLever = 4;               // steps: all are tried beside another lever

// plan/quality
inline constexpr int kSeamDays = 7;           // in which every seam is played
inline constexpr int kSeamSoonDays = 3;       // in which half of them are
inline constexpr int kTemperWeek = 7;         // days running are a week
inline constexpr int kMostTemperInAWeek = 2;  // spoken and written turns on the same bars
inline constexpr int kDaysToFill = 14;        // practice days after the last new bars, at least
inline constexpr int kLastNotFilled = 2;      // of them: the last days are light
inline constexpr double kMostThin = 0.25;     // of the days with work may be crumbs
inline constexpr double kHardGapMost = 0.75;  // of the easy bars' gap
inline constexpr int kEasyLevel = 2;          // and 1
inline constexpr double kMarksApart = 0.12;   // marks are a twentieth apart, and rounded twice
inline constexpr int kMostPieceChanges = 3;   // of piece, in a day of a programme
inline constexpr double kPassesKept = 0.8;    // of the last workbook's, and run-throughs: else said
inline constexpr double kJoinsKept = 0.5;     // the same of joins
inline constexpr double kNearShare = 0.95;    // of the gaps are near the best ones

}  // namespace cahier::numbers
