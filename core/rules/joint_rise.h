#ifndef CORE_RULES_JOINT_RISE_H
#define CORE_RULES_JOINT_RISE_H

#include <optional>
#include <string>

#include "core/rules/rule.h"

namespace tamis::rules {

/// How far the middle of a joint goes on rising once it is out of the oven.
struct JointRise {
  double low = 0, high = 0;  ///< K
  std::string of;            ///< "2.1 kg out of an oven of 160 °C"
};

/// Of what the step `roast` brings to `pull` °C in the core and the step `rest` leaves in the room, worked out by
/// physics::roast_and_rest(): one joint of 700 g or more, as a roll twice as long as thick, or as thick as the fiche says, in
/// the ovens that it and the roasting steps before it name, by the oven's coefficients and a surface from wet to dry.
/// Empty where the joint, its mass or the oven is not known, of whole birds, which are hollow, where it rests elsewhere,
/// and where the oven never brings it there.
std::optional<JointRise> joint_rise(const Check& check, int roast, int rest, double pull);

}  // namespace tamis::rules

#endif
