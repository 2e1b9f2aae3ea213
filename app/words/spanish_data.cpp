#include "app/words/spanish_screens.hpp"

namespace mastwise::words {
namespace {

constexpr Translation kDataInSpanish[] = {
    // What an import changed.
    {"Changes", "Cambios"},
    {"Changes, the nearest first", "Cambios, primero los más cercanos"},
    {"Last import", "Última importación"},
    {"On another channel", "En otro canal"},
    {"With another power", "Con otra potencia"},
    {"At another site", "En otro sitio"},
    {"With another call sign", "Con otro indicativo"},
    {"RF {channel}, before {old}.", "RF {channel}, antes {old}."},
    {"Power {power}, before {old}.", "Potencia {power}, antes {old}."},
    {"Site moved {distance}.", "El sitio se movió {distance}."},
    {"Called {name} before.", "Antes se llamaba {name}."},
    {"Gone; it was on RF {channel}.", "Ya no está; estaba en RF {channel}."},
    {"New on RF {channel}.", "Nueva en RF {channel}."},
    {"New on RF {channel}, {power}.", "Nueva en RF {channel}, {power}."},
    // Pinned stations that are gone.
    {"{station}, which you pinned, is no longer listed by {source}.",
     "{station}, que usted fijó, ya no figura en {source}."},
    {"Now {source} lists it on RF {channel}.", "Ahora {source} la tiene en RF {channel}."},
    {"Pinned but gone: {stations}", "Fijadas, ya no están: {stations}"},
    {"Pin that one", "Fijar esa"},
    // Missing ground and fetching.
    {"Missing: {squares}. Get data fetches them.",
     "Faltan: {squares}. Obtener datos los descarga."},
    {"Get data", "Obtener datos"},
    {"Straight from the publishers, only when you touch Fetch. Nothing is fetched by itself.",
     "Directo de quien los publica, solo cuando toca Descargar. Nada se descarga por sí solo."},
    {"Mastwise cannot download in a browser. Touch a row to see what to do instead.",
     "Mastwise no puede descargar en un navegador. Toque una fila para ver qué hacer."},
    {"Open {address} in another tab, save the file, and import it.",
     "Abra {address} en otra pestaña, guarde el archivo e impórtelo."},
    {"Fetch this with Mastwise on Debian or Windows, make a pack there, and import it here.",
     "Descárguelo con Mastwise en Debian o Windows, haga allí un paquete e impórtelo aquí."},
    {"End practice to get heights and land cover for your stop.",
     "Termine la práctica para obtener alturas y cubierta de su parada."},
    {"Set a position under Here to get heights and land cover around it.",
     "Ponga una posición en Aquí para obtener alturas y cubierta alrededor."},
    {"All of it is on board", "Ya está todo a bordo"},
    {"1 file", "1 archivo"},
    {"{number} files", "{number} archivos"},
    {"{files}, size unknown", "{files}, tamaño desconocido"},
    {"{files}, usually about {size}", "{files}, en general unos {size}"},
    {"This device has no connection now.", "Este aparato no tiene conexión ahora."},
    {"This is a mobile connection: the download counts against its plan.",
     "Es una conexión móvil: la descarga cuenta en su plan."},
    {"If this connection is metered, the download counts against its plan.",
     "Si esta conexión es medida, la descarga cuenta en su plan."},
    {"Server: {name}", "Servidor: {name}"},
    {"The data is of the day you fetch it.", "Los datos son del día en que los descarga."},
    {"Date of the data: {date}", "Fecha de los datos: {date}"},
    {"Squares to fetch: {squares}", "Cuadros por descargar: {squares}"},
    {"{number} squares are on board.", "{number} cuadros están a bordo."},
    {"{number} squares have no data there, as an earlier fetch found.",
     "{number} cuadros no tienen datos ahí, según una descarga anterior."},
    {"This server often refuses apps. Then open {address} in a browser, save the file, and import "
     "it.",
     "Este servidor suele rechazar aplicaciones. Entonces abra {address} en un navegador, guarde "
     "el "
     "archivo e impórtelo."},
    {"Stop at any time: what came is kept, and fetching again continues there.",
     "Pare cuando quiera: lo que llegó se guarda, y otra descarga sigue desde ahí."},
    {"Fetch now", "Descargar"},
    {"Fetch {size}", "Descargar {size}"},
    {"Fetching", "Descargando"},
    {"Connecting", "Conectando"},
    {"Done closes this page; the download continues. Stop keeps what came, and fetching again "
     "continues there.",
     "Listo cierra esta página; la descarga sigue. Parar guarda lo que llegó, y otra descarga "
     "sigue "
     "desde ahí."},
    {"File {number} of {all}: {done} of {size}", "Archivo {number} de {all}: {done} de {size}"},
    {"File {number} of {all}: {done} so far", "Archivo {number} de {all}: {done} hasta ahora"},
    {", {size} a second", ", {size} por segundo"},
    {"Importing file {number} of {all}", "Importando el archivo {number} de {all}"},
    {"Files", "Archivos"},
    {"Over the line", "Por la conexión"},
    {"Tiles made or completed", "Cuadros hechos o completados"},
    {"Squares without a file", "Cuadros sin archivo"},
    {"The publisher has none for squares all at sea.",
     "No se publica ninguno para cuadros que son todo mar."},
    // Routes.
    {"From file", "De archivo"},
    {"Places from a file", "Lugares de un archivo"},
    {"A way from", "Un camino de"},
    {"Choose a way", "Elija un camino"},
    {"Its stops take the place of those under Ahead. Undo brings them back.",
     "Sus paradas reemplazan las de Ruta. Deshacer las trae de vuelta."},
    {"Route: {stops} stops, {length}", "Ruta: {stops} paradas, {length}"},
    {"Track: {stops} stops along it, {length}", "Traza: {stops} paradas en ella, {length}"},
    {"{stops} places", "{stops} lugares"},
    {"Without a name", "Sin nombre"},
    {"Only the first {number} places are used.", "Solo se usan los primeros {number} lugares."},
    {"Routes, tracks and places (.gpx); tables of places with the columns name, latitude and "
     "longitude (.csv).",
     "Rutas, trazas y lugares (.gpx); tablas de lugares con las columnas name, latitude y "
     "longitude "
     "(.csv)."},
    {"This folder has no routes, tables or folders.",
     "Esta carpeta no tiene rutas, tablas ni carpetas."},
};

}  // namespace

std::span<const Translation> spanish_of_data() {
  return kDataInSpanish;
}

}  // namespace mastwise::words
