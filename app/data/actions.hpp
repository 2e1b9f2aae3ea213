#pragma once

#include "app/data/state.hpp"
#include "app/shared/action.hpp"

#include <string>
#include <string_view>

// Imports of station and program tables.
namespace mastwise::act {

struct OpenIntakeFolder {
  static constexpr std::string_view kName = "OpenIntakeFolder";
  static constexpr auto kFields = fields("path");
  std::string path;  // empty: back to the catalog and the start folders
};

// The start folders to import from.
struct ShowImportPlaces {
  static constexpr std::string_view kName = "ShowImportPlaces";
};

// What the last import changed.
struct ShowLastReport {
  static constexpr std::string_view kName = "ShowLastReport";
};

// What the publishers have for the stop and the way.
struct ShowOffers {
  static constexpr std::string_view kName = "ShowOffers";
};

struct PickOffer {
  static constexpr std::string_view kName = "PickOffer";
  static constexpr auto kFields = fields("set");
  std::string set;  // id of a data set; empty: back to all
};

// Downloads and imports the data set of the offer shown.
struct FetchNow {
  static constexpr std::string_view kName = "FetchNow";
};

struct PickRoute {
  static constexpr std::string_view kName = "PickRoute";
  static constexpr auto kFields = fields("path");
  std::string path;
};

struct PickTable {
  static constexpr std::string_view kName = "PickTable";
  static constexpr auto kFields = fields("path");
  std::string path;
};

struct ChooseColumnOf {
  static constexpr std::string_view kName = "ChooseColumnOf";
  static constexpr auto kFields = fields("part");
  std::string part;  // of the table's mapping; empty: stop choosing
};

struct CorrectReading {
  static constexpr std::string_view kName = "CorrectReading";
  static constexpr auto kFields = fields("part", "value");
  std::string part;
  std::string value;
};

struct TakeIn {
  static constexpr std::string_view kName = "TakeIn";
};

struct StopTakingIn {
  static constexpr std::string_view kName = "StopTakingIn";
};

struct IntakeFound {
  static constexpr std::string_view kName = "IntakeFound";
  static constexpr auto kFields = fields("answer");
  IntakeAnswer answer;
};

}  // namespace mastwise::act

namespace mastwise {

using DataActions =
    ActionList<act::OpenIntakeFolder, act::ShowImportPlaces, act::ShowLastReport, act::ShowOffers,
               act::PickOffer, act::FetchNow, act::PickRoute, act::PickTable, act::ChooseColumnOf,
               act::CorrectReading, act::TakeIn, act::StopTakingIn, act::IntakeFound>;

}  // namespace mastwise
