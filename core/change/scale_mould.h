#ifndef CORE_CHANGE_SCALE_MOULD_H
#define CORE_CHANGE_SCALE_MOULD_H

#include <optional>
#include <string_view>

#include "core/change/scale_work.h"

namespace tamis::change {

/// A mould element of a fiche or kitchen file; sides that cannot be read stay empty.
MouldSize mould_of(const fiche::Document& document, fiche::Node node, const measure::Reading& reading);

/// "4 ring-26", "ring 24 cm", "2 frame 60 × 40 × 4 cm", "30 × 20 cm": a count, then the id of a mould of the kitchen, or
/// a shape and its sides (round, ring, tart, dome: diameter and height; others: length, width, height). Empty when it is
/// neither.
std::optional<MouldSize> read_mould(std::string_view text, const fiche::Kitchen& kitchen,
                                    const measure::Reading& reading);

/// Moulds in which the depth of the food is kept: their area counts. Of the others the volume does.
bool is_flat(const MouldSize& mould);

/// Inside, in mm²; that of a circle with 355/113 for pi, which is right to 3 in 10 million. Empty without its sides.
std::optional<base::Ratio> area_of(const MouldSize& mould);

/// To the brim, in ml: as stated, or straight sides; a dome is half a ball.
std::optional<base::Ratio> volume_of(const MouldSize& mould);

/// What heat goes through in a full mould: a brick, a short cylinder, half a ball as a cylinder of its volume; a ball of
/// its volume where only that is known. Without parts where nothing is.
physics::Body body_in(const MouldSize& mould);

/// The first mould of a yield that gives its size.
fiche::Node sized_mould(const ScaleWork& work, fiche::Node yield);

}  // namespace tamis::change

#endif
