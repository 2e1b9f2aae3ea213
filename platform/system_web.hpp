#pragma once

#include <cstdint>
#include <string_view>

// What platform asks of the browser: functions of web/system.js. Only for sources of platform.
namespace mastwise::platform {

// Figures that the browser does not know are NaN.
struct WebPosition {
  double utc_s = 0.0;
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  double accuracy_m = 0.0;
  double speed_m_per_s = 0.0;
  double course_deg = 0.0;
};

// Acceleration with gravity: flat on a table, screen up, it is 0 0 9.8 (W3C, Device Orientation).
struct WebMotion {
  double at_s = 0.0;
  double x_m_s2 = 0.0;
  double y_m_s2 = 0.0;
  double z_m_s2 = 0.0;
};

// What serial ports are called: this and a number from 1.
inline constexpr std::string_view kWebSerialName = "serial port ";

enum class WebNews : std::int32_t { nothing, some, refused, unavailable };

extern "C" {
// Not 0 where the page is isolated: threads can be started. Any thread may ask; the rest is the
// page's own thread's.
int web_isolated();
// Asks the browser for positions, and stops that.
void web_position_begin();
void web_position_end();
// The newest position since the last call.
WebNews web_position_take(WebPosition* at);
// The same for the accelerometer, with the oldest sample that was not taken yet.
void web_motion_begin(int every_ms);
void web_motion_end();
WebNews web_motion_take(WebMotion* felt);
// Writes the name of the browser's time zone, as in the tz database, with its end.
void web_zone_name(char* into, int size);
// The serial ports that the person has allowed, of which one may be unplugged; the speed of one in
// baud, 0 to close it; its bytes since the last call, -1 once it is gone.
int web_serial_count();
int web_serial_is_there(int number);
void web_serial_speed(int number, int baud);
int web_serial_take(int number, char* into, int most);
void web_keep_awake(int awake);
// 0: none, 1: those for files, 2: the one for a receiver.
void web_offer(int buttons);
void web_darken(int dark);
// Begins to make the practice area's hills, unless that has begun. Not 0 once they are there.
int web_hills_ready();
}

}  // namespace mastwise::platform
