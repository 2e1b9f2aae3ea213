#pragma once

namespace mastwise::screens {

// How much each block takes, from the top down.
struct HereRooms {
  float place, position, nose, antenna, settings;
};
inline constexpr HereRooms kHereTight{84.0f, 176.0f, 134.0f, 108.0f, 68.0f};
inline constexpr HereRooms kHereBeside{84.0f, 176.0f, 146.0f, 108.0f, 68.0f};
inline constexpr HereRooms kHereWide{92.0f, 214.0f, 156.0f, 152.0f, 70.0f};

// With letters that are larger by this; the lines of each block need it.
inline HereRooms grown_rooms(const HereRooms& rooms, float by) {
  return {rooms.place + by, rooms.position + 2.0f * by, rooms.nose + 2.5f * by,
          rooms.antenna + 3.0f * by, rooms.settings};
}

}  // namespace mastwise::screens
