#include "platform/serial_port.hpp"
#include "platform/system_windows.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <windows.h>

namespace mastwise::platform {
namespace {

Error port_error(const std::string& what, const std::string& path, DWORD number) {
  Error error{.what = system_message(what, number), .where = path};
  if (number == ERROR_ACCESS_DENIED) {
    error.remedy = "another app may have the port open; close it there";
  }
  if (number == ERROR_FILE_NOT_FOUND) error.remedy = "check that the device is plugged in";
  return error;
}

// Windows reports an unplugged adapter by one of these.
bool is_gone(DWORD number) {
  constexpr DWORD kGone[] = {
      ERROR_OPERATION_ABORTED,    ERROR_GEN_FAILURE, ERROR_BAD_COMMAND,    ERROR_DEVICE_REMOVED,
      ERROR_INVALID_HANDLE,       ERROR_NOT_READY,   ERROR_FILE_NOT_FOUND, ERROR_BROKEN_PIPE,
      ERROR_DEVICE_NOT_CONNECTED, ERROR_IO_DEVICE};
  return std::find(std::begin(kGone), std::end(kGone), number) != std::end(kGone);
}

// Reads overlapped, so that a driver without timeouts of its own cannot hold it up.
class OverlappedPort final : public SerialPort {
 public:
  OverlappedPort(std::string path, Handle port, Handle arrived)
      : path_(std::move(path)), port_(std::move(port)), arrived_(std::move(arrived)) {}

  Result<Done> set_speed(int baud) override {
    const auto speeds = usual_serial_speeds();
    if (std::find(speeds.begin(), speeds.end(), baud) == speeds.end()) {
      return unusual_speed(baud, path_);
    }
    DCB settings{};
    settings.DCBlength = sizeof(settings);
    if (::GetCommState(port_.get(), &settings) == 0) return speed_error(baud);
    if (set_ && settings.BaudRate == static_cast<DWORD>(baud)) return Done{};
    settings.BaudRate = static_cast<DWORD>(baud);
    settings.ByteSize = 8;
    settings.Parity = NOPARITY;
    settings.StopBits = ONESTOPBIT;
    settings.fBinary = TRUE;
    settings.fParity = FALSE;
    settings.fOutxCtsFlow = settings.fOutxDsrFlow = settings.fDsrSensitivity = FALSE;
    settings.fOutX = settings.fInX = settings.fNull = settings.fErrorChar = FALSE;
    settings.fAbortOnError = FALSE;
    // Some receivers take their power from these lines.
    settings.fDtrControl = DTR_CONTROL_ENABLE;
    settings.fRtsControl = RTS_CONTROL_ENABLE;
    if (::SetCommState(port_.get(), &settings) == 0) return speed_error(baud);
    set_ = true;
    ::PurgeComm(port_.get(), PURGE_RXCLEAR);
    return Done{};
  }

  // A first byte is waited for; the others that have arrived with it are there already.
  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    const auto first = read_all(into.first(1), timeout);
    if (!first || first->size == 0) return first;
    DWORD errors = 0;
    COMSTAT state{};
    if (::ClearCommError(port_.get(), &errors, &state) == 0 || state.cbInQue == 0) return first;
    const std::size_t more = std::min<std::size_t>(into.size() - 1, state.cbInQue);
    const auto rest = read_all(into.subspan(1, more), milliseconds(1));
    return Chunk{1 + (rest ? rest->size : 0)};
  }

 private:
  // Fills `into`, or returns with less after the timeout. It may be late, not early.
  Result<Chunk> read_all(std::span<char> into, milliseconds timeout) {
    COMMTIMEOUTS times{};
    times.ReadTotalTimeoutConstant = static_cast<DWORD>(std::max<std::int64_t>(1, timeout.count()));
    if (::SetCommTimeouts(port_.get(), &times) == 0) return lost(::GetLastError());
    OVERLAPPED reading{};
    reading.hEvent = arrived_.get();
    DWORD size = 0;
    const auto room = static_cast<DWORD>(into.size());
    if (::ReadFile(port_.get(), into.data(), room, &size, &reading) != 0) return Chunk{size};
    const DWORD failure = ::GetLastError();
    if (failure != ERROR_IO_PENDING) return lost(failure);
    constexpr DWORD kGrace_ms = 500;
    const DWORD patience = times.ReadTotalTimeoutConstant + kGrace_ms;
    if (::WaitForSingleObject(arrived_.get(), patience) != WAIT_OBJECT_0) ::CancelIo(port_.get());
    // `into` is the driver's until the reading has ended in one way or the other.
    if (::GetOverlappedResult(port_.get(), &reading, &size, TRUE) != 0) return Chunk{size};
    const DWORD ended = ::GetLastError();
    DWORD errors = 0;
    const bool is_there = ::ClearCommError(port_.get(), &errors, nullptr) != 0;
    if ((ended == ERROR_OPERATION_ABORTED || ended == ERROR_TIMEOUT) && is_there) {
      return Chunk{size};
    }
    return lost(ended);
  }

  Error lost(DWORD number) const {
    if (is_gone(number)) {
      return {.what = "the device is disconnected",
              .where = path_,
              .remedy = "check its cable and power"};
    }
    return port_error("reading failed", path_, number);
  }
  Error speed_error(int baud) const {
    return port_error(fmt::format("cannot set the speed to {} baud", baud), path_,
                      ::GetLastError());
  }

  std::string path_;
  Handle port_;
  Handle arrived_;  // set when a reading has ended
  bool set_ = false;
};

}  // namespace

// COM10 and above are found by this prefix only, and the others by it too.
Result<std::unique_ptr<SerialPort>> open_serial_port(const std::string& path) {
  const std::string device = path.starts_with("\\\\.\\") ? path : "\\\\.\\" + path;
  Handle port(::CreateFileW(wide(device).c_str(), GENERIC_READ | GENERIC_WRITE, 0, nullptr,
                            OPEN_EXISTING, FILE_FLAG_OVERLAPPED, nullptr));
  if (!port.is_open()) return port_error("cannot open the device", path, ::GetLastError());
  DCB settings{};
  settings.DCBlength = sizeof(settings);
  if (::GetCommState(port.get(), &settings) == 0) {
    return port_error("this is not a serial port", path, ::GetLastError());
  }
  Handle arrived(::CreateEventW(nullptr, TRUE, FALSE, nullptr));
  if (!arrived.is_open()) return port_error("cannot open the device", path, ::GetLastError());
  return std::unique_ptr<SerialPort>(
      std::make_unique<OverlappedPort>(path, std::move(port), std::move(arrived)));
}

}  // namespace mastwise::platform
