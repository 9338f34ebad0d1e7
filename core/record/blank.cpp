#include "core/record/blank.h"

#include <cmath>

#include "core/physics/boiling_point.h"
#include "core/record/csv.h"
#include "core/record/log.h"
#include "core/record/words.h"

namespace tamis::record {
namespace {

using fiche::At;
using fiche::Node;

constexpr int holding_lines = 6;

std::string first_of(std::string_view names) { return std::string(names.substr(0, names.find('|'))); }

class Writing {
 public:
  Writing(const fiche::Fiche& fiche, const std::vector<ControlPoint>& points)
      : fiche_(fiche), document_(*fiche.document), points_(points) {}

  std::vector<Line> write() {
    add(part::fiche, std::string(fiche_.id), revision_of(fiche_), false);
    add(part::batch, "date", "");
    add(part::batch, "batch number", "");
    add(part::batch, "size", size_of());
    add(part::batch, "made by", "");
    lots();
    const Scale scale = scale_of_limits();
    const std::string_view off = scale == Scale::fahrenheit ? "2 °F" : "1 °C";
    add(part::probe, "in ice water", say(Word::off_by, degrees_text(scale, 0), off));
    add(part::probe, "in boiling water", say(Word::off_by, degrees_text(scale, boiling_water(*fiche_.kitchen)), off), false);
    for (const ControlPoint& point : points_) control(point);
    add(part::verified, "verifier", "");
    return std::move(out_);
  }

 private:
  void add(std::string_view of_part, std::string of, std::string asked, bool needed = true, int point = 0) {
    out_.push_back({std::string(of_part), std::move(of), std::move(asked), point, needed});
  }

  [[nodiscard]] std::string say(Word word, std::string_view x = {}, std::string_view t = {}) const {
    return said(word, fiche_.language, x, t);
  }

  /// The scale that the limits are written in.
  [[nodiscard]] Scale scale_of_limits() const {
    for (const ControlPoint& point : points_) {
      for (const Stage& stage : point.asks.stages) return scale_of(stage.text);
    }
    return Scale::celsius;
  }

  std::string size_of() const {
    if (fiche_.yields.empty()) return "";
    const Node node = fiche_.yields.front();
    if (const auto portions = document_.get(node, At::portions); !portions.empty()) return say(Word::portions, portions);
    if (const auto pieces = document_.get(node, At::pieces); !pieces.empty()) return say(Word::pieces, pieces);
    for (const At at : {At::mass, At::volume, At::words}) {
      if (const auto words = document_.get(node, at); !words.empty()) return std::string(words);
    }
    return "";
  }

  std::string name_of(const fiche::Ingredient& one) const {
    if (!one.name.empty()) return std::string(one.name);
    if (one.food == nullptr) return std::string(one.id);
    const bool french = fiche_.language.starts_with("fr") && !one.food->french.empty();
    return first_of(french ? one.food->french : one.food->english);
  }

  void lots() {
    for (const fiche::Ingredient& one : fiche_.ingredients) {
      const std::string_view purpose = document_.get(one.node, At::purpose);
      const bool of_food = purpose.empty() || purpose == "food";
      if (!of_food || one.food_id == "water" || one.food_id == "ice") continue;
      std::string name = name_of(one);
      if (name.empty()) continue;
      add(part::lot, std::move(name), one.amount < 0 ? "" : fiche_.statements[static_cast<std::size_t>(one.amount)].text);
    }
    for (const Node component : fiche_.components) {
      if (document_.find(component, At::from) == fiche::none) continue;
      const std::string_view title = document_.get(component, At::title);
      add(part::lot, std::string(title.empty() ? document_.get(component, At::id) : title), say(Word::own_batch));
    }
  }

  void control(const ControlPoint& point) {
    const std::string name = std::string(part::control) + " " + std::to_string(point.number);
    int number = 0;
    const auto line = [&](const std::string& asked, bool needed) {
      add(name, "reading " + std::to_string(++number), asked, needed, point.number);
    };
    if (point.asks.way == ControlLimit::Way::none) {
      add(name, "met", point.limit, true, point.number);
    } else if (point.asks.way == ControlLimit::Way::stay) {
      for (int i = 0; i < holding_lines; ++i) line(point.asks.stages.front().text, i < 2);
    } else {
      for (const Stage& stage : point.asks.stages) reach(stage, line);
    }
  }

  template <class Add>
  void reach(const Stage& stage, const Add& line) {
    if (stage.from) line(say(Word::from, stage.from_text), true);
    if (!stage.from && stage.within && stage.from_the_start)
      line(say(Word::clock_starts) + (scale_of(stage.text) == Scale::fahrenheit ? ", °F" : ""), true);
    const Word within = stage.from_the_start ? Word::within : Word::within_more;
    line(stage.within ? say(within, stage.text, span_text(*stage.within)) : stage.text, true);
    if (stage.hold) line(say(Word::still_so, stage.text, span_text(*stage.hold)), true);
    const bool alone = !stage.from && !stage.within && !stage.hold;
    for (int i = 0; alone && i < 2; ++i) line(stage.text, false);
  }

  const fiche::Fiche& fiche_;
  const fiche::Document& document_;
  const std::vector<ControlPoint>& points_;
  std::vector<Line> out_;
};

}  // namespace

std::vector<Line> blank_record(const fiche::Fiche& fiche, const std::vector<ControlPoint>& points) {
  return Writing(fiche, points).write();
}

std::string blank_csv(const std::vector<Line>& lines) {
  std::string out(record_heading);
  out += "\r\n";
  for (const Line& line : lines) out += csv_cell(line.part) + "," + csv_cell(line.of) + "," + csv_cell(line.asked) + ",,,,\r\n";
  return out;
}

std::string cell(const CsvRow& row, RecordColumn column) {
  return column < row.fields.size() ? std::string(unguarded(row.fields[column].text)) : std::string();
}

double boiling_water(const fiche::Kitchen& kitchen) {
  const double height = kitchen.altitude_m ? kitchen.altitude_m->approximate() : 0;
  return std::round(physics::boiling_point(height) * 10) / 10;
}

std::string revision_of(const fiche::Fiche& fiche) {
  const std::string_view revision = fiche.document->get(fiche.document->root(), At::revision);
  return revision.empty() ? "" : said(Word::revision, fiche.language, revision);
}

}  // namespace tamis::record
