// Reads a plan from standard input (`cahier plan --json`), judges it by the ten rules and what it
// says of its gaps by its days, and says every breach. Exit code 0 when there is none, 1 when there
// is one, 2 when it is no plan.
//   judge_plan [--temper yes|no|weak] [--runs N] [--repetitions N] [--chunk-bars N] [--near SHARE]
#include <iostream>
#include <stdexcept>
#include <utility>

#include "plan_rules.h"
#include "plan_spacing.h"

int main(int argc, char** argv) {
  try {
    judge::Asked asked;
    double least_share = 0;
    for (int index = 1; index + 1 < argc; index += 2) {
      const std::string option = argv[index];
      if (option == "--temper") asked.temper = argv[index + 1];
      if (option == "--runs") asked.runs = std::stoi(argv[index + 1]);
      if (option == "--chunk-bars") asked.chunk_most = std::stoi(argv[index + 1]);
      if (option == "--repetitions") asked.repetitions = std::stoi(argv[index + 1]);
      if (option == "--near") least_share = std::stod(argv[index + 1]);
    }
    const judge::Plan plan = judge::read_plan(std::cin);
    std::vector<std::string> breaches = judge::breaches(plan, asked);
    for (std::string& fault : judge::spacing_faults(plan, least_share))
      breaches.push_back(std::move(fault));
    for (const std::string& breach : breaches) std::cout << breach << "\n";
    return breaches.empty() ? 0 : 1;
  } catch (const std::exception& error) {
    std::cout << "no plan: " << error.what() << "\n";
    return 2;
  }
}
