#include "platform/meter_source.hpp"

namespace mastwise::platform {

DvbSystem this_system() {
  return {};
}

OpenSource dvb_meter_source(DvbTuner, DvbSystem) {
  return []() -> Result<std::unique_ptr<ByteSource>> {
    return Error{.what = "a browser does not report a TV tuner's signal",
                 .remedy = "type what the TV's own meter shows"};
  };
}

std::vector<DvbTuner> list_dvb_tuners(const std::string&) {
  return {};
}

}  // namespace mastwise::platform
