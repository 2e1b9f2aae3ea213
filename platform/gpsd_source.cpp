#include "core/nmea/gpsd_stream.hpp"
#include "platform/byte_source.hpp"
#include "platform/clock.hpp"
#include "platform/tcp_connection.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <utility>

namespace mastwise::platform {
namespace {

// Knowledge kept for when gpsd is asked again.
struct Gpsd {
  std::string address;
  std::shared_ptr<HeldByGpsd> held;
  GpsdPatience patience;
  std::string in_use = {};  // the path of the device that was last watched
  bool has_spoken = false;  // and that it sent sentences
};

// The device that last spoke, else the one after it, cyclically. `paths` is not empty.
std::string next_path(const std::vector<std::string>& paths, const Gpsd& gpsd) {
  const auto at = std::find(paths.begin(), paths.end(), gpsd.in_use);
  if (at == paths.end()) return paths.front();
  if (gpsd.has_spoken) return *at;
  return at + 1 == paths.end() ? paths.front() : *(at + 1);
}

class GpsdSource : public ByteSource {
 public:
  GpsdSource(std::unique_ptr<TcpConnection> connection, std::shared_ptr<Gpsd> gpsd)
      : connection_(std::move(connection)),
        gpsd_(std::move(gpsd)),
        wait_until_(monotonic_now() + gpsd_->patience.greeting) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (!sentences_.empty()) return hand_on(into);
    if (trouble_) return *trouble_;
    std::array<char, 4096> bytes;
    const auto chunk = connection_->read(bytes, timeout);
    if (!chunk) return failure(chunk.error().what, chunk.error().remedy);
    if (!connection_->is_connected()) return Chunk{};
    stream_.feed({bytes.data(), chunk->size}, [&](nmea::GpsdLine line) {
      if (!trouble_) trouble_ = std::visit([this](auto& said) { return hear(said); }, line);
    });
    if (!sentences_.empty()) return hand_on(into);
    if (trouble_) return *trouble_;
    if (monotonic_now() < wait_until_) return Chunk{};
    if (!greeted_) return not_gpsd();
    return failure("the receiver sends nothing", "check its antenna and cable");
  }

  std::string name() const override { return "gpsd, " + gpsd_->in_use; }

 private:
  using Trouble = std::optional<Error>;

  Error failure(std::string what, std::string remedy) const {
    std::string where = "gpsd at " + gpsd_->address;
    if (watching_) where += ", " + gpsd_->in_use;
    return Error{.what = std::move(what), .where = std::move(where), .remedy = std::move(remedy)};
  }
  Error not_gpsd() const {
    return failure("this is not gpsd", "check the address; for plain NMEA leave out gpsd");
  }

  Trouble hear(const nmea::Ignored&) { return greeted_ ? Trouble() : not_gpsd(); }

  Trouble hear(const nmea::Sentence& said) {
    if (!greeted_) return not_gpsd();
    if (!watching_) return {};
    sentences_ += said.line + "\r\n";
    gpsd_->has_spoken = true;
    wait_until_ = monotonic_now() + gpsd_->patience.silence;
    return {};
  }

  Trouble hear(const nmea::gpsd::Version&) {
    greeted_ = true;
    return ask(nmea::gpsd_devices_request());
  }

  Trouble hear(const nmea::gpsd::Devices& devices) {
    if (!greeted_) return not_gpsd();
    if (gpsd_->held) gpsd_->held->paths = devices.paths;
    if (watching_) return {};
    if (devices.paths.empty()) return failure("gpsd has no receiver", "plug in the receiver");
    gpsd_->in_use = next_path(devices.paths, *gpsd_);
    gpsd_->has_spoken = false;  // tried once more; if it stays silent, the others are next
    watching_ = true;
    return ask(nmea::gpsd_watch_request(gpsd_->in_use));
  }

  Trouble hear(const nmea::gpsd::Device& device) {
    if (!watching_ || device.active || device.path != gpsd_->in_use) return {};
    return failure("the receiver is unplugged", "check its cable and power");
  }

  Trouble hear(const nmea::gpsd::Refusal& refusal) {
    return failure("gpsd refuses: " + refusal.message.substr(0, 200), "restart gpsd");
  }

  Trouble ask(const std::string& request) {
    wait_until_ = monotonic_now() + gpsd_->patience.silence;
    const auto sent = connection_->send(request);
    return sent ? Trouble() : failure(sent.error().what, sent.error().remedy);
  }

  Chunk hand_on(std::span<char> into) {
    const std::size_t size = std::min(into.size(), sentences_.size());
    std::memcpy(into.data(), sentences_.data(), size);
    sentences_.erase(0, size);
    return Chunk{size};
  }

  std::unique_ptr<TcpConnection> connection_;
  std::shared_ptr<Gpsd> gpsd_;
  Monotonic wait_until_;
  nmea::GpsdStream stream_;
  bool greeted_ = false;
  bool watching_ = false;
  std::string sentences_;  // not yet passed on; at most what one read of the connection gave
  Trouble trouble_;        // told after the sentences that came before it
};

}  // namespace

OpenSource gpsd_source(std::string address, std::shared_ptr<HeldByGpsd> held,
                       GpsdPatience patience) {
  const auto gpsd = std::make_shared<Gpsd>(
      Gpsd{.address = std::move(address), .held = std::move(held), .patience = patience});
  return [gpsd]() -> Result<std::unique_ptr<ByteSource>> {
    if (gpsd->held) gpsd->held->paths.clear();
    auto connection = connect_tcp(gpsd->address, "2947");
    if (!connection) return connection.error();
    return std::unique_ptr<ByteSource>(std::make_unique<GpsdSource>(*std::move(connection), gpsd));
  };
}

}  // namespace mastwise::platform
