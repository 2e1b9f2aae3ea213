#pragma once

#include "core/text/byte_stream.hpp"

#include <algorithm>
#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace mastwise::test {

// PRACTICE: a table of any size, made while it is read.
class MadeRows : public ByteStream {
 public:
  explicit MadeRows(std::size_t rows) : rows_(rows) {}
  Result<std::size_t> read(std::span<char> into) override {
    while (rest_.size() < into.size() && next_ < rows_) {
      rest_ += fmt::format("Q{:06},ATSC,{},{:.5f},{:.5f},{},a note on this station,Alder Reach\n",
                           next_, 2 + next_ % 35, 30.0 + static_cast<double>(next_ % 1500) / 100.0,
                           -110.0 + static_cast<double>(next_ % 2900) / 100.0, 1 + next_ % 900);
      ++next_;
    }
    const std::size_t given = std::min(rest_.size(), into.size());
    std::copy_n(rest_.begin(), given, into.begin());
    rest_.erase(0, given);
    return given;
  }
  std::uint64_t size() const override { return 0; }

 private:
  std::string rest_ = "call_sign,raster,rf_channel,latitude_deg,longitude_deg,erp_kw,remark,city\n";
  std::size_t rows_;
  std::size_t next_ = 0;
};

}  // namespace mastwise::test
