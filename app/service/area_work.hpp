#pragma once

#include "app/service/pool.hpp"
#include "core/reception/area_scan.hpp"

#include <functional>
#include <vector>

namespace mastwise {

// Completes area scans on all threads of a pool, which must outlive it.
class AreaWork {
 public:
  explicit AreaWork(Pool& pool) : pool_(pool), scratches_(pool.threads()) {}

  // Calls `go_on` about ten times a second with the fraction done, within [0, 1]. Nothing is
  // computed meanwhile, so it may read the cells; false stops. Returns whether all is done.
  bool complete(reception::AreaScan& scan, const std::function<bool(double done)>& go_on);

 private:
  Pool& pool_;
  std::vector<reception::AreaScratch> scratches_;
};

}  // namespace mastwise
