#pragma once

#include <memory>

#include <windows.h>
// windows.h comes first.
#include <objbase.h>

// The system's objects (COM). Only for sources of platform.
namespace mastwise::platform {

struct Release {
  void operator()(IUnknown* object) const { object->Release(); }
};
template <class Interface>
using Owned = std::unique_ptr<Interface, Release>;

// Lets every thread use the system's objects.
class ObjectUse {
 public:
  ObjectUse() : begun_(SUCCEEDED(::CoIncrementMTAUsage(&cookie_))) {}
  ObjectUse(const ObjectUse&) = delete;
  ObjectUse& operator=(const ObjectUse&) = delete;
  ~ObjectUse() {
    if (begun_) ::CoDecrementMTAUsage(cookie_);
  }

 private:
  CO_MTA_USAGE_COOKIE cookie_ = nullptr;
  bool begun_;
};

}  // namespace mastwise::platform
