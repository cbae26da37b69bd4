#include "log/past_editions.h"

#include <algorithm>
#include <chrono>
#include <set>

#include "plan/search/planner.h"

namespace cahier {
namespace {

constexpr int kMostDays = 3700;  // about ten years

// The nearest day of a month, going from `year` on by `step` years, that `good` takes.
template <typename Good>
Date nearest_day(const std::string& code, std::chrono::year year, std::chrono::years step,
                 Good good) {
  const std::chrono::month month{static_cast<unsigned>(std::stoi(code.substr(0, 2)))};
  const std::chrono::day day{static_cast<unsigned>(std::stoi(code.substr(2, 2)))};
  for (;; year += step) {
    const std::chrono::year_month_day date{year, month, day};
    if (date.ok() && good(Date{date})) return Date{date};
  }
}

std::chrono::year year_of(Date date) { return std::chrono::year_month_day{date}.year(); }

bool same_work(const SetTask& one, const SetTask& other) {
  return one.piece == other.piece && one.drill == other.drill && one.bars == other.bars &&
         one.cues == other.cues && one.throws == other.throws;
}

Date monday_of(Date date) { return date - days{weekday_index(date)}; }

}  // namespace

Date first_day_of(const std::string& code, Date from) {
  return nearest_day(code, year_of(from), std::chrono::years{1},
                     [&](Date date) { return date >= from; });
}

Date last_day_of(const std::string& code, Date until) {
  return nearest_day(code, year_of(until), std::chrono::years{-1},
                     [&](Date date) { return date <= until; });
}

PastEditions::PastEditions(const std::vector<Log>& logs, const std::vector<Piece>& pieces,
                           const Terms& terms, const Record& so_far, bool later_left_out,
                           LogFaults& faults)
    : pieces_(pieces), terms_(terms), so_far_(so_far), faults_(faults) {
  std::optional<int> same_day;  // the new workbook, if the log already has its line
  for (int log = 0; log < static_cast<int>(logs.size()); ++log)
    for (const LoggedEdition& written : logs[log].editions) {
      if (written.from.value == terms.from) {
        same_day = written.number.value;
        take_own_line(written);
      } else if (written.from.value < terms.from)
        add(written, log);
      else if (!later_left_out)
        faults_.refuse({log, written.from.at},
                       edition_begins_too_late(written.from.value, terms.from));
    }
  std::sort(editions_.begin(), editions_.end(),
            [](const PastEdition& a, const PastEdition& b) { return a.number < b.number; });
  const auto spot_of = [&](int number) {
    return std::find_if(written_at_.begin(), written_at_.end(),
                        [&](const WrittenAt& at) { return at.number == number; })
        ->spot;
  };
  for (std::size_t at = 1; at < editions_.size(); ++at)
    if (editions_[at].from <= editions_[at - 1].from)
      faults_.refuse(spot_of(editions_[at].number),
                     edition_out_of_order(editions_[at].number, editions_[at - 1].number,
                                          editions_[at - 1].from));
  if (!editions_.empty()) next_number_ = editions_.back().number + 1;
  if (same_day) next_number_ = *same_day;
}

void PastEditions::add(const LoggedEdition& written, int log) {
  const int number = written.number.value;
  const Date by = written.by ? written.by->value : terms_.by;
  auto found = std::find_if(editions_.begin(), editions_.end(),
                            [&](const PastEdition& one) { return one.number == number; });
  const Spot spot{log, written.number.at};
  if ((by - written.from.value).count() > kMostDays)
    return faults_.refuse({log, written.from.at}, edition_too_long());
  if (found == editions_.end()) {
    editions_.push_back(
        {number, written.from.value, by, written.minutes, written.keep, {}, {}, {}, {}});
    found = editions_.end() - 1;
    written_at_.push_back({number, "", spot});
  }
  const auto first = std::find_if(written_at_.begin(), written_at_.end(),
                                  [&](const WrittenAt& at) { return at.number == number; });
  const std::string where = faults_.place_of(first->spot, spot);
  if (found->from != written.from.value)
    return faults_.refuse({log, written.from.at},
                          another_date_of_edition(number, found->from, where));
  if (written.by && found->by != by)
    return faults_.refuse({log, written.by->at}, another_date_of_edition(number, found->by, where));
  if (written.minutes) found->minutes = written.minutes;
  add_cues(written, log, *found);
  add_tasks(written, log, *found);
}

void PastEditions::add_cues(const LoggedEdition& written, int log, PastEdition& edition) {
  if (written.cues.empty()) return;
  if (written.cues.size() != pieces_.size())
    return faults_.refuse({log, written.number.at},
                          cues_of_how_many_pieces(written.cues.size(), pieces_.size()));
  edition.cues.assign(pieces_.size(), {});
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
    for (const Written<int>& bar : written.cues[piece]) {
      if (!pieces_[piece].whole().contains(bar.value))
        faults_.refuse({log, bar.at}, no_such_bar(bar.value, pieces_[piece].whole()));
      if (std::ranges::find(edition.cues[piece], bar.value) != edition.cues[piece].end())
        faults_.refuse({log, bar.at}, cue_start_twice(bar.value));
      edition.cues[piece].push_back(bar.value);
    }
  edition.thrown = {edition.number, written.dice, edition.cues, {}};
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece) {
    std::vector<int>& shares = edition.thrown.shares.emplace_back(edition.cues[piece].size(), 1);
    for (std::size_t at = 0; !written.shares.empty() && at < shares.size(); ++at)
      shares[at] = written.shares[piece][at].value;
  }
}

