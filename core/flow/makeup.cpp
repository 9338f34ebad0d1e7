#include "core/flow/states.h"

namespace tamis::flow {

std::optional<food::Makeup> makeup_of(const State& state) {
  for (const Constituent one : {Constituent::water, Constituent::fat, Constituent::protein, Constituent::sugars,
                                Constituent::other_carbohydrate}) {
    if (!state.knows(one)) return std::nullopt;
  }
  const auto middle = [&](Constituent one) { return state.share(one).middle(); };
  food::Makeup made;
  made.water = middle(Constituent::water);
  made.protein = middle(Constituent::protein);
  made.fat = middle(Constituent::fat);
  made.sugars = middle(Constituent::sugars);
  made.carbohydrate = made.sugars + middle(Constituent::other_carbohydrate);
  made.fibre = middle(Constituent::fibre);
  made.ash = middle(Constituent::ash);
  made.alcohol = middle(Constituent::alcohol);
  made.salt = middle(Constituent::salt);
  const double sum = made.water + made.protein + made.fat + made.carbohydrate + made.fibre + made.ash + made.alcohol;
  if (!(sum > 0)) return std::nullopt;
  for (double* share : {&made.water, &made.protein, &made.fat, &made.carbohydrate, &made.fibre, &made.ash, &made.alcohol,
                        &made.sugars, &made.salt}) {
    *share /= sum;
  }
  return made;
}

}  // namespace tamis::flow
