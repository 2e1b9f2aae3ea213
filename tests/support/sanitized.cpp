#include "tests/support/sanitized.hpp"

// GCC's names are macros, clang's are features.
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define MASTWISE_WATCHED true
#elif defined(__has_feature)
#define MASTWISE_WATCHED (__has_feature(address_sanitizer) || __has_feature(thread_sanitizer))
#else
#define MASTWISE_WATCHED false
#endif

namespace mastwise::test {

const bool kSanitized = MASTWISE_WATCHED;

}  // namespace mastwise::test
