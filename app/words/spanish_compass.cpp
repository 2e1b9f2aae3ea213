#include "app/words/spanish_screens.hpp"

namespace mastwise::words {
namespace {

constexpr Translation kCompassInSpanish[] = {
    // The needle.
    {"The needle", "La aguja"},
    {"Made for which zone?", "¿Hecha para qué zona?"},
    {"The field {dip}: {zone}.", "El campo {dip}: {zone}."},
    {"level here", "aquí está a nivel"},
    {"dips {degrees} here, north end down", "aquí baja {degrees} hacia el norte"},
    {"dips {degrees} here, south end down", "aquí baja {degrees} hacia el sur"},
    {"the northern zone", "la zona norte"},
    {"the zone of the equator", "la zona del ecuador"},
    {"the southern zone", "la zona sur"},
    {"any zone", "cualquier zona"},
    {"A needle made for {zone} swings free here.", "Una aguja hecha para {zone} gira libre aquí."},
    {"A needle made for {zone} may drag here: its north end sinks.",
     "Una aguja hecha para {zone} puede rozar aquí: baja su punta norte."},
    {"A needle made for {zone} may drag here: its south end sinks.",
     "Una aguja hecha para {zone} puede rozar aquí: baja su punta sur."},
    {"A needle made for {zone} sticks here. Use another compass or another way.",
     "Una aguja hecha para {zone} se atasca aquí. Use otra brújula u otra forma."},
    {"For which zone was your needle made?", "¿Para qué zona se hizo su aguja?"},
    {"Northern", "Norte"},
    {"Equator", "Ecuador"},
    {"Southern", "Sur"},
    {"Any", "Todas"},
    {"The compass or its box says so.", "Lo dice la brújula o su caja."},
    {"The compass or its box says so. Until you choose, the northern zone counts.",
     "Lo dice la brújula o su caja. Mientras no elija, cuenta la zona norte."},
    {"The field here", "El campo aquí"},
    {"How to hold it", "Cómo sostenerla"},
    {"Hold it level, away from phone and keys. If the needle touches, lower the edge below its low "
     "end until it swings free.",
     "Sosténgala a nivel, lejos del teléfono y las llaves. Si la aguja roza, baje el borde bajo su "
     "punta baja hasta que gire libre."},
    {"Tap the housing and let the needle come to rest twice at the same number.",
     "Dé un golpecito a la caja y deje que la aguja pare dos veces en el mismo número."},
    {"Where no compass works", "Donde no sirve ninguna brújula"},
    {"Horizontal field here", "Campo horizontal aquí"},
    {"Filled: below 2,000 nT no compass works. Ring around it: below 6,000 nT a compass is slow "
     "and "
     "may be wrong.",
     "Lleno: bajo 2,000 nT no sirve ninguna brújula. Anillo: bajo 6,000 nT la brújula es lenta y "
     "puede errar."},
    {"Both by the World Magnetic Model 2025.", "Ambos por el World Magnetic Model 2025."},
    {"You are here", "Usted está aquí"},
};

}  // namespace

std::span<const Translation> spanish_of_compass() {
  return kCompassInSpanish;
}

}  // namespace mastwise::words
