#pragma once

#include "app/data/state.hpp"
#include "app/service/fetch.hpp"
#include "core/result.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

// Fetching by touch: what the publishers have for a stop and its way, and the fetching itself.
namespace mastwise {

// Where fetched data goes and comes from.
struct FetchPlaces {
  packs::Home home = {};
  std::string downloads = {};  // a folder for what is under way
  std::string base = {};       // instead of the publishers' servers; empty: those
};

// What a download would go over now.
Connection connection_now();

// Every data set with what fetching it would take. Sets of squares are about the near squares of
// `around` that are not at sea; without them they are left out. Connects to nobody.
Result<std::vector<FetchOffer>> fetch_offers(const FetchPlaces& places,
                                             const std::optional<GroundAround>& around);

// Downloads and imports one data set. `told` gets words and the fraction done, and returns false to
// stop: then what came is kept for the next time. `focus`: whose changes come first. Errors: those
// of fetch::run().
Result<FetchReport> fetch_set(
    const FetchPlaces& places, const std::string& id, const std::optional<GroundAround>& around,
    const ImportFocus& focus,
    const std::function<bool(std::string doing, std::optional<double> part)>& told);

}  // namespace mastwise
