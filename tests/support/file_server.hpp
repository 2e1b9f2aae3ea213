#pragma once

#include "tests/support/loopback_server.hpp"

#include <atomic>
#include <cstddef>
#include <functional>
#include <limits>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace mastwise::test {

struct HttpRequest {
  std::string path = {};
  std::map<std::string, std::string> headers = {};  // names in lower case
};

struct HttpAnswer {
  int status = 200;
  std::string body = {};
  std::map<std::string, std::string> headers = {};  // Content-Length is added unless given
  std::size_t cut_after = std::numeric_limits<std::size_t>::max();  // bytes of the body
  bool stalls = false;  // after the cut: keeps the line open, sending nothing
  bool drips = false;   // 2 kB at a time, with pauses of 5 ms
};

// A file with a tag, whole or from where the request says (RFC 9110, Range and If-Range).
HttpAnswer file_answer(const HttpRequest& request, const std::string& bytes,
                       const std::string& tag);

// A web server on the loopback in a thread of its own; one request for each connection.
class FileServer {
 public:
  using Handler = std::function<HttpAnswer(const HttpRequest&)>;
  explicit FileServer(Handler handler);
  ~FileServer();
  FileServer(const FileServer&) = delete;
  FileServer& operator=(const FileServer&) = delete;

  std::string base() const { return "http://127.0.0.1:" + std::to_string(server_.port()); }
  std::vector<HttpRequest> requests() const;
  // Bytes of bodies that it has sent so far.
  std::size_t sent() const { return sent_; }

 private:
  void serve();
  void answer(int client);
  bool send_all(int client, const char* bytes, std::size_t count);

  LoopbackServer server_;
  Handler handler_;
  mutable std::mutex busy_;
  std::vector<HttpRequest> requests_;
  std::atomic<std::size_t> sent_ = 0;
  std::atomic<bool> ending_ = false;
  std::thread thread_;
};

}  // namespace mastwise::test
