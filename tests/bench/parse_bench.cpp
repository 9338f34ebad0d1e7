// Reading alone, on the files named: ours (bytes to a tree with spans, strictly) beside pugixml (load_buffer and one
// walk over all nodes and attributes, with white space kept as we keep it). Prints seconds of processor time for each,
// best of the rounds; scripts/bench puts them into its table.
#include <ctime>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "core/base/source.h"
#include "core/format/format.h"

namespace {

constexpr int rounds = 7;

using Sources = std::vector<std::shared_ptr<const tamis::base::Source>>;

std::size_t walked(const pugi::xml_node& node) {
  std::size_t seen = 1;
  for (const pugi::xml_attribute attribute : node.attributes()) seen += attribute.value()[0] != '\0' ? 1U : 0U;
  for (const pugi::xml_node child : node.children()) seen += walked(child);
  return seen;
}

std::size_t read_by_pugixml(const Sources& sources) {
  std::size_t seen = 0;
  for (const auto& source : sources) {
    pugi::xml_document document;
    document.load_buffer(source->bytes().data(), source->bytes().size(), pugi::parse_full | pugi::parse_ws_pcdata,
                         pugi::encoding_utf8);
    seen += walked(document);
  }
  return seen;
}

std::size_t read_by_tamis(const Sources& sources) {
  std::size_t seen = 0;
  for (const auto& source : sources) {
    const tamis::format::Read read = tamis::format::read(source);
    if (read.document == nullptr) {
      std::cerr << source->path() << " cannot be read\n";
      std::exit(2);
    }
    seen += read.document->first_child(read.document->top());
  }
  return seen;
}

template <class Work>
double best_seconds(const Work& work) {
  double best = 1e9;
  for (int round = 0; round < rounds; ++round) {
    const std::clock_t started = std::clock();
    volatile std::size_t seen = work();
    (void)seen;
    best = std::min(best, static_cast<double>(std::clock() - started) / CLOCKS_PER_SEC);
  }
  return best;
}

}  // namespace

int main(int count, char** arguments) {
  Sources sources;
  for (int i = 1; i < count; ++i) {
    std::ifstream in(arguments[i], std::ios::binary);
    sources.push_back(std::make_shared<tamis::base::Source>(
        arguments[i], std::string(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>())));
  }
  std::cout << best_seconds([&] { return read_by_tamis(sources); }) << " "
            << best_seconds([&] { return read_by_pugixml(sources); }) << "\n";
}
