#pragma once

#include <map>
#include <string>

namespace mastwise::test {

// PRACTICE: one invented station, QAAB, in the files and columns of the built-in mapping us_lms.
inline std::map<std::string, std::string> licensing_tables() {
  return {{"facility.dat",
           "active_ind|facility_id|facility_status|service_code|callsign|atsc3_ind|"
           "network_affiliation|community_served_city|community_served_state|license_filing_id|^|\n"
           "Y|9001|LICEN|DTV|QAAB|N|Northlight|Alder|QQ|f1|^|\nY|9002|LICAN|DTV|QAAC|N||||f2|^|\n"},
          {"license_filing_version.dat",
           "filing_version_id|license_filing_id|active_ind|auth_type_code|current_status_code|^|\n"
           "v0|f1|N|L|GRA|^|\nv1|f1|Y|L|GRA|^|\nv2|f1|Y|C|PEN|^|\n"},
          {"application_facility.dat",
           "afac_application_id|country_code|afac_channel|^|\n"
           "v1|US|23|^|\nv2|US|24|^|\n"},
          {"app_location.dat",
           "aloc_aapp_application_id|aloc_loc_record_id|aloc_loc_seq_id|aloc_active_ind|"
           "aloc_dts_reference_location_ind|aloc_lat_deg|aloc_lat_mm|aloc_lat_ss|aloc_lat_dir|"
           "aloc_long_deg|aloc_long_mm|aloc_long_ss|aloc_long_dir|^|\n"
           "v1|l1|1|Y||44|30|0.0|N|100|15|36.0|W|^|\n"},
          {"app_antenna.dat",
           "aant_antenna_record_id|aant_aloc_loc_record_id|aant_active_ind|aant_antenna_type_code|"
           "aant_rc_amsl|aant_rc_haat|aant_rotation_deg|^|\nn1|l1|Y|DIR|650.0|0|10.0|^|\n"},
          {"app_antenna_frequency.dat",
           "aafq_aant_antenna_record_id|aafq_active_ind|aafq_power_erp_kw|^|\nn1|Y|100.0|^|\n"},
          {"app_antenna_field_value.dat",
           "aafv_aant_antenna_record_id|aafv_azimuth|aafv_field_value|^|\n"
           "n1|0.0|1.0|^|\nn1|90.0|0.5|^|\nn1|180.0|0.1|^|\nn1|270.0|0.5|^|\n"}};
}

}  // namespace mastwise::test
