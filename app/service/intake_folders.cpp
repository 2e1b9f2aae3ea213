#include "app/service/intake_folders.hpp"

#include "app/service/station_source.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

namespace mastwise {

using words::fill;
using words::say;

IntakeFolder folder_of(const sources::FolderShown& shown) {
  IntakeFolder folder{.path = shown.path, .parent = shown.parent};
  if (!shown.set_known_as.empty()) {
    folder.entries.push_back(
        {IntakeEntry::Kind::Set, shown.path,
         fill(say("All tables in this folder ({name})"), {{"name", shown.set_known_as}}), 0});
  }
  for (const sources::Offer& offer : shown.folders) {
    folder.entries.push_back({IntakeEntry::Kind::Folder, offer.path, offer.name, 0});
  }
  for (const sources::Offer& offer : shown.packs) {
    folder.entries.push_back({IntakeEntry::Kind::Pack, offer.path, offer.name, offer.bytes});
  }
  for (const sources::Offer& offer : shown.rasters) {
    folder.entries.push_back({IntakeEntry::Kind::Raster, offer.path, offer.name, offer.bytes});
  }
  for (const sources::Offer& offer : shown.tables) {
    const auto kind = offer.joined_set ? IntakeEntry::Kind::Archive : IntakeEntry::Kind::Table;
    folder.entries.push_back({kind, offer.path, offer.name, offer.bytes});
  }
  return folder;
}

IntakeFolder routes_of(const sources::FolderShown& shown) {
  IntakeFolder folder{.path = shown.path, .parent = shown.parent};
  for (const sources::Offer& offer : shown.folders) {
    folder.entries.push_back({IntakeEntry::Kind::Folder, offer.path, offer.name, 0});
  }
  for (const auto* offers : {&shown.routes, &shown.tables}) {
    for (const sources::Offer& offer : *offers) {
      if (sources::is_archive(offer.path)) continue;
      folder.entries.push_back({IntakeEntry::Kind::Route, offer.path, offer.name, offer.bytes});
    }
  }
  return folder;
}

}  // namespace mastwise
