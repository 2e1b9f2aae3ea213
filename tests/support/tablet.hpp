#pragma once

#include "tests/support/stage.hpp"

#include <string>
#include <vector>

// Taking in tables by finger.
namespace mastwise::test {

// The header of the program's own station table, as tests need it.
inline const std::string kOwnHeader =
    "call_sign,raster,rf_channel,latitude_deg,longitude_deg,network\n";

// A data folder with a stick in it.
class Tablet {
 public:
  std::string table(const std::string& name, const std::string& text) const;
  const std::filesystem::path& path() const { return data_.path(); }
  std::string folder() const { return data_.path().string(); }
  // What the catalog has, read by a connection of its own.
  std::vector<Station> with_call_sign(const std::string& call_sign) const;

 private:
  TemporaryFolder data_;
};

// Drags the list of readings or columns until most of the target is in it.
void reach(Stage& stage, const std::string& name);

// From wherever the program is to the table of the stick.
void pick(Stage& stage, const Tablet& tablet, const std::string& name);

// The report that is shown.
const IntakeReport& report_of(const Stage& stage);
// What a part of the table is taken for.
std::string reading_of(const Stage& stage, const std::string& part);

void stand_at(Stage& stage, double latitude_deg, double longitude_deg);

// The call signs of the stations' list, sorted.
std::vector<std::string> listed(const Stage& stage);

}  // namespace mastwise::test
