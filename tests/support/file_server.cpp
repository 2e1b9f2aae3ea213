#include "tests/support/file_server.hpp"

#include <algorithm>
#include <cctype>
#include <chrono>
#include <sstream>

#include <fmt/format.h>
#include <poll.h>

namespace mastwise::test {
namespace {

constexpr int kWait_ms = 20;

std::string read_head(int client) {
  std::string head;
  char byte = 0;
  while (!head.ends_with("\r\n\r\n") && ::recv(client, &byte, 1, 0) == 1) head.push_back(byte);
  return head;
}

HttpRequest parsed(const std::string& head) {
  HttpRequest request;
  std::istringstream lines(head);
  std::string line, method;
  std::getline(lines, line);
  std::istringstream(line) >> method >> request.path;
  while (std::getline(lines, line) && line.find(": ") != std::string::npos) {
    std::string name = line.substr(0, line.find(": "));
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    request.headers[name] = line.substr(line.find(": ") + 2, line.find('\r') - line.find(": ") - 2);
  }
  return request;
}

}  // namespace

HttpAnswer file_answer(const HttpRequest& request, const std::string& bytes,
                       const std::string& tag) {
  HttpAnswer answer{.body = bytes, .headers = {{"ETag", tag}}};
  const auto range = request.headers.find("range");
  const auto same = request.headers.find("if-range");
  if (range == request.headers.end()) return answer;
  if (same != request.headers.end() && same->second != tag) return answer;
  const std::size_t from = std::stoul(range->second.substr(std::string("bytes=").size()));
  if (from >= bytes.size()) return {.status = 416};
  answer.status = 206;
  answer.body = bytes.substr(from);
  answer.headers["Content-Range"] =
      fmt::format("bytes {}-{}/{}", from, bytes.size() - 1, bytes.size());
  return answer;
}

FileServer::FileServer(Handler handler)
    : handler_(std::move(handler)), thread_([this] { serve(); }) {}

FileServer::~FileServer() {
  ending_ = true;
  thread_.join();
}

std::vector<HttpRequest> FileServer::requests() const {
  const std::lock_guard alone(busy_);
  return requests_;
}

void FileServer::serve() {
  while (!ending_) {
    pollfd waiting{.fd = server_.listener(), .events = POLLIN, .revents = 0};
    if (::poll(&waiting, 1, kWait_ms) != 1) continue;
    const int client = ::accept(server_.listener(), nullptr, nullptr);
    if (client < 0) continue;
    answer(client);
    ::close(client);
  }
}

bool FileServer::send_all(int client, const char* bytes, std::size_t count) {
  while (count > 0) {
    const ssize_t sent = ::send(client, bytes, count, MSG_NOSIGNAL);
    if (sent <= 0) return false;
    bytes += sent;
    count -= static_cast<std::size_t>(sent);
  }
  return true;
}

void FileServer::answer(int client) {
  const HttpRequest request = parsed(read_head(client));
  {
    const std::lock_guard alone(busy_);
    requests_.push_back(request);
  }
  HttpAnswer answer = handler_(request);
  answer.headers.emplace("Content-Length", std::to_string(answer.body.size()));
  answer.headers.emplace("Connection", "close");
  std::string head = fmt::format("HTTP/1.1 {} Answer\r\n", answer.status);
  for (const auto& [name, value] : answer.headers) head += name + ": " + value + "\r\n";
  head += "\r\n";
  if (!send_all(client, head.data(), head.size())) return;
  const std::size_t all = std::min(answer.body.size(), answer.cut_after);
  const std::size_t most = answer.drips ? 2'000 : all;
  for (std::size_t at = 0; at < all && !ending_;) {
    const std::size_t count = std::min(most, all - at);
    if (!send_all(client, answer.body.data() + at, count)) return;
    sent_ += count;
    at += count;
    if (answer.drips) std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  while (answer.stalls && !ending_) {
    // Until the client hangs up.
    pollfd waiting{.fd = client, .events = POLLIN, .revents = 0};
    if (::poll(&waiting, 1, kWait_ms) == 1) return;
  }
}

}  // namespace mastwise::test
