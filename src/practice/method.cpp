#include "practice/method.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <functional>
#include <optional>
#include <set>

#include "text/yaml.h"

namespace cahier {
namespace {

constexpr std::string_view kShape =
    "write it as {value: 5, source: common practice}; every number of a method names its source";

std::optional<double> number_in(const YamlNode& node) {
  if (node.kind != YamlNode::Kind::scalar || node.quoted) return std::nullopt;
  double value = 0;
  const char* end = node.text.data() + node.text.size();
  const auto read = std::from_chars(node.text.data(), end, value);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

// Reads the fields of a method one by one; each names its key, its bounds and where it goes.
class MethodReader {
 public:
  MethodReader(const Source& source, const YamlNode& root, Diagnostics& diagnostics)
      : source_(source), diagnostics_(diagnostics), fields_(source, root, diagnostics) {}

  std::string about() { return fields_.text("about").value_or(""); }

  void number(std::string_view key, double& target, double least, double most) {
    if (const YamlNode* value = sourced(key)) take(*value, key, target, least, most);
  }

  void whole(std::string_view key, int& target, int least, int most) {
    double value = target;
    number(key, value, least, most);
    if (value != static_cast<int>(value)) {
      faulty_.insert(std::string(key));
      if (const YamlNode* node = sourced(key))
        diagnostics_.error(source_, node->at, fmt::format("\"{}\" must be a whole number", key));
      return;
    }
    target = static_cast<int>(value);
  }

  // `example` is a list within the bounds.
  void by_level(std::string_view key, ByLevel& target, double least, double most,
                std::string_view example) {
    const YamlNode* value = sourced(key);
    if (!value) return;
    if (value->kind != YamlNode::Kind::list || value->items.size() != target.size()) {
      diagnostics_.error(source_, value->at,
                         fmt::format("\"{}\" needs five numbers, one for each level", key),
                         fmt::format("for example {}", example));
      return;
    }
    for (std::size_t i = 0; i < target.size(); ++i)
      take(value->items[i], key, target[i], least, most);
  }

  void spacing(std::vector<Method::Spacing>& target) {
    const YamlNode* value = sourced("spacing");
    if (!value) return;
    for (const YamlNode& pair : value->items) {
      Method::Spacing point{};
      if (pair.kind != YamlNode::Kind::list || pair.items.size() != 2) {
        diagnostics_.error(source_, pair.at, "a spacing pair must be [delay, gap], both in days");
        return;
      }
      take(pair.items[0], "spacing", point.delay, 1, 4000);
      take(pair.items[1], "spacing", point.gap, 0.5, 400);
      if (!target.empty() &&
          (point.delay <= target.back().delay || point.gap <= target.back().gap ||
           (point.gap + point.delay) * target.back().gap <=
               point.gap * (target.back().gap + target.back().delay)))
        diagnostics_.error(source_, pair.at,
                           "longer delays need longer gaps, but a smaller share of the time left",
                           "for example [[7, 3], [35, 8], [70, 12]]");
      target.push_back(point);
    }
    if (target.size() < 2)
      diagnostics_.error(source_, value->at, "spacing needs at least two pairs of [delay, gap]");
  }

  // Days, in falling order.
  void falling_days(std::string_view key, std::vector<int>& target, int most) {
    const YamlNode* value = sourced(key);
    if (!value) return;
    const std::string example = "for example [14, 9, 5]";
    if (value->kind != YamlNode::Kind::list || value->items.empty() || value->items.size() > 10) {
      diagnostics_.error(source_, value->at, fmt::format("\"{}\" needs one to ten days", key),
                         example);
      return;
    }
    for (const YamlNode& item : value->items) {
      int days = 1;
      if (!take_whole(item, key, days, 1, most)) return;
      if (!target.empty() && days >= target.back())
        diagnostics_.error(source_, item.at,
                           fmt::format("the days of \"{}\" must come nearer to the date", key),
                           example);
      target.push_back(days);
    }
  }

  void runs_apart(std::vector<Method::RunsApart>& target) {
    const YamlNode* value = sourced("days between runs");
    if (!value) return;
    const std::string example = "for example [[0, 10], [70, 14], [180, 21]]";
    for (const YamlNode& pair : value->items) {
      Method::RunsApart step{};
      if (pair.kind != YamlNode::Kind::list || pair.items.size() != 2) {
        diagnostics_.error(source_, pair.at,
                           "a pair must be [days left, days between two run-throughs]", example);
        return;
      }
      if (!take_whole(pair.items[0], "days between runs", step.left, 0, 4000) ||
          !take_whole(pair.items[1], "days between runs", step.days, 1, 400))
        return;
      if (target.empty() ? step.left != 0 : step.left <= target.back().left)
        diagnostics_.error(source_, pair.at, "the days left must rise, from 0 on", example);
      target.push_back(step);
    }
    if (target.empty())
      diagnostics_.error(source_, value->at,
                         "\"days between runs\" needs pairs of [days left, days between]", example);
  }

  // For a rule between two fields; it is told at `key`. Nothing is said where either has a fault of
  // its own.
  void require(bool holds, std::string_view key, std::string_view other, std::string message) {
    if (holds || faulty_.contains(key) || faulty_.contains(other)) return;
    const YamlNode* node = fields_.node(key);
    diagnostics_.error(source_, node ? node->at : Place{}, std::move(message));
  }

  void finish() { fields_.refuse_unknown(); }

 private:
  // The value beside a source; nullptr, with an error, when either is not there.
  const YamlNode* sourced(std::string_view key) {
    const YamlNode* node = fields_.node(key);
    if (!node) {
      faulty_.insert(std::string(key));
      fields_.missing(key, std::string(kShape));
      return nullptr;
    }
    const YamlNode* value = node->find("value");
    const YamlNode* from = node->find("source");
    if (!value || !from || from->text.empty()) {
      faulty_.insert(std::string(key));
      diagnostics_.error(source_, node->at, fmt::format("\"{}\" has no value or no source", key),
                         std::string(kShape));
      return nullptr;
    }
    return value;
  }

  // Whether the number can be used.
  bool take(const YamlNode& node, std::string_view key, double& target, double least, double most) {
    const std::optional<double> value = number_in(node);
    if (value && *value >= least && *value <= most) {
      target = *value;
      return true;
    }
    faulty_.insert(std::string(key));
    diagnostics_.error(source_, node.at,
                       fmt::format("\"{}\" must be a number from {} to {}", key, least, most));
    return false;
  }

  bool take_whole(const YamlNode& node, std::string_view key, int& target, int least, int most) {
    double value = target;
    if (!take(node, key, value, least, most)) return false;
    target = static_cast<int>(value);
    if (value == target) return true;
    diagnostics_.error(source_, node.at, fmt::format("\"{}\" needs whole numbers", key));
    return false;
  }

  const Source& source_;
  Diagnostics& diagnostics_;
  YamlFields fields_;
  std::set<std::string, std::less<>> faulty_;  // keys without a number that can be used
};

}  // namespace

int Method::days_between_runs(int left) const {
  const auto step = std::find_if(runs_apart.rbegin(), runs_apart.rend(),
                                 [&](const RunsApart& one) { return left >= one.left; });
  return step == runs_apart.rend() ? 1 : step->days;
}

Method Method::with_chunks_up_to(int bars) const {
  Method method = *this;
  method.chunk_minutes *= static_cast<double>(bars) / chunk_most;
  method.chunk_most = bars;
  return method;
}

Method read_method(const Source& source, std::string name, Diagnostics& diagnostics) {
  Method method;
  method.name = std::move(name);
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return method;
  const Diagnostics::Within within(diagnostics,
                                   fmt::format("while reading method \"{}\"", method.name));
  MethodReader read(source, *root, diagnostics);
  method.about = read.about();
  read.whole("chunk least", method.chunk_least, 1, 16);
  read.whole("chunk most", method.chunk_most, 1, 32);
  read.number("chunk minutes", method.chunk_minutes, 0.5, 120);
  read.whole("stretch bars", method.stretch_bars, 1, 200);
  read.whole("repetitions", method.repetitions, 1, 20);
  read.by_level("learn tempo", method.learn_tempo, 0.05, 1, "[0.6, 0.5, 0.45, 0.4, 0.33]");
  read.by_level("learn stumble", method.learn_stumble, 1, 10, "[1.2, 1.3, 1.5, 1.7, 2]");
  read.number("learn pause", method.learn_pause, 0, 60);
  read.number("setup", method.setup, 0, 300);
  read.number("join tempo", method.join_tempo, 0.05, 1);
  read.number("recall tempo", method.recall_tempo, 0.05, 1);
  read.number("slow tempo", method.slow_tempo, 0.05, 1);
  read.number("counted tempo", method.counted_tempo, 0.05, 1);
  read.number("proved tempo", method.proved_tempo, 0.05, 1);
  read.whole("proved times", method.proved_times, 1, 10);
  read.number("recall stumble", method.recall_stumble, 1, 10);
  read.number("cue start seconds", method.cue_start_seconds, 5, 600);
  read.whole("cue throws", method.cue_throws, 1, 12);
  read.whole("spoken times", method.spoken_times, 1, 10);
  read.whole("spoken own times", method.spoken_own_times, 1, 10);
  read.whole("spoken together times", method.spoken_together_times, 1, 10);
  read.number("spoken tempo", method.spoken_tempo, 0.05, 1);
  read.by_level("write out seconds", method.write_out_seconds, 1, 1800, "[20, 25, 35, 45, 60]");
  read.number("silent stumble", method.silent_stumble, 1, 10);
  read.whole("silent days", method.silent_days, 1, 60);
  read.number("run setup", method.run_setup, 0, 1800);
  read.number("minutes", method.minutes, 1, 480);
  read.whole("blocks", method.blocks, 1, 6);
  read.number("break minutes", method.break_minutes, 1, 60);
  read.number("break after", method.break_after, 5, 60);
  read.whole("quiet days", method.quiet_days, 0, 60);
  read.whole("first recall days", method.first_recall_days, 1, 7);
  read.whole("run throughs", method.run_throughs, 5, 60);
  read.whole("run throughs for a new performer", method.run_throughs_new, 5, 60);
  read.whole("run days", method.run_days, 3, 30);
  read.whole("runs a day", method.runs_a_day, 1, 2);
  read.whole("weak level", method.weak_level, 1, 5);
  read.number("learn share", method.learn_share, 0, 1);
  read.number("prove share", method.prove_share, 0, 0.8);
  read.spacing(method.spacing);
  read.number("longest gap", method.longest_gap, 1, 2);
  read.whole("criterion", method.criterion, 1, 10);
  read.whole("criterion days", method.criterion_days, 2, 60);
  read.number("hard gap", method.hard_gap, 0.01, 1);
  read.number("slip gap", method.slip_gap, 0.05, 1);
  read.whole("join days", method.join_days, 1, 30);
  read.whole("section days", method.section_days, 6, 60);
  read.whole("section bars", method.section_bars, 8, 200);
  read.whole("passes", method.passes, 1, 3);
  read.whole("second pass days", method.second_pass_days, 21, 366);
  read.number("first recall tempo", method.first_recall_tempo, 1, 2);
  read.number("tempo step", method.tempo_step, 0.02, 1);
  read.whole("session starts", method.session_starts, 1, 36);
  read.whole("sessions apart", method.sessions_apart, 1, 30);
  read.whole("fork drills", method.fork_drills, 1, 3);
  read.whole("fork drill days", method.fork_drill_days, 14, 366);
  read.whole("last fork days", method.last_fork_days, 3, 60);
  read.number("spoken and written share", method.temper_share, 0, 0.9);
  read.whole("spoken and written quiet days", method.temper_quiet_days, 0, 60);
  read.whole("first run days", method.first_run_days, 2, 60);
  read.runs_apart(method.runs_apart);
  read.falling_days("last run days", method.last_run_days, 7);
  read.falling_days("listener days", method.listener_days, 60);
  read.number("crumbs", method.crumbs, 0.05, 0.9);
  read.number("least learn share", method.least_learn_share, 0, 1);
  read.number("most learn share", method.most_learn_share, 0, 1);
  read.whole("prove days", method.prove_days, 0, 366);
  read.whole("upkeep gap", method.upkeep_gap, 1, 60);
  read.whole("upkeep growth", method.upkeep_growth, 1, 10);
  read.whole("upkeep whole turn", method.upkeep_whole_turn, 1, 20);
  read.by_level("slip chance", method.slip_chance, 0.001, 0.9, "[0.02, 0.04, 0.08, 0.15, 0.25]");
  read.number("slip weight", method.slip_weight, 0.5, 100);
  read.number("pace of players", method.pace_of_players, 0.01, 2);
  read.number("pace of levels", method.pace_of_levels, 0.01, 2);
  read.number("pace of times", method.pace_of_times, 0.01, 2);
  read.require(
      method.chunk_most >= method.least_chunk_most(), "chunk most", "chunk least",
      fmt::format("with chunks of at least {} bars, \"chunk most\" must be at least {}, or "
                  "some phrases cannot be divided",
                  method.chunk_least, method.least_chunk_most()));
  read.require(std::is_sorted(method.slip_chance.begin(), method.slip_chance.end()), "slip chance",
               "slip chance",
               "a harder level cannot have a smaller chance of a slip than an easier one");
  read.require(method.least_learn_share <= method.most_learn_share, "most learn share",
               "least learn share", "the most for learning cannot be less than the least");
  read.require(method.run_throughs_new >= method.run_throughs, "run throughs for a new performer",
               "run throughs", "a new performer cannot need fewer run-throughs than others");
  read.finish();
  return method;
}

}  // namespace cahier
