#include "tests/core/propagation/p1812/reference_paths.hpp"

#include "tests/support/reference.hpp"

namespace mastwise::test {

StoredProfile read_official_profile(const std::filesystem::path& file) {
  StoredProfile profile;
  bool inside = false;
  for (const std::string& line : read_lines(file)) {
    if (line.rfind("{End of Profile}", 0) == 0) break;
    const std::vector<std::string> fields = split(line, ',');
    if (inside && fields.size() >= 5) {
      profile.distances_km.push_back(std::stod(fields[0]));
      profile.heights_m.push_back(std::stod(fields[1]));
      profile.clutter_m.push_back(std::stod(fields[3]));
      profile.zones.push_back(static_cast<p1812::Zone>(std::stoi(fields[4])));
    }
    if (line.rfind("Number of Points:", 0) == 0) inside = true;
  }
  return profile;
}

std::map<std::string, std::vector<double>> read_official_log(const std::filesystem::path& file) {
  std::map<std::string, std::vector<double>> rows;
  for (const std::string& line : read_lines(file)) {
    const std::vector<std::string> fields = split(line, ',');
    if (fields.size() < 4 || fields[3].empty() || line[0] == '#') continue;
    std::string name = fields[0];
    while (!name.empty() && name.back() == ' ') name.pop_back();
    rows[name].push_back(std::stod(fields[3]));
  }
  return rows;
}

StoredProfile read_plain_profile(const std::filesystem::path& file) {
  StoredProfile profile;
  for (const std::string& line : read_lines(file)) {
    const std::vector<std::string> fields = split(line, ',');
    if (fields.size() < 2 || fields[0] == "d_km") continue;
    profile.distances_km.push_back(std::stod(fields[0]));
    profile.heights_m.push_back(std::stod(fields[1]));
  }
  return profile;
}

}  // namespace mastwise::test
