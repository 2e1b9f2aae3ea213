#pragma once

namespace mastwise::platform {

// Whether the practice area's hills are there. In a browser they are made at the first call, which
// takes seconds, in a thread of their own; elsewhere they are among the assets.
bool practice_hills_ready();

}  // namespace mastwise::platform
