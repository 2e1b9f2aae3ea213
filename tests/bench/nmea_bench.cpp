#include "core/nmea/receiver.hpp"

#include <chrono>
#include <string>

#include <fmt/format.h>

using namespace mastwise;

namespace {

// A second of a modern parked receiver: RMC, VTG, GGA, GSA, GSV and GLL, invented with valid
// checksums.
std::string second(int number) {
  std::string text;
  const auto say = [&](const std::string& sentence) {
    unsigned checksum = 0;
    for (const char character : sentence) checksum ^= static_cast<unsigned char>(character);
    text += fmt::format("${}*{:02X}\r\n", sentence, checksum);
  };
  const std::string time = fmt::format("12{:02}{:02}.00", number / 60 % 60, number % 60);
  say("GNRMC," + time + ",A,4426.11300,N,07140.55960,W,0.025,,251126,,,A,V");
  say("GNVTG,,T,,M,0.025,N,0.045,K,A");
  say("GNGGA," + time + ",4426.11300,N,07140.55960,W,1,12,0.64,214.2,M,-31.8,M,,");
  for (const char* system : {"1", "2", "3", "4"}) {
    say(std::string("GNGSA,A,3,13,16,21,15,10,29,27,20,,,,,1.05,0.64,0.83,") + system);
  }
  for (const char* part : {"1", "2", "3"}) {
    say(std::string("GPGSV,3,") + part +
        ",12,05,06,110,19,10,24,284,34,13,37,124,29,15,63,083,11,1");
  }
  say("GNGLL,4426.11300,N,07140.55960,W," + time + ",A,A");
  return text;
}

}  // namespace

int main() {
  std::string log;
  for (int number = 0; number < 3600; ++number) log += second(number);
  nmea::Receiver receiver(std::chrono::sys_days(std::chrono::year(2026) / 11 / 25));
  const auto began = std::chrono::steady_clock::now();
  std::chrono::duration<double> took{};
  double bytes = 0.0;
  Monotonic now{};
  while (took.count() < 1.0) {
    receiver.feed(log, now += std::chrono::hours(1));
    bytes += static_cast<double>(log.size());
    took = std::chrono::steady_clock::now() - began;
  }
  // A line of 115200 baud carries 11,520 bytes a second.
  const double bytes_per_second = bytes / took.count();
  fmt::print("NMEA: {:.1f} million bytes per second, {:.0f} times a line of 115200 baud\n",
             bytes_per_second / 1e6, bytes_per_second / 11520.0);
  fmt::print("positions {}, sentences {}\n", receiver.fix(now).positions_taken,
             receiver.counts().sentences_good);
}
