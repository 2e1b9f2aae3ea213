#pragma once

#include "core/text/byte_stream.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <zip.h>

namespace mastwise::test {

// PRACTICE: an invented dump in the shape of the US licensing database, of any size: as many
// columns as the real tables have, in another order than in licensing_tables(), line ends in cells,
// bytes of ISO 8859-1, several licenses of a facility, pending filings, rows of other countries,
// distributed systems, translators. The tables are made while they are read.
class LicensingDump : public TableFiles {
 public:
  // Facilities, seven filings of each. Every 26th one is a television station, as among the real
  // 180,831.
  explicit LicensingDump(std::size_t facilities) : facilities_(facilities) {}

  static constexpr std::size_t kEvery = 26, kFilings = 7;
  static constexpr std::array kNames{"facility.dat",
                                     "license_filing_version.dat",
                                     "application_facility.dat",
                                     "app_location.dat",
                                     "app_antenna.dat",
                                     "app_antenna_frequency.dat",
                                     "app_antenna_field_value.dat"};

  // Of the facility: whether it is a station in the United States that the import must find, and
  // its facts.
  static bool is_station(std::size_t f) { return f % kEvery == 0 && f % (kEvery * 50) != kEvery; }
  static bool is_distributed(std::size_t f) { return f % (kEvery * 100) == 0; }
  static bool is_translator(std::size_t f) { return f % (kEvery * 2) == 0 && !is_distributed(f); }
  static int channel(std::size_t f) { return 14 + static_cast<int>(f / kEvery % 23); }
  static double erp_kw(std::size_t f) { return 1.0 + static_cast<double>(f % 977); }
  static int latitude_deg(std::size_t f) { return 25 + static_cast<int>(f / kEvery % 24); }
  static std::string call_sign(std::size_t f) { return fmt::format("Q{:05}", f); }

  std::size_t stations() const {
    std::size_t count = 0;
    for (std::size_t f = 0; f < facilities_; f += kEvery) {
      if (is_station(f)) count += is_distributed(f) ? 2 : 1;
    }
    return count;
  }

  Result<std::unique_ptr<ByteStream>> open(const std::string& name) override {
    const std::size_t filings = facilities_ * kFilings;
    if (name == kNames[0]) return made(facility_header(), facilities_, &facility);
    if (name == kNames[1])
      return made(license_header(), filings,
                  [this](std::size_t i) { return license(i % facilities_, i / facilities_); });
    if (name == kNames[2])
      return made(application_header(), filings,
                  [this](std::size_t i) { return application(i % facilities_, i / facilities_); });
    if (name == kNames[3])
      return made(location_header(), 3 * facilities_, [this](std::size_t i) {
        return location(i % facilities_, 1 + 2 * (i / facilities_));
      });
    if (name == kNames[4])
      return made(antenna_header(), 3 * facilities_, [this](std::size_t i) {
        return antenna(i % facilities_, 1 + 2 * (i / facilities_));
      });
    // 339 thousand of the real size; the licenses in force come first.
    if (name == kNames[5]) {
      return made(power_header(), facilities_ * 15 / 8, [this](std::size_t i) {
        return power(i % facilities_, 5 - 2 * (i / facilities_));
      });
    }
    return made("aafv_field_value|other1|aafv_azimuth|aafv_aant_antenna_record_id|^|\n",
                facilities_ / 6 * 36, [](std::size_t i) { return pattern(i / 36 * 6, i % 36); });
  }
  bool has(const std::string&) const override { return true; }

  // As the publisher packs it: an archive of one archive for each table.
  void write_nested_zip(const std::filesystem::path& folder, const std::filesystem::path& path) {
    std::vector<std::pair<std::filesystem::path, std::string>> inner;
    for (const std::string name : kNames) {
      const std::filesystem::path plain = folder / name;
      {
        std::ofstream file(plain, std::ios::binary);
        std::string piece(std::size_t{1} << 18, '\0');
        const auto stream = open(name);
        while (const auto got = *(*stream)->read({piece.data(), piece.size()})) {
          file.write(piece.data(), static_cast<std::streamsize>(got));
        }
      }
      std::filesystem::path packed = plain;
      packed.replace_extension(".zip");
      write_zip(packed, {{plain, name}}, ZIP_CM_DEFLATE);
      std::filesystem::remove(plain);
      inner.emplace_back(packed, packed.filename().string());
    }
    write_zip(path, inner, ZIP_CM_STORE);
    for (const auto& [packed, name] : inner) std::filesystem::remove(packed);
  }

