#pragma once

// The runtimes of the address and the thread sanitizer, where the program is linked with one.
extern "C" {
[[gnu::weak]] void __asan_init();
[[gnu::weak]] void __tsan_init();
}

namespace mastwise::test {

// Under the address or thread sanitizer everything takes 20 to 30 times as long. Known when linked
// and not when compiled: the tests' own code is compiled once for both.
inline const bool kSanitized = &__asan_init != nullptr || &__tsan_init != nullptr;

}  // namespace mastwise::test
