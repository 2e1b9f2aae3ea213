#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/clocks.hpp"
#include "app/service/device_source.hpp"
#include "app/service/startup.hpp"
#include "app/words/receivers.hpp"
#include "core/geo/notation.hpp"
#include "core/nmea/log_replay.hpp"
#include "core/text/iso_time.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"

#include <condition_variable>
#include <iostream>
#include <memory>
#include <mutex>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct ReplayOptions {
  std::string log, device, to, station, catalog, date, recorded_after;
  std::optional<double> nose_deg;
  double seconds = 10.0;
  bool json = false;
};

// Sentences received from a log or a device.
struct Heard {
  nmea::Receiver receiver;
  nmea::Fix last_good;
};

// A log may be of any year: without --recorded-after, its date is trusted.
Result<Heard> hear_log(const std::string& path, const std::string& recorded_after) {
  const auto bytes = platform::read_file(path);
  if (!bytes) return bytes.error();
  std::chrono::sys_days floor = service::build_date();
  if (!recorded_after.empty()) {
    const auto given = date_argument("--recorded-after", recorded_after, utc_zone());
    if (!given) return given.error();
    floor = std::chrono::floor<std::chrono::days>(*given);
  }
  nmea::LogReplay replay = nmea::replay_log(*bytes, floor);
  const auto& trusted = replay.receiver.date();
  if (recorded_after.empty() && trusted) replay = nmea::replay_log(*bytes, trusted->said);
  return Heard{std::move(replay.receiver), replay.last_good};
}

// Collects the events of the link's thread.
class Listener {
 public:
  void tell(platform::LinkNews news) {
    const std::lock_guard lock(mutex_);
    if (news.kind == platform::LinkNews::Kind::lost) trouble_ = news.text;
    if (news.kind == platform::LinkNews::Kind::ended) ended_ = true;
    if (news.kind == platform::LinkNews::Kind::bytes) {
      heard_.receiver.feed(news.text, news.when);
      if (const auto fix = heard_.receiver.fix(news.when); fix.good()) heard_.last_good = fix;
    }
    changed_.notify_all();
  }
  Result<Heard> wait(milliseconds longest, const std::string& device) {
    std::unique_lock lock(mutex_);
    changed_.wait_for(lock, longest, [this] { return ended_; });
    if (heard_.receiver.counts().bytes > 0) return heard_;
    return Error{.what = trouble_.empty() ? "no data received" : trouble_,
                 .where = device,
                 .remedy = "check the cable and the device's name, or raise --seconds"};
  }

 private:
  std::mutex mutex_;
  std::condition_variable changed_;
  Heard heard_{nmea::Receiver(service::build_date()), {}};
  std::string trouble_;
  bool ended_ = false;
};

Result<Heard> hear_device(const std::string& device, double seconds) {
  Listener listener;
  platform::DeviceLink link(service::device_source(device),
                            [&](platform::LinkNews news) { listener.tell(std::move(news)); });
  return listener.wait(milliseconds(static_cast<milliseconds::rep>(seconds * 1000.0)), device);
}

nlohmann::json fix_json(const nmea::Fix& fix) {
  if (!fix.position) return nullptr;
  nlohmann::json json{{"lat", fix.position->latitude_deg()},
                      {"lon", fix.position->longitude_deg()},
                      {"quality", nmea::name_of(fix.quality)},
                      {"time", nullptr}};
  if (fix.utc) {
    json["time"] = iso_utc_seconds(*fix.utc);
  } else if (fix.time_of_day) {
    json["time"] =
        iso_utc_seconds(UtcTime(*fix.time_of_day)).substr(std::string_view("1970-01-01T").size());
  }
  return json;
}

