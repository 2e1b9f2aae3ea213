#pragma once

namespace mastwise::test {

// Under the address or thread sanitizer everything takes 20 to 30 times as long. Known when linked
// and not when compiled: the tests' own code is compiled once for both.
extern const bool kSanitized;

}  // namespace mastwise::test
