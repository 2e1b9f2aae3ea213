#pragma once

#include "tests/support/stage.hpp"

#include <string>
#include <vector>

// Imports of tables by touch.
namespace mastwise::test {

// The header of Mastwise's station table for tests.
inline const std::string kOwnHeader =
    "call_sign,raster,rf_channel,latitude_deg,longitude_deg,network\n";

// A data folder with a stick in it.
class Tablet {
 public:
  std::string table(const std::string& name, const std::string& text) const;
  const std::filesystem::path& path() const { return data_.path(); }
  std::string folder() const { return data_.path().string(); }
  // The catalog's content, read by a separate connection.
  std::vector<Station> with_call_sign(const std::string& call_sign) const;

 private:
  TemporaryFolder data_;
};

// Drags the list of readings or columns until most of the target is in it.
void reach(Stage& stage, const std::string& name);

// From any screen to the table on the stick.
void pick(Stage& stage, const Tablet& tablet, const std::string& name);

// The shown report.
const IntakeReport& report_of(const Stage& stage);
// The shown value of a part of the table's mapping.
std::string reading_of(const Stage& stage, const std::string& part);

void stand_at(Stage& stage, double latitude_deg, double longitude_deg);

// The call signs of the stations' list, sorted.
std::vector<std::string> listed(const Stage& stage);

}  // namespace mastwise::test
