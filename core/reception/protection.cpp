#include "core/reception/protection.hpp"

namespace mastwise::reception {

Protection protection(BroadcastStandard standard, double required_cn_db) {
  if (standard == BroadcastStandard::atsc1) return {15.0, -28.0, -26.0};
  return {required_cn_db, -30.0, -30.0};
}

double ratio_db(const Protection& protection, ChannelRelation relation) {
  if (relation == ChannelRelation::same) return protection.same_channel_db;
  return relation == ChannelRelation::lower_next ? protection.lower_next_db
                                                 : protection.upper_next_db;
}

double echo_reach_us(BroadcastStandard standard) {
  switch (standard) {
    case BroadcastStandard::atsc1:
      return 40.0;
    case BroadcastStandard::atsc3:
      return 148.0;
    case BroadcastStandard::dvb_t:
      return 112.0;
    case BroadcastStandard::dvb_t2:
      return 224.0;
    case BroadcastStandard::isdb_t:
      return 126.0;
  }
  return 0.0;
}

}  // namespace mastwise::reception
