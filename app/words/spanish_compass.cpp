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
    {"Under clouds: set the rig heading or type a landmark.",
     "Con nubes: ponga el rumbo del vehículo o una referencia."},
    {"Under clouds: {way}, ± {degrees}°.", "Con nubes: {way}, ± {degrees}°."},
    // The deviation card of the heading sensor.
    {"Its deviation card", "Su tarjeta de desvío"},
    {"Deviation card", "Tarjeta de desvío"},
    {"The sensor is fixed to", "El sensor va fijo a"},
    {"The rig", "El vehículo"},
    {"On the antenna every turn has another deviation: no card can hold.",
     "En la antena cada giro tiene otro desvío: no hay tarjeta que valga."},
    {"Not used yet: too little of the circle.", "Aún sin uso: falta círculo."},
    {"It corrects the sensor.", "Corrige el sensor."},
    {"Ready. Say what the sensor is fixed to.", "Lista. Diga a qué va fijo el sensor."},
    {"Not used: it was learned where the earth's field differs too much.",
     "Sin uso: se aprendió donde el campo de la Tierra es muy distinto."},
    {"Not used: it is too old.", "Sin uso: es demasiado vieja."},
    {"{seen} of 8 parts of the circle, {count} straight stretches.",
     "{seen} de 8 partes del círculo, {count} tramos rectos."},
    {"{count} left out: steel beside the road.", "{count} sin contar: acero junto al camino."},
    {"It learns while you drive straight for 20 s at {speed} or more. A loop around a town shows "
     "every direction.",
     "Aprende mientras conduce recto 20 s a {speed} o más. Una vuelta a un pueblo muestra todas "
     "las "
     "direcciones."},
    {"Delete the card", "Borrar la tarjeta"},
    {"Deviation card deleted", "Tarjeta de desvío borrada"},
    {"What to add to the sensor's reading", "Qué sumar a la lectura del sensor"},
    {"East adds, west subtracts. One sigma of the fit, the place and the age.",
     "El este suma, el oeste resta. Un sigma del ajuste, del lugar y de la edad."},
    {"Nothing to show yet: the card begins with 8 straight stretches in several directions.",
     "Nada que mostrar aún: la tarjeta empieza con 8 tramos rectos en varias direcciones."},
    {"Iron on the rig has moved: the heading sensor's deviation is learned anew.",
     "Se movió hierro del vehículo: el desvío del sensor se aprende de nuevo."},
    // What a short move has changed.
    {"Tolerance {distance} back: {tolerance}.", "Tolerancia {distance} atrás: {tolerance}."},
    {"In the last {distance}, stations lost: {lost}, gained: {gained}.",
     "En los últimos {distance}, emisoras perdidas: {lost}, ganadas: {gained}."},
    {"Lost in the last {distance}: {stations}.", "Perdidas en los últimos {distance}: {stations}."},
    {"Gained in the last {distance}: {stations}.",
     "Ganadas en los últimos {distance}: {stations}."},
    // The tablet's own compass.
    {"The tablet as a compass", "La tableta como brújula"},
    {"The tablet's compass", "Brújula de la tableta"},
    {"You point by it: hold it up before you.", "Usted apunta con ella: sosténgala enfrente."},
    {"It knows its own iron and can point.", "Conoce su propio hierro y puede apuntar."},
    {"It must first learn its own iron, if it has a magnetometer.",
     "Primero debe aprender su propio hierro, si tiene magnetómetro."},
    {"This tablet has no motion sensor that can be read.",
     "Esta tableta no tiene sensor de movimiento legible."},
    {"This tablet has no magnetometer that can be read.",
     "Esta tableta no tiene magnetómetro legible."},
    {"Waiting for the tablet's sensors.", "Esperando los sensores de la tableta."},
    {"Use a compass in the hand, or another way.", "Use una brújula en la mano u otra forma."},
    {"Walk well clear of steel. Turn once around yourself while you tumble the tablet every way, "
     "for a minute.",
     "Aléjese del acero. Dé una vuelta sobre sí mientras gira la tableta en todas direcciones, "
     "durante un minuto."},
    {"{seen} of {all} directions seen; {needed} are enough.",
     "Vistas {seen} de {all} direcciones; bastan {needed}."},
    {"Hold it still.", "No la mueva."},
    {"Hold it up before you, as to take a picture.",
     "Sosténgala enfrente, como para tomar una foto."},
    {"No compass works here: the earth's field is too weak.",
     "Aquí no sirve ninguna brújula: el campo es muy débil."},
    {"No heading: the field is {measured}, and {model} is right here. Walk away from steel.",
     "Sin rumbo: el campo es de {measured} y aquí debe ser de {model}. Aléjese del acero."},
    {"No heading: the field dips {measured}°, and {model}° is right here. Walk away from steel.",
     "Sin rumbo: el campo baja {measured}° y aquí debe bajar {model}°. Aléjese del acero."},
    {"{degrees} magnetic", "{degrees} magnético"},
    {"± {degrees}° by the tablet alone.", "± {degrees}° solo por la tableta."},
    {"The field, measured and by the model", "El campo, medido y según el modelo"},
    {"Strength", "Fuerza"},
    {"Dip", "Inclinación"},
    {"{measured}, model {model}", "{measured}, modelo {model}"},
    {"Beyond {percent} % or {degrees}° it gives no heading. Steel to the east or west "
     "passes both, so where you stand counts, too.",
     "Más allá de {percent} % o {degrees}° no hay rumbo. El acero al este o al oeste no se nota: "
     "por eso cuenta dónde está usted."},
    {"Where do you hold it?", "¿Dónde la sostiene?"},
    {"Say where, or the dial does not follow it.", "Diga dónde, o el dial no la sigue."},
    {"Not used there: the rig's steel turns it.", "Ahí no se usa: el acero la desvía."},
    {"The way you point: on Aim the dial follows the tablet.",
     "Es su forma de apuntar: en Apuntar el dial sigue a la tableta."},
    {"Point by the tablet", "Apuntar con la tableta"},
    {"Learn it anew", "Aprenderla de nuevo"},
    {"Tablet compass deleted", "Brújula de tableta borrada"},
};

}  // namespace

std::span<const Translation> spanish_of_compass() {
  return kCompassInSpanish;
}

}  // namespace mastwise::words
