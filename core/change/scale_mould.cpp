#include "core/change/scale_mould.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/change/figure.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

const Ratio pi(355, 113);

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_round(const MouldSize& mould) {
  if (mould.diameter) return true;
  return !mould.length && one_of(mould.shape, {"round", "ring", "tart", "dome", "fluted", "cup"});
}

std::optional<Ratio> length_in_mm(std::string_view text, const measure::Reading& reading) {
  const auto read = text.empty() ? std::nullopt : std::optional(measure::read_lengths(text, reading));
  if (!read || !*read || (*read)->size() != 1 || !(*read)->front().has_figure()) return std::nullopt;
  const Ratio value = (*read)->front().middle_base();
  return value > 0 ? std::optional(value) : std::nullopt;
}

/// The part of `text` up to a space; the rest stays in it.
std::string_view take_word(std::string_view& text) {
  text = base::trimmed(text);
  const std::string_view word = text.substr(0, text.find(' '));
  text = base::trimmed(text.substr(word.size()));
  return word;
}

std::optional<MouldSize> kitchen_mould(std::string_view id, const fiche::Kitchen& kitchen) {
  if (kitchen.document == nullptr || kitchen.document->root() == fiche::none) return std::nullopt;
  const Document& document = *kitchen.document;
  for (const Node mould : children_of(document, document.root(), El::mould)) {
    if (document.get(mould, At::id) == id) return mould_of(document, mould, kitchen.reading);
  }
  return std::nullopt;
}

void put_side(std::optional<Ratio>& side, std::string& text, const measure::Amount& amount, std::string written) {
  side = amount.middle_base();
  text = std::move(written);
}

/// The sides of a free mould, in the order of its kind.
bool put_sides(MouldSize& mould, const std::vector<measure::Amount>& sides, const measure::Reading& reading) {
  const auto written = [&](std::size_t i) { return write_lengths({sides[i]}, reading); };
  const bool round = is_round(mould) || (mould.shape.empty() && sides.size() == 1);
  if (round) {
    if (sides.size() > 2) return false;
    put_side(mould.diameter, mould.diameter_text, sides[0], written(0));
    if (sides.size() > 1) put_side(mould.height, mould.height_text, sides[1], written(1));
    return true;
  }
  if (sides.size() > 3 || (sides.size() < 2 && mould.shape != "square")) return false;
  put_side(mould.length, mould.length_text, sides[0], written(0));
  const std::size_t second = sides.size() > 1 ? 1 : 0;
  put_side(mould.width, mould.width_text, sides[second], written(second));
  if (sides.size() > 2) put_side(mould.height, mould.height_text, sides[2], written(2));
  return true;
}

std::optional<MouldSize> free_mould(std::string_view text, const measure::Reading& reading) {
  MouldSize mould;
  std::string_view rest = text;
  const std::string_view word = take_word(rest);
  if (const auto shapes = fiche::choices_of(fiche::Value::shape);
      std::find(shapes.begin(), shapes.end(), word) != shapes.end()) {
    mould.shape = word;
    text = rest;
  }
  const auto sides = measure::read_lengths(text, reading);
  if (!sides || sides->empty()) return std::nullopt;
  const auto plain = [](const measure::Amount& side) { return side.has_figure() && side.middle_base() > 0; };
  if (!std::all_of(sides->begin(), sides->end(), plain) || !put_sides(mould, *sides, reading)) return std::nullopt;
  if (mould.shape.empty()) mould.shape = mould.diameter ? "round" : "rectangular";
  return mould;
}

}  // namespace

MouldSize mould_of(const Document& document, Node node, const measure::Reading& reading) {
  MouldSize mould;
  mould.id = document.get(node, At::id);
  mould.name = document.get(node, At::name);
  mould.shape = document.get(node, At::shape);
  if (const auto count = measure::read_number(document.get(node, At::count), reading); count && *count > 0) {
    mould.count = *count;
  }
  const auto side = [&](At at, std::string& text) {
    text = document.get(node, at);
    return length_in_mm(text, reading);
  };
  std::string fill;
  mould.length = side(At::length, mould.length_text);
  mould.width = side(At::width, mould.width_text);
  mould.height = side(At::height, mould.height_text);
  mould.diameter = side(At::diameter, mould.diameter_text);
  mould.fill = side(At::fill, fill);
  mould.volume_text = document.get(node, At::volume);
  const auto volume = measure::read_amount(mould.volume_text, measure::set_of(measure::Kind::volume), reading);
  if (volume && volume->has_figure() && volume->middle_base() > 0) mould.volume = volume->middle_base();
  return mould;
}

std::optional<MouldSize> read_mould(std::string_view text, const fiche::Kitchen& kitchen,
                                    const measure::Reading& reading) {
  text = base::trimmed(text);
  std::optional<MouldSize> found = kitchen_mould(text, kitchen);
  if (!found) found = free_mould(text, reading);
  if (found) {
    found->count = 1;
    return found;
  }
  std::string_view rest = text;
  const auto count = measure::read_number(take_word(rest), reading);
  if (!count || !count->whole() || *count < 1 || *count > 100000) return std::nullopt;
  found = kitchen_mould(rest, kitchen);
  if (!found) found = free_mould(rest, reading);
  if (found) found->count = *count;
  return found;
}

bool is_flat(const MouldSize& mould) { return !one_of(mould.shape, {"loaf", "dome", "cup", "fluted", "other"}); }

std::optional<Ratio> area_of(const MouldSize& mould) {
  if (mould.length && mould.width && !is_round(mould)) return *mould.length * *mould.width;
  if (mould.diameter) return *mould.diameter * *mould.diameter * pi / 4;
  if (mould.length && mould.shape == "square") return *mould.length * *mould.length;
  return std::nullopt;
}

std::optional<Ratio> volume_of(const MouldSize& mould) {
  if (mould.volume) return mould.volume;
  if (mould.shape == "dome" && mould.diameter) {
    return *mould.diameter * *mould.diameter * *mould.diameter * pi / 12 / 1000;
  }
  const auto area = area_of(mould);
  if (!area || !mould.height) return std::nullopt;
  return *area * *mould.height / 1000;
}

physics::Body body_in(const MouldSize& mould) {
  using physics::Shape;
  const auto metres = [](const Ratio& side) { return side.approximate() / 1000; };
  const auto height = mould.fill ? mould.fill : mould.height;
  if (mould.shape == "dome" && mould.diameter)
    return {{{Shape::cylinder, metres(*mould.diameter) / 2}, {Shape::slab, metres(*mould.diameter) / 6}}};
  if (height && mould.length && mould.width && !is_round(mould))
    return {{{Shape::slab, metres(*height) / 2},
             {Shape::slab, metres(*mould.width) / 2},
             {Shape::slab, metres(*mould.length) / 2}}};
  if (height && mould.diameter) return {{{Shape::cylinder, metres(*mould.diameter) / 2}, {Shape::slab, metres(*height) / 2}}};
  if (const auto volume = volume_of(mould))
    return {{{Shape::sphere, std::cbrt(volume->approximate() * 1e-6 * 0.75 / 3.14159265358979)}}};
  return {};
}

Node sized_mould(const ScaleWork& work, Node yield) {
  if (yield == fiche::none) return fiche::none;
  for (const Node mould : children_of(work.document, yield, El::mould)) {
    const MouldSize size = mould_of(work.document, mould, work.author.reading);
    if (area_of(size) || volume_of(size)) return mould;
  }
  return fiche::none;
}

}  // namespace tamis::change
