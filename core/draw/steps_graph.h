#ifndef CORE_DRAW_STEPS_GRAPH_H
#define CORE_DRAW_STEPS_GRAPH_H

#include "core/draw/graph.h"
#include "core/draw/steps.h"

namespace tamis::draw {

/// A box for each step, with what it takes and what comes of it; a frame for each component.
Graph steps_graph(const Steps& steps);

}  // namespace tamis::draw

#endif
