#include "core/nmea/receiver.hpp"

#include "core/nmea/sentences.hpp"

#include <algorithm>

namespace mastwise::nmea {
namespace {

// The source of a talker: see Receiver.
std::string_view source_of(std::string_view talker) {
  constexpr std::string_view kSatelliteTalkers[] = {"GP", "GN", "GL", "GA", "GB",
                                                    "BD", "GQ", "QZ", "GI"};
  const bool is_satellite = std::find(std::begin(kSatelliteTalkers), std::end(kSatelliteTalkers),
                                      talker) != std::end(kSatelliteTalkers);
  return is_satellite ? "GN" : talker;
}

template <class T>
void set_if_said(Timed<T>& reading, const std::optional<T>& said, Monotonic now) {
  if (said) reading.set(*said, now);
}

}  // namespace

void Receiver::feed(std::string_view bytes, Monotonic now) {
  if (bytes.empty()) return;
  bytes_.set(true, now);
  framer_.feed(bytes, [&](std::string_view sentence) {
    sentence_.set(true, now);
    if (const auto report = read_sentence(sentence)) take(*report, now);
  });
}

void Receiver::take(const Report& report, Monotonic now) {
  take_heading(report, now);
  if (!hears(source_of(report.talker), now)) return;
  if (report.quality) take_position(report, now);
  take_precision(report, now);
  if (!has_fix(now)) return;
  take_motion(report, now);
  if (report.date && report.time) dates_.take(*report.date, *report.time);
}

void Receiver::take_heading(const Report& report, Monotonic now) {
  set_if_said(true_heading_, report.true_heading, now);
  set_if_said(magnetic_heading_, report.magnetic_heading, now);
  if (report.magnetic_heading) set_if_said(heading_declination_, report.declination, now);
  if (report.true_heading || report.magnetic_heading) ++headings_taken_;
}

void Receiver::take_position(const Report& report, Monotonic now) {
  const FixTrouble reason = trouble_of(report, now);
  if (reason != FixTrouble::none) {
    trouble_.set(reason, now);
    quality_.clear();
    return;
  }
  if (is_later_epoch(*report.time, now)) {
    begin_epoch(report, now);
  } else if (epoch_->time == *report.time) {
    // A second sentence of the same epoch may give a more exact quality than the first.
    epoch_->quality = std::max(epoch_->quality, *report.quality);
  } else {
    return;
  }
  if (epoch_->quality != FixQuality::unspecified) quality_.set(epoch_->quality, now);
}

void Receiver::begin_epoch(const Report& report, Monotonic now) {
  if (source_ != source_of(report.talker)) forget_source();
  source_ = source_of(report.talker);
  epoch_ = Epoch{*report.time, now, *report.quality};
  position_.set(*report.position, now);
  trouble_.clear();
  ++positions_taken_;
}

// Another source's fix data does not apply to the next one.
void Receiver::forget_source() {
  motion_.clear();
  quality_.clear();
  dimensions_.clear();
  hdop_.clear();
  error_m_.clear();
  altitude_m_.clear();
  declination_.clear();
}

void Receiver::take_precision(const Report& report, Monotonic now) {
  set_if_said(satellites_, report.satellites, now);
  if (!has_fix(now)) return;
  set_if_said(dimensions_, report.dimensions, now);
  set_if_said(hdop_, report.hdop, now);
  set_if_said(error_m_, report.error_m, now);
  set_if_said(altitude_m_, report.altitude_m, now);
  if (report.quality) set_if_said(declination_, report.declination, now);
}

void Receiver::take_motion(const Report& report, Monotonic now) {
  if (!report.speed_mps) return;
  if (report.time && *report.time != epoch_->time) return;
  motion_.set(Motion{*report.speed_mps, report.course}, now);
}

bool Receiver::hears(std::string_view source, Monotonic now) const {
  return source == source_ || position_.fresh(now) == nullptr;
}

// A clock that was set back is believed once the position is stale: nothing else is left.
bool Receiver::is_later_epoch(TimeOfDay time, Monotonic now) const {
  if (!epoch_) return true;
  const milliseconds ahead = (time - epoch_->time + kOneDay) % kOneDay;
  if (ahead == milliseconds(0)) return false;
  return ahead < kOneDay / 2 || position_.fresh(now) == nullptr;
}

bool Receiver::has_fix(Monotonic now) const {
  return position_.fresh(now) != nullptr && trouble_.fresh(now) == nullptr;
}

// Why this sentence cannot give a position.
FixTrouble Receiver::trouble_of(const Report& report, Monotonic now) const {
  switch (*report.quality) {
    case FixQuality::none:
      return FixTrouble::receiver_says_void;
    case FixQuality::estimated:
      return FixTrouble::estimated;
    case FixQuality::manual:
      return FixTrouble::manual;
    case FixQuality::simulator:
      return FixTrouble::simulator;
    default:
      break;
  }
  if (!report.position) return FixTrouble::impossible_position;
  if (!report.time) return FixTrouble::no_time;
  const bool frozen =
      epoch_ && epoch_->time == *report.time && now - epoch_->began >= kPositionLifetime;
  return frozen ? FixTrouble::frozen_time : FixTrouble::none;
}

FixTrouble Receiver::trouble(Monotonic now) const {
  if (bytes_.last() == nullptr) return FixTrouble::no_data;
  if (bytes_.fresh(now) == nullptr) return FixTrouble::silent;
  if (const auto* trouble = trouble_.fresh(now)) {
    const auto* satellites = satellites_.fresh(now);
    const bool none_used = satellites != nullptr && *satellites == 0;
    const bool is_void = *trouble == FixTrouble::receiver_says_void;
    return is_void && none_used ? FixTrouble::no_satellites : *trouble;
  }
  if (position_.fresh(now) != nullptr) return FixTrouble::none;
  if (sentence_.fresh(now) != nullptr) return FixTrouble::no_position_reports;
  const SentenceCounts& counted = counts();
  if (counted.sentences_good > 0 || counted.sentences_bad_checksum > 0) return FixTrouble::damaged;
  return counted.sentences_without_checksum > 0 ? FixTrouble::no_checksums : FixTrouble::not_nmea;
}

Fix Receiver::fix(Monotonic now) const {
  Fix fix;
  fix.why_not_good = trouble(now);
  if (position_.last() != nullptr) fix.last_position = *position_.last();
  fix.age = position_.age(now);
  fix.positions_taken = positions_taken_;
  fix.silent_for = bytes_.age(now);
  fix.satellites = satellites_.fresh_copy(now);
  if (epoch_) {
    fix.time_of_day = epoch_->time;
    fix.utc = dates_.moment(epoch_->time);
  }
  if (!fix.good()) return fix;
  fix.position = fix.last_position;
  fix.quality = quality_.fresh_copy(now).value_or(FixQuality::unspecified);
  fix.dimensions = dimensions_.fresh_copy(now);
  fix.hdop = hdop_.fresh_copy(now);
  fix.error_m = error_m_.fresh_copy(now);
  fix.altitude_m = altitude_m_.fresh_copy(now);
  fix.declination = declination_.fresh_copy(now);
  if (const auto* motion = motion_.fresh(now)) {
    fix.speed_mps = motion->speed_mps;
    fix.course = motion->course;
  }
  return fix;
}

HeadingSensor Receiver::heading(Monotonic now) const {
  return HeadingSensor{true_heading_.fresh_copy(now), magnetic_heading_.fresh_copy(now),
                       heading_declination_.fresh_copy(now), headings_taken_};
}

}  // namespace mastwise::nmea
