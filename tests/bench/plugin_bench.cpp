// What the house-style plugin costs a check, beside the same rules in C++, on the fiches named behind the kitchen file. Prints
// microseconds of processor time a fiche for each, best of the rounds; scripts/bench puts them into its table. Stops when the
// two do not find the same.
#include <algorithm>
#include <ctime>
#include <functional>
#include <iostream>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/cli/files.h"
#include "core/cli/kitchen_plugins.h"
#include "core/cli/surroundings.h"
#include "core/format/format.h"
#include "core/rules/rule.h"
#include "tests/bench/house_rules.h"

namespace {

using namespace tamis;

constexpr int rounds = 7;

/// A fiche with all that a check reads before its rules run.
struct Ready {
  std::shared_ptr<const fiche::Document> document;
  std::unique_ptr<fiche::Fiche> fiche;
  rules::Structure structure;
  flow::Flow flow;
};

using Run = std::function<void(rules::Check&)>;

std::string found(const std::vector<base::Finding>& findings) {
  std::string out;
  for (const base::Finding& one : findings)
    out += std::to_string(one.where.begin) + "-" + std::to_string(one.where.end) + " " + one.rule + ": " + one.message + " [" +
           one.advice + "] " + one.source + "\n";
  return out;
}

std::vector<base::Finding> run_on(const Ready& ready, const fiche::Kitchen& kitchen, const Run& run) {
  std::vector<base::Finding> findings;
  rules::Check check(*ready.fiche, kitchen, fiche::empty_library(), ready.structure, ready.flow, findings);
  run(check);
  return findings;
}

double best_micros(const std::vector<Ready>& all, const fiche::Kitchen& kitchen, const Run& run) {
  double best = 1e12;
  for (int round = 0; round < rounds; ++round) {
    const std::clock_t started = std::clock();
    for (const Ready& one : all) run_on(one, kitchen, run);
    best = std::min(best, 1e6 * static_cast<double>(std::clock() - started) / CLOCKS_PER_SEC);
  }
  return best / static_cast<double>(all.size());
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 3) return 2;
  cli::Surroundings surroundings(arguments[1]);
  const fiche::Kitchen& kitchen = *surroundings.of(arguments[1]).kitchen;
  rules::MoreRules* plugins = surroundings.plugins(arguments[1]).checks();
  if (plugins == nullptr) return 2;
  const bench::HouseSettings settings;
  const Run in_lua = [plugins](rules::Check& check) { plugins->run(check); };
  const Run in_cpp = [&settings](rules::Check& check) { bench::run_house_rules(check, settings); };
  std::vector<Ready> all;
  std::size_t findings = 0;
  for (int i = 2; i < count; ++i) {
    const auto source = cli::read_file(arguments[i]);
    Ready one{source ? format::read(*source).document : nullptr, nullptr, {}, {}};
    if (one.document == nullptr) return 2;
    one.fiche = std::make_unique<fiche::Fiche>(fiche::read_fiche(*one.document, kitchen));
    one.structure = rules::read_structure(*one.document);
    one.flow = flow::read_flow(*one.fiche, fiche::empty_library());
    const auto by_lua = run_on(one, kitchen, in_lua), by_cpp = run_on(one, kitchen, in_cpp);
    if (found(by_lua) != found(by_cpp)) {
      std::cerr << arguments[i] << ": not the same\n--- plugin\n" << found(by_lua) << "--- C++\n" << found(by_cpp);
      return 1;
    }
    findings += by_lua.size();
    all.push_back(std::move(one));
  }
  std::cerr << findings << " findings in " << all.size() << " fiches, the same from both\n";
  std::cout << best_micros(all, kitchen, in_lua) << " " << best_micros(all, kitchen, in_cpp) << "\n";
}
