#include "app/model/intake.hpp"

#include <algorithm>

namespace mastwise {
namespace {

std::vector<std::string> column_names(const TableLook& look) {
  std::vector<std::string> names;
  for (const IntakeColumn& column : look.columns) names.push_back(column.name);
  return names;
}

void go_to(Intake& intake, IntakeStep step) {
  intake.question.step = step;
  ++intake.question.look;
  intake.question.reading.reset();
  intake.choosing.clear();
  intake.trouble.clear();
}

}  // namespace

// Starts with the catalog when opened, unless an import is running or just ended.
void open_intake(Intake& intake) {
  intake.opened = true;
  const IntakeStep step = intake.question.step;
  if (step == IntakeStep::TakingIn || step == IntakeStep::Report) return;
  go_to(intake, IntakeStep::Catalog);
}

void leave_intake(Intake& intake) {
  if (intake.question.step == IntakeStep::Report) go_to(intake, IntakeStep::Catalog);
}

void open_intake_folder(Intake& intake, const std::string& path) {
  intake.question.folder = path;
  go_to(intake, path.empty() ? IntakeStep::Catalog : IntakeStep::Folder);
}

void pick_table(Intake& intake, const std::string& path) {
  intake.question.path = path;
  intake.look.reset();
  intake.reading.reset();
  intake.decided.clear();
  go_to(intake, IntakeStep::Table);
}

void correct_reading(Intake& intake, const std::string& part, const std::string& value) {
  if (!intake.reading || !intake.look || intake.question.step != IntakeStep::Table) return;
  TableReading& reading = *intake.reading;
  if (part == "source.name") {
    reading.source.name = value;
  } else if (part == "source.date") {
    reading.source.date = value;
  } else {
    correct(reading.mapping, part, value, column_names(*intake.look));
  }
  reading.mapping.source = reading.source;
  intake.decided.push_back(part);
  intake.choosing.clear();
  intake.question.reading = reading;
}

void take_in(Intake& intake) {
  if (!intake.reading || !intake.look || !intake.look->trouble.empty()) return;
  intake.question.step = IntakeStep::TakingIn;
  intake.question.reading = intake.reading;
  intake.trouble.clear();
  ++intake.question.taking;
}

// Back to the table, which was not imported, unless the answer says that it was.
void stop_taking_in(Intake& intake) {
  if (intake.question.step == IntakeStep::TakingIn) intake.question.step = IntakeStep::Table;
}

void intake_found(Intake& intake, const IntakeAnswer& answer) {
  intake.answer = answer;
  if (answer.question.path == intake.question.path && answer.look) {
    intake.look = answer.look;
    if (!intake.reading) intake.reading = answer.look->reading;
  }
  const IntakeStep step = intake.question.step;
  const bool of_this = answer.question.taking == intake.question.taking;
  if (answer.report && of_this && answer.question.taking > intake.reported) {
    intake.report = answer.report;
    intake.reported = answer.question.taking;
    intake.question.step = IntakeStep::Report;
  } else if (step == IntakeStep::TakingIn && of_this && !answer.trouble.empty()) {
    intake.question.step = IntakeStep::Table;
    intake.trouble = answer.trouble;
  }
}

}  // namespace mastwise