void PastEditions::add_tasks(const LoggedEdition& written, int log, PastEdition& edition) {
  for (const LoggedTask& task : written.tasks) {
    const Spot spot{log, task.code.at};
    const int piece = task.piece ? task.piece->value - 1 : 0;
    if (piece >= static_cast<int>(pieces_.size())) {
      faults_.refuse_unread({log, task.piece->at}, no_such_piece_number(piece + 1, pieces_.size()));
      continue;
    }
    SetTask set{task.code.value,
                first_day_of(task.code.value, edition.from),
                piece,
                task.drill,
                task.bars.value,
                task.chunk,
                {},
                task.throws,
                task.minutes};
    for (const Written<int>& cue : task.cues) set.cues.push_back(cue.value);
    if (covers(set.drill, Covers::starts)) set.bars = pieces_[piece].whole();
    const BarRange whole = pieces_[piece].whole();
    if (!whole.contains(set.bars)) {
      faults_.refuse_unread({log, task.bars.at}, no_such_bar(outside(set.bars, whole), whole));
      continue;
    }
    if (set.date >= edition.by) {
      faults_.refuse_unread(spot, code_outside_edition(set.code, edition.from, edition.by));
      continue;
    }
    const auto earlier = std::find_if(edition.told.begin(), edition.told.end(),
                                      [&](const SetTask& one) { return one.code == set.code; });
    if (earlier == edition.told.end()) {
      edition.told.push_back(std::move(set));
      written_at_.push_back({edition.number, task.code.value, spot});
    } else if (!same_work(*earlier, set)) {
      const auto where =
          std::find_if(written_at_.begin(), written_at_.end(), [&](const WrittenAt& at) {
            return at.number == edition.number && at.code == task.code.value;
          });
      faults_.refuse(spot,
                     code_stands_for_two_things(set.code, faults_.place_of(where->spot, spot)));
    }
  }
}

void PastEditions::assume(Date from, const Spot& spot) {
  const Date by = std::max(terms_.by, from + days{1});
  if ((by - from).count() > kMostDays) return faults_.refuse_unread(spot, edition_too_long());
  faults_.warn(spot, no_edition_line(from, by));
  editions_.push_back({1, from, by, std::nullopt, false, {}, {}, {}, {}});
  next_number_ = 2;
}

PastEdition* PastEditions::of(Date date) {
  PastEdition* last = nullptr;
  for (PastEdition& edition : editions_)
    if (edition.from <= date) last = &edition;
  return last;
}

const Plan& PastEditions::plan_of(PastEdition& edition) {
  if (edition.plan) return *edition.plan;
  Terms terms = terms_;
  terms.from = edition.from;
  terms.by = edition.by;
  terms.upkeep = edition.keep;
  if (const double most = longest_day(terms); edition.minutes && most > 0)
    for (double& minutes : terms.minutes) minutes *= *edition.minutes / most;
  terms.record = {edition.number, {}, {}, std::nullopt};
  terms.record.starts =
      numbered_starts(static_cast<std::size_t>(&edition - editions_.data()), edition.cues);
  for (const Done& done : so_far_.done)
    if (done.date < edition.from) terms.record.done.push_back(done);
  for (const DayMinutes& day : so_far_.minutes)
    if (day.date < edition.from) terms.record.minutes.push_back(day);
  edition.plan = make_plan(pieces_, terms);
  return *edition.plan;
}