 private:
  class Stream : public ByteStream {
   public:
    Stream(std::string header, std::size_t count, std::function<std::string(std::size_t)> make)
        : rest_(std::move(header)), count_(count), make_(std::move(make)) {}
    Result<std::size_t> read(std::span<char> into) override {
      while (rest_.size() < into.size() && next_ < count_) rest_ += make_(next_++);
      const std::size_t given = std::min(rest_.size(), into.size());
      std::copy_n(rest_.begin(), given, into.begin());
      rest_.erase(0, given);
      return given;
    }
    std::uint64_t size() const override { return 0; }

   private:
    std::string rest_;
    std::size_t count_;
    std::function<std::string(std::size_t)> make_;
    std::size_t next_ = 0;
  };

  static Result<std::unique_ptr<ByteStream>> made(std::string header, std::size_t count,
                                                  std::function<std::string(std::size_t)> make) {
    return std::unique_ptr<ByteStream>(
        std::make_unique<Stream>(std::move(header), count, std::move(make)));
  }

  static void write_zip(const std::filesystem::path& path,
                        const std::vector<std::pair<std::filesystem::path, std::string>>& files,
                        int method) {
    int code = 0;
    zip_t* const archive = zip_open(path.c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code);
    if (archive == nullptr) throw std::runtime_error("cannot make " + path.string());
    for (const auto& [file, name] : files) {
      zip_source_t* const source = zip_source_file(archive, file.c_str(), 0, -1);
      const zip_int64_t index = zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8);
      zip_set_file_compression(archive, static_cast<zip_uint64_t>(index), method, 1);
    }
    if (zip_close(archive) != 0) throw std::runtime_error("cannot write " + path.string());
  }

  // A key of 32 digits, as in the dump.
  static std::string key(char kind, std::size_t f, std::size_t filing) {
    return fmt::format("{}{:023x}{:08x}", kind, f * 2654435761U, f * kFilings + filing);
  }
  // As many cells as bring a record to the real table's width.
  static std::string others(std::size_t count, const char* text) {
    std::string cells;
    for (std::size_t i = 0; i < count; ++i) cells += fmt::format("{}{}|", text, i % 4 == 0 ? i : 0);
    return cells;
  }
  static std::string other_names(std::size_t count) {
    std::string names;
    for (std::size_t i = 0; i < count; ++i) names += fmt::format("other_{}|", i);
    return names;
  }

  static std::string facility_header() {
    return "tv_virtual_channel|" + other_names(16) +
           "callsign|facility_id|active_ind|service_code|facility_status|primary_station|"
           "latest_filing_version_id|license_filing_id|network_affiliation|channel|atsc3_ind|"
           "community_served_city|community_served_state|nielsen_dma_rank|^|\n";
  }
  static std::string facility(std::size_t f) {
    const bool tv = f % kEvery == 0;
    const std::string primary = is_translator(f) ? std::to_string(f + kEvery) : std::string();
    return fmt::format(
        "{}|{}{}|{}|Y|{}|LICEN|{}|{}|{}|{}|{}||Peque\xF1"
        "a\nMesa|QQ|Market|^|\n",
        tv && f % 4 == 0 ? std::to_string(2 + f % 60) : "", others(16, "xx"), call_sign(f), f,
        !tv                ? "FM"
        : is_translator(f) ? "LPT"
                           : "DTV",
        primary, key('f', f, f % 10 == 0 ? 6 : 5), key('l', f, 0), f % 3 == 0 ? "Northlight" : "",
        channel(f));
  }

