#include "tests/change/random_fiche.h"

using namespace tamis;
using namespace tamis::tests;

TEST_CASE("a fiche converted, written, read and converted to its own system again is the author's own, byte for byte") {
  std::mt19937 random(20260711);
  for (const System system : {System::metric, System::us, System::imperial}) {
    for (unsigned seed = 0; seed < fiches_tried; ++seed) {
      const std::string own = RandomFiche(seed, system).fiche(system != System::metric || seed % 2 == 0);
      std::string now = own;
      const unsigned hops = 1 + seed % 3;
      for (unsigned hop = 0; hop < hops; ++hop) now = converted(now, random_wish(random)).xml;
      CAPTURE(seed, own, now);
      CHECK(converted(now, wish(system)).xml == own);
    }
  }
}

TEST_CASE("the way a fiche took to a system does not show in its figures") {
  std::mt19937 random(4);
  for (unsigned seed = 0; seed < fiches_tried; ++seed) {
    const std::string own = RandomFiche(seed + 1000, System::us).fiche(true);
    const ConvertWish last = random_wish(random);
    CAPTURE(own);
    CHECK(converted(converted(own, random_wish(random)).xml, last).xml == converted(own, last).xml);
  }
}
