-- The steps of dishes as events: dates.lua reckons with days, times.lua says when, events.lua what, ics.lua writes RFC 5545.

function calendar(fiches)
  speak_for()
  local service = service_of()
  if not service then
    fiches[1]:say(nil, tamis.settings.service and say("no_service", { what = tamis.settings.service }) or say("unsaid_service"), say("no_service_advice"))
    return nil
  end
  local dishes = laid_out(fiches, service)
  return dishes and ics_of(events_of(dishes, service), service)
end