void print_text(const Heard& heard, const std::optional<AimCard>& card, const Destination* to,
                std::chrono::local_days day) {
  const nmea::SentenceCounts& counts = heard.receiver.counts();
  std::cout << fmt::format("{} sentences good, {} with a bad checksum, {} without one\n",
                           counts.sentences_good, counts.sentences_bad_checksum,
                           counts.sentences_without_checksum);
  const nmea::Fix& fix = heard.last_good;
  if (!fix.position) {
    std::cout << "No good fix: " << words::fix_trouble(fix) << '\n';
    return;
  }
  std::cout << fmt::format("Last good fix: {} ({})\n",
                           format_position(*fix.position, Notation::Decimal),
                           nmea::name_of(fix.quality));
  if (card && to != nullptr) std::cout << card_text(*card, std::nullopt, *fix.position, *to, day);
}

Result<Done> replay(const ReplayOptions& options) {
  const auto nose = nose_argument(options.nose_deg);
  if (!nose) return nose.error();
  std::optional<Destination> to;
  if (!options.to.empty() || !options.station.empty()) {
    auto found = destination_argument(options.to, options.station, options.catalog);
    if (!found) return found.error();
    to = *std::move(found);
  }
  const auto heard = options.device.empty() ? hear_log(options.log, options.recorded_after)
                                            : hear_device(options.device, options.seconds);
  if (!heard) return heard.error();
  const nmea::Fix& fix = heard->last_good;
  const LocalZone zone = service::Clocks::of_this_system().at(fix.position);
  auto date = date_argument("--date", options.date, *zone.clocks);
  if (!date) return date.error();

  std::optional<AimCard> card;
  if (to && fix.position && *fix.position != to->position) {
    const auto magnetic = service::load_magnetic_model();
    if (!magnetic) return magnetic.error();
    // The receiver's date, unless the log is older than the magnetic model.
    const bool dated = options.date.empty() && fix.utc;
    if (dated && !magnetic->at(*fix.position, *fix.utc).beyond_model_end) date = *fix.utc;
    card = aim_card(*fix.position, to->position, *date, *magnetic, *nose);
  }
  if (!options.json) {
    print_text(*heard, card, to ? &*to : nullptr, local_day(*date, *zone.clocks));
    return Done{};
  }
  const nmea::SentenceCounts& counts = heard->receiver.counts();
  nlohmann::json json{{"fix", fix_json(fix)},
                      {"sentences_good", counts.sentences_good},
                      {"sentences_bad_checksum", counts.sentences_bad_checksum},
                      {"sentences_without_checksum", counts.sentences_without_checksum}};
  const auto& trusted = heard->receiver.date();
  if (trusted) {
    json["date_said"] = iso_day(UtcTime(trusted->said));
    json["date_shifted_weeks"] = trusted->weeks_shifted;
  }
  if (card) json["card"] = card_json(*card, std::nullopt);
  print(json);
  return Done{};
}

}  // namespace

void add_replay(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ReplayOptions>();
  CLI::App* verb = program.add_subcommand(
      "replay", "Decode a receiver's log, and print the card from its position");
  auto* log = verb->add_option("log", options->log, "a recorded NMEA log");
  verb->add_option(
          "--device", options->device,
          "a live source instead of a log: a serial device, HOST:PORT, gpsd or gpsd://HOST:PORT")
      ->excludes(log);
  verb->add_option("--seconds", options->seconds, "how long to listen to the device (default: 10)")
      ->check(CLI::Range(0.1, 3600.0));
  auto* to = verb->add_option("--to", options->to, "the target, in any notation");
  verb->add_option("--station", options->station, "the target, as a call sign in the catalog")
      ->excludes(to);
  verb->add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  verb->add_option("--date", options->date, "date for the declination (default: the receiver's)");
  verb->add_option(
      "--recorded-after", options->recorded_after,
      "earliest date of the log: an older date in it is a receiver's 1024-week rollover "
      "and is corrected");
  verb->add_option("--nose", options->nose_deg, "true heading of the rig's nose in degrees");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] {
    if (options->log.empty() == options->device.empty()) {
      wrong_usage({.what = "no source, or two of them",
                   .where = "replay",
                   .remedy = "give a log file or --device PATH"});
    }
    chosen = [options] { return replay(*options); };
  });
}

}  // namespace mastwise::cli
