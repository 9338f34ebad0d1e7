-- What the sheet says of its own. {x} is filled in.
words = {
  en = {
    title = "Control points", where = "Where", hazard = "Hazard", limit = "Limit", check = "Check", often = "How often", who = "Who",
    action = "Corrective action", record = "Record", step = "step {n}", held = "held {x}", revision = "revision {n}",
    state_draft = "draft", state_tested = "tested", state_released = "released", from = "made by the fiche \"{x}\"",
    blank = "to be written", none = "The fiche states no control point. That does not mean that none is needed.",
    missing = "Made from another file that cannot be read here, so its control points are not on this sheet: {x}.",
    draft = "A draft: do not work from it.",
    decide = "The limits are the author's. Which control points are needed and which limits hold is for local rules, the house's own food safety plan and the persons licensed to write one.",
    watch = "A limit that is missed is acted on at once, and written down with what was done.",
  },
  fr = {
    title = "Points de contrôle", where = "Où", hazard = "Danger", limit = "Limite", check = "Contrôle", often = "Fréquence", who = "Qui",
    action = "Action corrective", record = "Enregistrement", step = "étape {n}", held = "maintenu {x}", revision = "révision {n}",
    state_draft = "brouillon", state_tested = "testé", state_released = "validé", from = "fait par la fiche « {x} »",
    blank = "à écrire", none = "La fiche ne donne aucun point de contrôle. Cela ne veut pas dire qu'il n'en faut pas.",
    missing = "Fait d'après un autre fichier qui ne peut pas être lu ici ; ses points de contrôle ne sont pas sur cette feuille : {x}.",
    draft = "Brouillon : ne pas travailler avec.",
    decide = "Les limites sont celles de l'auteur. Les règles locales, le plan de maîtrise sanitaire de la maison et les personnes habilitées décident quels points sont nécessaires et quelles limites valent.",
    watch = "Une limite manquée appelle une action immédiate, notée avec ce qui a été fait.",
  },
  de = {
    title = "Lenkungspunkte", where = "Wo", hazard = "Gefahr", limit = "Grenzwert", check = "Prüfung", often = "Wie oft", who = "Wer",
    action = "Korrektur", record = "Aufzeichnung", step = "Schritt {n}", held = "{x} gehalten", revision = "Fassung {n}",
    state_draft = "Entwurf", state_tested = "erprobt", state_released = "freigegeben", from = "nach der Rezeptur „{x}“",
    blank = "noch zu schreiben", none = "Die Rezeptur nennt keinen Lenkungspunkt. Das heißt nicht, dass keiner nötig ist.",
    missing = "Nach einer anderen Datei, die hier nicht gelesen werden kann; ihre Lenkungspunkte stehen nicht auf diesem Blatt: {x}.",
    draft = "Ein Entwurf: nicht danach arbeiten.",
    decide = "Die Grenzwerte sind die des Autors. Welche Lenkungspunkte nötig sind und welche Grenzen gelten, entscheiden örtliches Recht, das Eigenkontrollkonzept des Hauses und die dazu Befugten.",
    watch = "Ein verfehlter Grenzwert verlangt sofort eine Korrektur; sie wird aufgeschrieben.",
  },
  es = {
    title = "Puntos de control", where = "Dónde", hazard = "Peligro", limit = "Límite", check = "Comprobación", often = "Frecuencia", who = "Quién",
    action = "Acción correctora", record = "Registro", step = "paso {n}", held = "mantenido {x}", revision = "revisión {n}",
    state_draft = "borrador", state_tested = "probada", state_released = "validada", from = "hecho según la ficha «{x}»",
    blank = "por escribir", none = "La ficha no indica ningún punto de control. Eso no significa que no haga falta ninguno.",
    missing = "Hecho según otro archivo que aquí no se puede leer; sus puntos de control no están en esta hoja: {x}.",
    draft = "Un borrador: no trabajar con él.",
    decide = "Los límites son los del autor. Las normas locales, el plan de autocontrol de la casa y las personas habilitadas deciden qué puntos hacen falta y qué límites valen.",
    watch = "Un límite incumplido exige actuar de inmediato y anotar lo que se hizo.",
  },
}

local chosen, language = words.en, "en"

-- The language of the fiche where there are words in it, else English.
function speak(fiche)
  language = fiche.language:match("^%a+") or "en"
  if not rawget(words, language) then language = "en" end
  chosen = words[language]
end

function sheet_language() return language end

function say(key, values)
  return (chosen[key]:gsub("{(%w+)}", values or {}))
end
