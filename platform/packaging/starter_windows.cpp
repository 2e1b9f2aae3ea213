#include "platform/system_windows.hpp"

#include <algorithm>
#include <optional>
#include <string>

#include <windows.h>

// mastwise-window.exe, for the start menu: starts mastwise.exe beside it with the same arguments
// but without the console window that a program of the command line opens by itself. What that
// program says when it gives up is shown in a box. Its exit code is this one's.
namespace {

using mastwise::platform::Handle;

std::wstring own_path() {
  constexpr std::size_t kLongest = 32'768;  // of a path with the prefix that lifts the limit
  std::wstring path(kLongest, L'\0');
  path.resize(::GetModuleFileNameW(nullptr, path.data(), static_cast<DWORD>(path.size())));
  return path;
}

int refuse(const std::string& reason) {
  const std::wstring text = mastwise::platform::wide(reason);
  ::MessageBoxW(nullptr, text.c_str(), L"Mastwise", MB_OK | MB_ICONERROR);
  return 1;
}

// A handle that the program started here gets too.
SECURITY_ATTRIBUTES passed_on() {
  return {.nLength = sizeof(SECURITY_ATTRIBUTES),
          .lpSecurityDescriptor = nullptr,
          .bInheritHandle = TRUE};
}

Handle nothing() {
  SECURITY_ATTRIBUTES attributes = passed_on();
  return Handle(::CreateFileW(L"NUL", GENERIC_READ | GENERIC_WRITE,
                              FILE_SHARE_READ | FILE_SHARE_WRITE, &attributes, OPEN_EXISTING, 0,
                              nullptr));
}

struct Pipe {
  Handle from, into;  // the second is passed on
};

std::optional<Pipe> make_pipe() {
  SECURITY_ATTRIBUTES attributes = passed_on();
  HANDLE from = nullptr, into = nullptr;
  if (::CreatePipe(&from, &into, &attributes, 0) == FALSE) return std::nullopt;
  Pipe pipe{Handle(from), Handle(into)};
  ::SetHandleInformation(from, HANDLE_FLAG_INHERIT, 0);
  return pipe;
}

// Until the other end is closed. The end of it: reasons come last.
std::string read_end(const Handle& from) {
  constexpr std::size_t kMost = 2'000;
  std::string said;
  char bytes[512];
  DWORD count = 0;
  while (::ReadFile(from.get(), bytes, sizeof bytes, &count, nullptr) != FALSE && count > 0) {
    said.append(bytes, count);
    said.erase(0, said.size() - std::min(said.size(), kMost));
  }
  return said;
}

}  // namespace

int WINAPI wWinMain(HINSTANCE, HINSTANCE, wchar_t* arguments, int) {
  const std::wstring own = own_path();
  const std::wstring program = own.substr(0, own.find_last_of(L'\\') + 1) + L"mastwise.exe";
  std::wstring command = L'"' + program + L"\" " + arguments;
  auto said = make_pipe();
  const Handle null = nothing();
  if (!said) return refuse(mastwise::platform::system_message("cannot start", ::GetLastError()));
  STARTUPINFOW start{};
  start.cb = sizeof start;
  start.dwFlags = STARTF_USESTDHANDLES;
  start.hStdInput = start.hStdOutput = null.get();
  start.hStdError = said->into.get();
  PROCESS_INFORMATION begun{};
  if (::CreateProcessW(program.c_str(), command.data(), nullptr, nullptr, TRUE, CREATE_NO_WINDOW,
                       nullptr, nullptr, &start, &begun) == FALSE) {
    return refuse(mastwise::platform::system_message(
        "cannot start " + mastwise::platform::narrow(program), ::GetLastError()));
  }
  const Handle process(begun.hProcess), thread(begun.hThread);
  ::AllowSetForegroundWindow(begun.dwProcessId);  // its window comes to the front
  said->into = Handle();
  const std::string reason = read_end(said->from);
  ::WaitForSingleObject(process.get(), INFINITE);
  DWORD code = 1;
  ::GetExitCodeProcess(process.get(), &code);
  if (code != 0 && !reason.empty()) refuse(reason);
  return static_cast<int>(code);
}
