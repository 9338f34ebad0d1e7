-- What the calendar says of its own. {x} is filled in.
words = {
  en = {
    hands = "{time} hands-on", unattended = "{time} waiting", not_stated = "no time stated", done = "Done", gate = "Before going on", control = "Control point",
    action = "Otherwise", ready = "Have ready: {what}", service = "Service",
    no_service = "service is \"{what}\", which is no day and time", unsaid_service = "it is not said when the dish is served", no_service_advice = "say --set service=2026-03-07T19:00",
    does_not_fit = "the times, days and keeping that the fiche states cannot all be kept, so nothing can be laid backwards from service",
    does_not_fit_advice = "tamis check says which contradict each other",
    out_of_hours = "would begin at {clock}, when nobody is at work", out_of_hours_advice = "do it on another day, or serve later",
    one_unstated = "this step states no time; the calendar gives it none", unstated = "{n} steps state no time, this one first; the calendar gives them none",
    unstated_advice = "state hands=\"10 min\" and unattended=\"1 h\"",
  },
  fr = {
    hands = "{time} de travail", unattended = "{time} d'attente", not_stated = "durée non indiquée", done = "C'est prêt", gate = "Avant de continuer", control = "Point de contrôle",
    action = "Sinon", ready = "Tenir prêt\u{a0}: {what}", service = "Service",
    no_service = "service est « {what} », qui n'est pas un jour et une heure", unsaid_service = "on ne sait pas quand le plat est servi", no_service_advice = "dire --set service=2026-03-07T19:00",
    does_not_fit = "les durées, jours et conservations de la fiche ne se laissent pas tenir ensemble\u{a0}: rien à placer avant le service",
    does_not_fit_advice = "tamis check dit lesquels se contredisent",
    out_of_hours = "commencerait à {clock}, quand personne ne travaille", out_of_hours_advice = "le faire un autre jour, ou servir plus tard",
    one_unstated = "cette étape n'indique pas de durée\u{a0}; le calendrier ne lui en donne pas", unstated = "{n} étapes n'indiquent pas de durée, celle-ci d'abord\u{a0}; le calendrier ne leur en donne pas",
    unstated_advice = "indiquer hands=\"10 min\" et unattended=\"1 h\"",
  },
  de = {
    hands = "{time} Handarbeit", unattended = "{time} Wartezeit", not_stated = "ohne Zeitangabe", done = "Fertig", gate = "Bevor es weitergeht", control = "Lenkungspunkt",
    action = "Sonst", ready = "Bereitstellen: {what}", service = "Service",
    no_service = "service ist „{what}“, was kein Tag mit Uhrzeit ist", unsaid_service = "wann serviert wird, ist nicht gesagt", no_service_advice = "--set service=2026-03-07T19:00 angeben",
    does_not_fit = "die Zeiten, Tage und Haltbarkeiten der Fiche lassen sich nicht zugleich einhalten: vor dem Service lässt sich nichts einteilen",
    does_not_fit_advice = "tamis check sagt, was sich widerspricht",
    out_of_hours = "begänne um {clock}, wenn niemand arbeitet", out_of_hours_advice = "an einem anderen Tag machen oder später servieren",
    one_unstated = "dieser Schritt nennt keine Zeit; der Kalender gibt ihm keine", unstated = "{n} Schritte nennen keine Zeit, dieser als erster; der Kalender gibt ihnen keine",
    unstated_advice = "hands=\"10 min\" und unattended=\"1 h\" angeben",
  },
  es = {
    hands = "{time} de trabajo", unattended = "{time} de espera", not_stated = "tiempo no indicado", done = "Listo", gate = "Antes de seguir", control = "Punto de control",
    action = "Si no", ready = "Tener listo: {what}", service = "Servicio",
    no_service = "service es «{what}», que no es un día y una hora", unsaid_service = "no se dice cuándo se sirve", no_service_advice = "indique --set service=2026-03-07T19:00",
    does_not_fit = "los tiempos, días y conservaciones de la ficha no se pueden cumplir a la vez: nada se puede colocar antes del servicio",
    does_not_fit_advice = "tamis check dice cuáles se contradicen",
    out_of_hours = "empezaría a las {clock}, cuando no trabaja nadie", out_of_hours_advice = "hacerlo otro día o servir más tarde",
    one_unstated = "este paso no indica tiempo; el calendario no se lo da", unstated = "{n} pasos no indican tiempo, este el primero; el calendario no se lo da",
    unstated_advice = "indique hands=\"10 min\" y unattended=\"1 h\"",
  },
}

local chosen, language = words.en, "en"

function speak_for()
  language = (tamis.kitchen.language or "en"):match("^%a+") or "en"
  if not rawget(words, language) then language = "en" end
  chosen = words[language]
end

function calendar_language() return language end

function say(key, values)
  return (chosen[key]:gsub("{(%w+)}", values or {}))
end
