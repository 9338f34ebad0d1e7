-- Words of the trade that are rare at home, and what they mean, by language. A language that is not here is not judged.
-- From memory of kitchens; a house sets its own with trade-words.
words = {
  en = {
    ["bain-marie"] = "bowl over hot water", ["brunoise"] = "very small dice", ["cartouche"] = "round of paper laid on top",
    ["chiffonade"] = "fine ribbons", ["chinois"] = "fine sieve", ["concassé"] = "skinned, seeded and chopped", ["dariole"] = "small mould",
    ["deglaze"] = "loosen what sticks to the pan with liquid", ["julienne"] = "fine strips", ["lardons"] = "short strips of bacon",
    ["liaison"] = "yolks and cream to thicken with", ["macédoine"] = "dice", ["mirepoix"] = "diced onion, carrot and celery",
    ["nappe"] = "thick enough to coat a spoon", ["paysanne"] = "thin slices", ["quenelle"] = "oval shaped with two spoons",
    ["salamander"] = "very hot grill", ["sauteuse"] = "wide pan with sloping sides",
  },
  fr = {
    ["chiqueter"] = "entailler le bord", ["foncer"] = "garnir le moule de pâte", ["luter"] = "fermer avec de la pâte", ["monder"] = "ôter la peau",
    ["puncher"] = "imbiber de sirop", ["singer"] = "poudrer de farine", ["vanner"] = "remuer pour qu’il n’y ait pas de peau", ["contiser"] = "glisser sous la peau",
  },
  de = {
    ["legieren"] = "mit Eigelb und Sahne binden", ["mehlieren"] = "in Mehl wenden", ["montieren"] = "kalte Butter einrühren",
    ["nappieren"] = "mit Sauce überziehen", ["parieren"] = "Haut und Sehnen wegschneiden", ["plattieren"] = "flach klopfen",
    ["tournieren"] = "in gleichmäßige Form schneiden",
  },
  es = {
    ["bridar"] = "atar con hilo", ["desglasar"] = "soltar con líquido lo pegado", ["napar"] = "cubrir con salsa", ["abrillantar"] = "dar brillo con gelatina o jarabe",
  },
}
