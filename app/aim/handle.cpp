#include "app/aim/handle.hpp"

#include "app/shared/dial_checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "core/headings/handle.hpp"

#include <fmt/format.h>

namespace mastwise {

std::optional<HandleChoice> handle_from(const Form& form) {
  const auto points = numbers(form, Field::FirstReading_deg, Field::FirstAngle_deg,
                              Field::SecondReading_deg, Field::SecondAngle_deg);
  if (!points) return std::nullopt;
  return HandleChoice{.first_reading_deg = (*points)[0],
                      .first_angle_deg = (*points)[1],
                      .second_reading_deg = (*points)[2],
                      .second_angle_deg = (*points)[3],
                      .reach_from_deg = form.number(Field::ReachFrom_deg),
                      .reach_to_deg = form.number(Field::ReachTo_deg),
                      .stow_deg = form.number(Field::Stow_deg)};
}

FormAnswer handle_turn(const Shared& shared) {
  const auto typed = handle_from(shared.form);
  const auto choice = typed ? typed : shared.settings.handle;
  if (!choice) return {};
  const auto handle = handle_of(*choice);
  if (!handle) return in_trouble(handle.error());
  FormAnswer answer{
      .lines = {words::fill(choice == shared.settings.handle
                                ? words::say("Saved; zero error {degrees}°")
                                : words::say("Not saved yet; zero error {degrees}°"),
                            {{"degrees", fmt::format("{:.1f}", handle->sigma_deg())}})}};
  const auto now = shared.form.number(Field::HandleNow_deg);
  // What stations showed of the saved handle says nothing about new readings.
  const auto nominal = shared.findings.card ? shared.findings.card->rig_angle : std::nullopt;
  const auto to = choice == shared.settings.handle ? angle_by_handle(shared.findings) : nominal;
  if (to) {
    const NearestAim aim = handle->nearest(*to);
    answer.lines.push_back(
        words::fill(words::say("Station at {reading} on the handle"),
                    {{"reading", fmt::format("{:.0f}", aim.reading.dial_deg())}}));
    if (now) {
      const auto turn = handle->turn_to(*to, HandleReading::dial_deg(*now));
      if (!turn) return in_trouble(turn.error());
      answer.lines.push_back(words::handle_turn(*turn));
    }
  } else {
    answer.lines.push_back(words::say("Set the rig heading to get the turn to a station"));
  }
  if (now && choice->stow_deg) {
    const auto stow = handle->turn_to_stow(HandleReading::dial_deg(*now));
    if (stow) {
      answer.lines.push_back(words::fill(words::say("Before lowering: {turn}"),
                                         {{"turn", words::handle_turn(*stow)}}));
    }
  }
  return answer;
}

}  // namespace mastwise
