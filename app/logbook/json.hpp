#pragma once

#include "app/shared/json.hpp"
#include "core/logbook/record_cells.hpp"

// The logbook's records and files as JSON within actions.

namespace mastwise::record_json {

// A record as the cells of the logbook's file.
template <class Record>
Record read(const nlohmann::json& in) {
  const auto cells = in.get<std::vector<std::string>>();
  if (cells.size() != record_cells::fields<Record>().size()) {
    throw std::invalid_argument("wrong number of cells in a record");
  }
  auto record = record_cells::read<Record>(cells);
  if (!record) throw std::invalid_argument(record.error().message());
  return *std::move(record);
}

}  // namespace mastwise::record_json

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::StopRecord> {
  static void to_json(json& out, const mastwise::StopRecord& record) {
    out = mastwise::record_cells::cells(record);
  }
  static mastwise::StopRecord from_json(const json& in) {
    return mastwise::record_json::read<mastwise::StopRecord>(in);
  }
};

template <>
struct adl_serializer<mastwise::OutcomeRecord> {
  static void to_json(json& out, const mastwise::OutcomeRecord& record) {
    out = mastwise::record_cells::cells(record);
  }
  static mastwise::OutcomeRecord from_json(const json& in) {
    return mastwise::record_json::read<mastwise::OutcomeRecord>(in);
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookFilesQuestion, task, path, day, number)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookFolder, name, path)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookFile, name, folder, path, bytes)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookRecords, stops, outcomes)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(LogbookFilesAnswer, question, folders, files, said, trouble,
                                   records)

}  // namespace mastwise
