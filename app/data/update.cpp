#include "app/data/update.hpp"

#include "app/data/findings.hpp"
#include "app/shared/actions.hpp"
#include "core/import/import_csv.hpp"

#include <algorithm>

namespace mastwise {
namespace {

std::vector<std::string> column_names(const TableLook& look) {
  std::vector<std::string> names;
  for (const IntakeColumn& column : look.columns) names.push_back(column.name);
  return names;
}

// Looks at the ground around the stop and the way as they are now. A receiver's next fix asks
// nothing new: a newer question would stop an import.
void look_around(Intake& intake, const Shared& shared) {
  intake.question.way = shared.findings.way;
  intake.question.practice = shared.stop.practice;
}

// An import or a download; a newer question would stop it.
bool runs(const Intake& intake) {
  return intake.question.step == IntakeStep::TakingIn ||
         intake.question.step == IntakeStep::Fetching;
}

void go_to(Intake& intake, IntakeStep step) {
  intake.question.step = step;
  ++intake.question.look;
  intake.question.reading.reset();
  intake.choosing.clear();
  intake.trouble.clear();
}

// Starts with the catalog when opened, unless an import is running or just ended.
void open_intake(Intake& intake, const Shared& shared) {
  intake.opened = true;
  const IntakeStep step = intake.question.step;
  if (runs(intake) || step == IntakeStep::Report) return;
  look_around(intake, shared);
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

using Kind = TableReading::Kind;

// Reads the coordinates as the suspicion's other reading does, unless they are right as they are.
void choose_positions(TableReading& reading, const std::optional<Suspicion>& suspicion,
                      const std::string& value) {
  if (value != kOtherPositions || !suspicion || !suspicion->other) return;
  if (reading.kind == Kind::OwnFormat) {
    reading.mapping = own_mapping(reading.source);
    reading.kind = Kind::Mapped;
  }
  reading.mapping = reread(reading.mapping, *suspicion->other);
}

void correct_reading(Intake& intake, const std::string& part, const std::string& value) {
  if (!intake.reading || !intake.look || intake.question.step != IntakeStep::Table) return;
  TableReading& reading = *intake.reading;
  if (part == "source.name") {
    reading.source.name = value;
  } else if (part == "classes") {
    reading.classes = value;
  } else if (part == "source.date") {
    reading.source.date = value;
  } else if (part == "kind") {
    reading.kind = value == kProgramsKind ? Kind::Programs : Kind::Mapped;
  } else if (part == "positions") {
    choose_positions(reading, intake.look->suspicion, value);
  } else if (std::string* const column = program_column(reading.programs, part)) {
    *column = value;
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
  if (suspected(intake)) return;
  intake.question.step = IntakeStep::TakingIn;
  intake.question.reading = intake.reading;
  intake.trouble.clear();
  ++intake.question.taking;
}

void back_to_offers(Intake& intake) {
  intake.question.step = IntakeStep::Offers;
  ++intake.question.look;
}

void fetch_now(Intake& intake) {
  const FetchOffer* offer = offer_shown(intake);
  if (offer == nullptr || offer->files == 0) return;
  intake.question.step = IntakeStep::Fetching;
  intake.question.fetch = offer->id;
  intake.trouble.clear();
  ++intake.question.taking;
}

// Back to the table, which was not imported, or to the offer, unless the answer says that it was.
void stop_taking_in(Intake& intake) {
  if (intake.question.step == IntakeStep::TakingIn) intake.question.step = IntakeStep::Table;
  if (intake.question.step == IntakeStep::Fetching) back_to_offers(intake);
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
  } else if (step == IntakeStep::Fetching && of_this && !answer.trouble.empty()) {
    back_to_offers(intake);
    intake.trouble = answer.trouble;
  }
}

class DataUpdater {
 public:
  DataUpdater(Intake& intake, const Shared& shared) : intake_(intake), shared_(shared) {}

  void operator()(const act::OpenIntakeFolder& open) {
    if (open.path.empty()) look_around(intake_, shared_);
    open_intake_folder(intake_, open.path);
  }
  void operator()(const act::ShowImportPlaces&) {
    intake_.question.for_route = false;
    go_to(intake_, IntakeStep::Places);
  }
  void operator()(const act::ShowOffers&) {
    look_around(intake_, shared_);
    intake_.offered.clear();
    go_to(intake_, IntakeStep::Offers);
  }
  void operator()(const act::PickOffer& pick) { intake_.offered = pick.set; }
  void operator()(const act::FetchNow&) { fetch_now(intake_); }
  void operator()(const act::PickRoute& pick) {
    intake_.question.path = pick.path;
    go_to(intake_, IntakeStep::Route);
  }
  void operator()(const act::ShowLastReport&) {
    if (intake_.report) go_to(intake_, IntakeStep::Report);
  }
  void operator()(const act::PickTable& pick) { pick_table(intake_, pick.path); }
  void operator()(const act::ChooseColumnOf& choose) { intake_.choosing = choose.part; }
  void operator()(const act::CorrectReading& correct) {
    correct_reading(intake_, correct.part, correct.value);
  }
  void operator()(const act::TakeIn&) { take_in(intake_); }
  void operator()(const act::StopTakingIn&) { stop_taking_in(intake_); }
  void operator()(const act::IntakeFound& found) { intake_found(intake_, found.answer); }

 private:
  Intake& intake_;
  const Shared& shared_;
};

}  // namespace

void update(Intake& intake, Shared& shared, const Action& action) {
  if (const auto* open = action.get_if<act::OpenSheet>()) {
    if (intake.shown && open->sheet != Sheet::Import) leave_intake(intake);
    if (open->sheet == Sheet::Import) open_intake(intake, shared);
  }
  if (action.get_if<act::ShowRoutePlaces>() != nullptr && !runs(intake)) {
    intake.question.for_route = true;
    go_to(intake, IntakeStep::Places);
  }
  visit(action, DataActions{}, DataUpdater(intake, shared));
}

void derive(Intake& intake, Shared& shared) {
  shared.findings.importing = runs(intake);
  intake.shown = shared.sheet == Sheet::Import;
  intake.found = {};
  if (!intake.shown) return;
  const auto here = shared.stop.practice ? std::nullopt : shared.findings.position;
  intake.found = intake_findings(intake, shared.findings.today, here, shared.settings.miles);
  const auto& on_board = shared.findings.on_board;
  if (shared.stop.practice && on_board && shared.stations && !shared.stations->rows.empty()) {
    const Source& source = shared.stations->rows.front().station.provenance.source;
    intake.found.practice = source_shown({source, on_board->count}, shared.findings.today);
  }
}

}  // namespace mastwise
