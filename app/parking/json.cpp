#include "app/parking/json.hpp"

#include <stdexcept>

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(HeadingArc, from, length_deg)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GearOffer, call_sign, chance_percent)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SectorStation, title, carries, bearing, chance_percent)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(KeptSector, arc, stations, harmless_m)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GearRow, name, height_m, networks, unnamed, offers, only,
                                   sectors)

}  // namespace mastwise

NLOHMANN_JSON_NAMESPACE_BEGIN

void adl_serializer<mastwise::GearsAnswer>::to_json(json& out,
                                                    const mastwise::GearsAnswer& answer) {
  out = {{"here", answer.question.here},
         {"gears", answer.question.gears},
         {"learned", answer.question.learned},
         {"networks", answer.networks},
         {"unnamed", answer.unnamed},
         {"rows", answer.rows},
         {"enough", answer.enough},
         {"trouble", answer.trouble}};
}

void adl_serializer<mastwise::GearsAnswer>::from_json(const json& in,
                                                      mastwise::GearsAnswer& answer) {
  in.at("here").get_to(answer.question.here);
  in.at("gears").get_to(answer.question.gears);
  in.at("learned").get_to(answer.question.learned);
  in.at("networks").get_to(answer.networks);
  in.at("unnamed").get_to(answer.unnamed);
  in.at("rows").get_to(answer.rows);
  in.at("enough").get_to(answer.enough);
  in.at("trouble").get_to(answer.trouble);
  const bool fits = answer.rows.size() <= answer.question.gears.size() &&
                    (!answer.enough || *answer.enough < answer.rows.size());
  if (!fits) throw std::invalid_argument("rows without a gear");
  for (const mastwise::GearRow& row : answer.rows) {
    if (row.offers.size() != answer.networks.size()) {
      throw std::invalid_argument("offers without a network");
    }
  }
}

NLOHMANN_JSON_NAMESPACE_END
