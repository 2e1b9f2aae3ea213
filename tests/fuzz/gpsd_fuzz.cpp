#include "core/nmea/gpsd_stream.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using fuzz::require;

namespace {

// A line as text, to compare it.
std::string shown(const GpsdLine& line) {
  struct Show {
    std::string operator()(const Ignored&) const { return {}; }
    std::string operator()(const Sentence& said) const {
      require(said.line.front() == '$' || said.line.front() == '!');
      require(said.line.size() <= GpsdStream::kLongest);
      require(said.line.find_first_of("\r\n") == std::string::npos);
      return said.line;
    }
    std::string operator()(const gpsd::Version& said) const { return "version " + said.release; }
    std::string operator()(const gpsd::Devices& said) const {
      std::string text = "devices";
      for (const std::string& path : said.paths) {
        require(!path.empty());
        text += ' ' + path;
      }
      return text;
    }
    std::string operator()(const gpsd::Device& said) const {
      return "device " + said.path + (said.active ? " came" : " went");
    }
    std::string operator()(const gpsd::Refusal& said) const { return "error " + said.message; }
  };
  return std::visit(Show{}, line) + '\n';
}

// Whatever path a server names, the request is one line of JSON that names it too.
void check_request(const GpsdLine& line) {
  const auto* devices = std::get_if<gpsd::Devices>(&line);
  if (devices == nullptr) return;
  for (const std::string& path : devices->paths) {
    const std::string request = gpsd_watch_request(path);
    require(std::count(request.begin(), request.end(), '\n') == 1);
    const std::string text = request.substr(7, request.size() - 9);
    const auto json = nlohmann::json::parse(text, nullptr, false);
    require(json.is_object() && json["device"] == path);
  }
}

}  // namespace

// The first byte gives the length of the pieces; the rest is the stream. It is read alike in pieces
// and as a whole.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const std::string_view stream = fuzz::text_of(data + 1, size - 1);
  std::string whole, in_pieces;
  GpsdStream one, other;
  one.feed(stream, [&](const GpsdLine& line) {
    whole += shown(line);
    check_request(line);
  });
  const std::size_t length = data[0] + std::size_t{1};
  for (std::string_view rest = stream; !rest.empty();) {
    const std::size_t piece = std::min(length, rest.size());
    other.feed(rest.substr(0, piece), [&](const GpsdLine& line) { in_pieces += shown(line); });
    rest.remove_prefix(piece);
  }
  require(whole == in_pieces);
  return 0;
}