std::vector<SetTask> PastEditions::planned(PastEdition& edition) {
  std::vector<SetTask> tasks;
  const Plan& plan = plan_of(edition);
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      const bool one_chunk = task.drill == Drill::learn && !task.chunks.empty();
      tasks.push_back(
          {task.id, day.date, task.piece, task.drill, task.bars,
           one_chunk ? plan.pieces[task.piece].chunks[task.chunks.front()].id : std::string(),
           task.cues, task.throws, task.minutes});
    }
  return tasks;
}

std::optional<PastEditions::Found> PastEditions::find(const std::string& code, Date date) {
  for (auto edition = editions_.rbegin(); edition != editions_.rend(); ++edition) {
    if (edition->from > date) continue;
    const auto has_code = [&](const SetTask& task) { return task.code == code; };
    if (const auto told = std::find_if(edition->told.begin(), edition->told.end(), has_code);
        told != edition->told.end())
      return Found{*told, &*edition};
    if (!edition->lasts_on(first_day_of(code, edition->from))) continue;
    const std::vector<SetTask> tasks = planned(*edition);
    if (const auto task = std::find_if(tasks.begin(), tasks.end(), has_code); task != tasks.end())
      return Found{*task, &*edition};
  }
  return std::nullopt;
}

Date PastEditions::day_of(const std::string& code, Date date) const {
  for (auto edition = editions_.rbegin(); edition != editions_.rend(); ++edition)
    if (const Date day = first_day_of(code, edition->from);
        edition->from <= date && edition->lasts_on(day))
      return day;
  return last_day_of(code, date);
}

std::vector<SetTask> PastEditions::on(Date date) {
  std::vector<SetTask> tasks;
  PastEdition* edition = of(date);
  if (!edition) return tasks;
  const auto take = [&](const std::vector<SetTask>& all) {
    for (const SetTask& task : all)
      if (task.date == date) tasks.push_back(task);
  };
  take(edition->told);
  if (tasks.empty()) take(planned(*edition));
  return tasks;
}

std::optional<double> PastEditions::minutes_on(Date date) {
  const PastEdition* edition = of(date);
  if (!edition) return std::nullopt;
  const bool told = std::ranges::any_of(
      edition->told, [&](const SetTask& task) { return monday_of(task.date) == monday_of(date); });
  double minutes = 0;
  for (const SetTask& task : told ? edition->told : on(date)) {
    if (task.date != date) continue;
    if (!task.minutes) return std::nullopt;
    minutes += *task.minutes;
  }
  return minutes;
}

std::vector<SetTask> PastEditions::tasks_of(PastEdition& edition, Date until) {
  std::vector<SetTask> tasks = edition.told;
  std::set<Date> told_weeks;
  for (const SetTask& task : tasks) told_weeks.insert(monday_of(task.date));
  bool all_told = true;
  for (Date week = monday_of(edition.from); week < until; week += days{7})
    all_told = all_told && told_weeks.contains(week);
  if (!all_told)
    for (SetTask& task : planned(edition))
      if (!told_weeks.contains(monday_of(task.date))) tasks.push_back(std::move(task));
  std::stable_sort(tasks.begin(), tasks.end(),
                   [](const SetTask& a, const SetTask& b) { return a.date < b.date; });
  return tasks;
}

std::optional<TaskCounts> PastEditions::ahead(PastEdition& edition, Date from) {
  const Plan& plan = plan_of(edition);
  if (!plan.fits) return std::nullopt;
  return plan.counts_from(from);
}

std::optional<BarRange> PastEditions::chunk(const std::string& name, int piece, Date date,
                                            std::vector<std::string>& names) {
  for (auto edition = editions_.rbegin(); edition != editions_.rend(); ++edition) {
    if (edition->from > date) continue;
    for (const SetTask& task : edition->told)
      if (task.piece == piece && task.drill == Drill::learn && task.chunk == name) return task.bars;
    const bool latest = names.empty();
    for (const Chunk& chunk : plan_of(*edition).pieces[piece].chunks) {
      if (chunk.id == name) return chunk.bars;
      if (latest) names.push_back(chunk.id);
    }
  }
  return std::nullopt;
}

}  // namespace cahier