  static std::string license_header() {
    return "status_date|auth_type_code|current_status_code|active_ind|" + other_names(11) +
           "license_filing_id|filing_version_id|^|\n";
  }
  static std::string license(std::size_t f, std::size_t filing) {
    const bool granted = filing % 2 == 1;
    return fmt::format("20{:02}-07-19 00:00:00.0|{}|{}|Y|{}{}|{}|^|\n", 10 + filing,
                       granted ? "L" : "C", granted ? "GRA" : "PEN", others(11, "2024-07-15 "),
                       key('l', f, 0), key('f', f, filing));
  }

  static std::string application_header() {
    return other_names(29) + "country_code|afac_channel|afac_application_id|^|\n";
  }
  static std::string application(std::size_t f, std::size_t filing) {
    const bool foreign = f % kEvery == 0 && !is_station(f);
    return fmt::format("{}{}|{}|{}|^|\n", others(29, "remarks "), foreign ? "CA" : "US", channel(f),
                       key('f', f, filing));
  }

  static std::string location_header() {
    return "aloc_long_deg|aloc_long_mm|aloc_long_ss|aloc_long_dir|" + other_names(34) +
           "aloc_lat_deg|aloc_lat_mm|aloc_lat_ss|aloc_lat_dir|aloc_active_ind|aloc_loc_record_id|"
           "aloc_aapp_application_id|aloc_loc_seq_id|aloc_ground_elev|"
           "aloc_dts_reference_location_ind|^|\n";
  }
  static std::string location(std::size_t f, std::size_t filing) {
    std::string rows;
    const std::size_t sites = is_distributed(f) ? 3 : 1;
    for (std::size_t site = 0; site < sites; ++site) {
      const bool reference = site == 2;
      rows += fmt::format("{}|{}|{}.0|W|{}{}|{}|0.0|N|Y|{}|{}|{}|250.0|{}|^|\n", 75 + f / 26 % 45,
                          f % 60, f % 59, others(34, "9.0"), latitude_deg(f), site,
                          key('p', f, filing) + std::to_string(site), key('f', f, filing), site + 1,
                          reference ? "Y" : "N");
    }
    return rows;
  }

  static std::string antenna_header() {
    return other_names(40) +
           "aant_rc_amsl|aant_rc_haat|aant_rc_hag|aant_rotation_deg|aant_polarization|"
           "aant_antenna_type_code|aant_active_ind|aant_aloc_loc_record_id|aant_antenna_record_id|"
           "^|\n";
  }
  static std::string antenna(std::size_t f, std::size_t filing) {
    std::string rows;
    for (std::size_t site = 0; site < (is_distributed(f) ? 2U : 1U); ++site) {
      rows += fmt::format("{}{}|150.0|120.0|{}.0|H|DIR|Y|{}|{}|^|\n", others(40, "TFU"),
                          f % 8 == 0 ? "" : "350.0", f % 360,
                          key('p', f, filing) + std::to_string(site),
                          key('a', f, filing) + std::to_string(site));
    }
    return rows;
  }

  static std::string power_header() {
    return "aafq_power_erp_kw|aafq_horiz_erp_kw|aafq_vert_erp_kw|aafq_max_erp_kw|" +
           other_names(20) + "aafq_active_ind|aafq_aant_antenna_record_id|^|\n";
  }
  static std::string power(std::size_t f, std::size_t filing) {
    std::string rows;
    for (std::size_t site = 0; site < (is_distributed(f) ? 2U : 1U); ++site) {
      const bool by_parts = f % 5 == 0;
      const std::string power = fmt::format("{}", erp_kw(f));
      rows += fmt::format("{}|{}|{}||{}Y|{}|^|\n", by_parts ? "" : power, by_parts ? power : "",
                          by_parts ? "0.5" : "", others(20, "8.25"),
                          key('a', f, filing) + std::to_string(site));
    }
    return rows;
  }

  static std::string pattern(std::size_t f, std::size_t tens) {
    return fmt::format("{:.3f}|2024-07-15 16:07:46.422|{}.0|{}0|^|\n",
                       0.1 + 0.9 * static_cast<double>(tens) / 35.0, tens * 10, key('a', f, 5));
  }

  std::size_t facilities_;
};

}  // namespace mastwise::test
