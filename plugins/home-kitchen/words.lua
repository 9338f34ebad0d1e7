-- What is written into the fiche, by language; a fiche in another language gets figures and no notes.
words = {
  en = {
    tins = "At home, filled as high: {list}.", tin = "a tin of {size} takes {factor} of this", same = "a tin of {size} takes the same",
    deck = "At home: heat an upturned tray or a stone with the oven and bake on it, top and bottom heat. The time is the author’s: look from two thirds of it on.",
    steam = "At home there is no steam to set: a tin of boiling water on the oven’s floor gives some, how much is not known. The time is the author’s: look early.",
    chiller = "At home there is no blast chiller: in shallow dishes set in ice and water, then the fridge or freezer. The time is the author’s and will not do; go by the thermometer. The limits of the cold stay as they are.",
    siphon = "At home without a siphon: whip by hand or with a hand mixer; it will be less airy.",
    refractometer = "At home without a refractometer: a drop on a cold saucer that wrinkles when it is pushed has set. It tells of setting, not of the sugar, so not how long it keeps.",
    vacuum = "At home without a vacuum machine this cannot be done as written.",
    circulator = "At home without a bath that holds its temperature this cannot be done as written: the time in it is what the food’s safety rests on.",
    gelatine = "At home: leaves are sold at several strengths; this is for {bloom} bloom. Weigh them, do not count them.",
    churn = "At home without an ice-cream machine: freeze it and stir it through every half hour; it will not be as smooth.",
    sheeter = "At home: roll it by hand, cold, and rest it in the fridge between turns.",
  },
  fr = {
    tins = "À la maison, à la même hauteur\u{a0}: {list}.", tin = "un moule de {size} prend {factor} fois cette quantité", same = "un moule de {size} prend la même quantité",
    deck = "À la maison\u{a0}: chauffer une plaque retournée ou une pierre avec le four et cuire dessus, chaleur statique. Le temps est celui de l’auteur\u{a0}: regarder dès les deux tiers.",
    steam = "À la maison, pas de vapeur à régler\u{a0}: un plat d’eau bouillante en bas du four en donne, on ne sait combien. Le temps est celui de l’auteur\u{a0}: regarder tôt.",
    chiller = "À la maison, pas de cellule\u{a0}: en couche mince, dans des plats posés sur de l’eau et de la glace, puis au froid. Le temps est celui de l’auteur et ne suffira pas\u{a0}: se fier au thermomètre. Les limites du froid restent.",
    siphon = "À la maison, sans siphon\u{a0}: fouetter à la main ou au batteur\u{a0}; ce sera moins aéré.",
    refractometer = "À la maison, sans réfractomètre\u{a0}: une goutte sur une assiette froide, qui se ride quand on la pousse, a pris. Cela dit la prise, pas le sucre, donc pas combien de temps cela se garde.",
    vacuum = "À la maison, sans machine sous vide, cela ne peut se faire tel quel.",
    circulator = "À la maison, sans bain qui tient sa température, cela ne peut se faire tel quel\u{a0}: la sûreté de l’aliment repose sur le temps passé dedans.",
    gelatine = "À la maison\u{a0}: les feuilles se vendent à plusieurs forces\u{a0}; ici {bloom} bloom. Les peser, ne pas les compter.",
    churn = "À la maison, sans turbine\u{a0}: congeler et remuer toutes les demi-heures\u{a0}; ce sera moins lisse.",
    sheeter = "À la maison\u{a0}: abaisser à la main, froid, avec un repos au froid entre les tours.",
  },
}

-- What in the words of a step or in its place names a machine.
machines = {
  { key = "chiller", words = { "blast chiller", "cellule de refroidissement", "en cellule" }, on = "chiller" },
  { key = "siphon", words = { "siphon" } },
  { key = "refractometer", words = { "refractometer", "réfractomètre" } },
  { key = "circulator", words = { "circulator", "thermoplongeur" } },
  { key = "vacuum", words = { "vacuum bag", "vacuum pack", "vacuum machine", "sous vide", "sous-vide" } },
  { key = "sheeter", words = { "sheeter", "laminoir" } },
}
