#include "tests/app/touch/streams.hpp"

#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <sstream>

#include <catch2/catch.hpp>

namespace mastwise::touch::test {
namespace {

PointerEvent event_of(const std::string& line) {
  using Kind = PointerEvent::Kind;
  static const std::map<std::string, Kind> kKinds{
      {"down", Kind::Down}, {"move", Kind::Move}, {"up", Kind::Up}, {"cancel", Kind::Cancel}};
  std::istringstream fields(line);
  int time_ms = 0;
  std::string kind;
  std::string finger;
  PointerEvent event;
  INFO(line);
  REQUIRE(fields >> time_ms >> kind >> finger >> event.x_px >> event.y_px);
  event.kind = kKinds.at(kind);
  event.finger = finger == "mouse" ? kMouse : std::stoll(finger);
  event.at = at_ms(time_ms);
  return event;
}

void append(std::vector<Gesture>& gestures, const std::vector<Gesture>& more) {
  gestures.insert(gestures.end(), more.begin(), more.end());
}

}  // namespace

std::vector<PointerEvent> stream(const std::string& name) {
  const std::string path =
      mastwise::test::source_folder() + "/tests/app/touch/streams/" + name + ".txt";
  std::vector<PointerEvent> events;
  for (const std::string& line : mastwise::test::read_lines(path)) {
    if (!line.empty() && line.front() != '#') events.push_back(event_of(line));
  }
  REQUIRE_FALSE(events.empty());
  return events;
}

std::vector<Gesture> played(Recognizer& recognizer, const std::vector<PointerEvent>& events) {
  constexpr milliseconds kFrame{16};
  const Monotonic end = events.back().at + milliseconds(1000);
  std::vector<Gesture> gestures;
  auto next = events.begin();
  for (Monotonic now = events.front().at; now <= end; now += kFrame) {
    for (; next != events.end() && next->at <= now; ++next) recognizer.feed(*next);
    recognizer.advance(now);
    append(gestures, recognizer.take());
  }
  return gestures;
}

std::string told(const std::vector<Gesture>& gestures) {
  std::string text;
  for (const Gesture& gesture : gestures) {
    const std::string one{"TLDFPRW"[static_cast<std::size_t>(gesture.kind)],
                          "+=-x"[static_cast<std::size_t>(gesture.phase)]};
    const bool repeated = gesture.phase == Gesture::Phase::Change && text.size() >= 2 &&
                          text.compare(text.size() - 2, 2, one) == 0;
    if (!repeated) text += one;
  }
  return text;
}

std::vector<Gesture> of_kind(const std::vector<Gesture>& gestures, Gesture::Kind kind) {
  std::vector<Gesture> found;
  std::copy_if(gestures.begin(), gestures.end(), std::back_inserter(found),
               [&](const Gesture& gesture) { return gesture.kind == kind; });
  return found;
}

}  // namespace mastwise::touch::test
