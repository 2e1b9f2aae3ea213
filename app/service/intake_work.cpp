#include "app/service/intake_work.hpp"

#include "app/service/browsing.hpp"
#include "app/service/fetch_offers.hpp"
#include "app/service/ground_around.hpp"
#include "app/service/intake_folders.hpp"
#include "app/service/intake_look.hpp"
#include "app/service/pack_intake.hpp"
#include "app/service/route_file.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "core/catalog/catalog.hpp"
#include "core/import/program_table.hpp"

#include <algorithm>
#include <chrono>
#include <map>
#include <set>

#include <fmt/format.h>

namespace mastwise {
namespace {

using Kind = TableReading::Kind;
using words::fill;
using words::say;

// Reports the progress of an import, at most a few times a second.
class Progress {
 public:
  Progress(const IntakeAnswer& base, const IntakeWorker::Work& work) : answer_(base), work_(work) {}

  // Returns whether to continue.
  bool told(std::string doing, std::optional<double> part) {
    if (work_.superseded()) return false;
    const auto now = std::chrono::steady_clock::now();
    constexpr std::chrono::milliseconds kBetween{150};
    if (last_ && now - *last_ < kBetween) return true;
    last_ = now;
    answer_.doing = std::move(doing);
    answer_.part = part;
    work_.publish(answer_);
    return true;
  }

 private:
  IntakeAnswer answer_;
  const IntakeWorker::Work& work_;
  std::optional<std::chrono::steady_clock::time_point> last_;
};

void keep_first(std::vector<RejectedRow>& rejected) {
  rejected.resize(std::min(rejected.size(), IntakeReport::kRejected));
}

Error no_programs(const ProgramTable& table) {
  const auto& rejected = table.rejected;
  return Error{.what = table.rows_without_program > 0 ? say("no row names a program")
                       : rejected.empty()             ? say("the table has no rows")
                                          : fill(say("all rows rejected; line {line}: {why}"),
                                                 {{"line", std::to_string(rejected.front().line)},
                                                  {"why", rejected.front().reason}}),
               .remedy = say("the catalog is unchanged")};
}

bool of_ground(const IntakeQuestion& question) {
  return question.reading->kind == Kind::Terrain || question.reading->kind == Kind::LandCover;
}

// Changes near the stop come first.
ImportFocus near_stop(const IntakeQuestion& question) {
  if (question.practice || question.way.empty()) return {};
  return {.near = question.way.front()};
}

// The ground to fetch for: none while practicing.
std::optional<GroundAround> ground_to_fetch(const GroundFolders& folders,
                                            const IntakeQuestion& question,
                                            const map::Borders* coasts) {
  if (question.practice) return std::nullopt;
  return ground_near(folders, question, coasts);
}

class Intaker {
 public:
  explicit Intaker(IntakeSources sources)
      : sources_(std::move(sources)), memory_(sources_.mapping_folder) {}
  IntakeAnswer answer(const IntakeQuestion& question, const IntakeWorker::Work& work);

 private:
  Result<Catalog*> catalog();
  Result<Done> add_sources(IntakeAnswer& answer);
  Result<Done> work_out(IntakeAnswer& answer, const IntakeWorker::Work& work);
  const map::Borders* borders();
  CountriesNear countries_near();
  void add_ground(IntakeAnswer& answer);
  Result<Done> add_look(IntakeAnswer& answer);
  Result<std::string> source_renewed_by(const TableLook& look);
  Result<IntakeReport> take_stations(const IntakeQuestion& question, Progress& progress);
  Result<IntakeReport> take_programs(const IntakeQuestion& question);
  Result<IntakeReport> take_ground(const IntakeQuestion& question, Progress& progress);
  packs::Home home() const;
  FetchPlaces fetch_places() const;
  Result<Done> add_offers(IntakeAnswer& answer);
  Result<IntakeReport> fetch(const IntakeQuestion& question, Progress& progress);
  Result<IntakeReport> take_pack(const IntakeQuestion& question, Progress& progress);
  Result<Done> take(IntakeAnswer& answer, const IntakeWorker::Work& work);
  void remember(const IntakeQuestion& question, ImportReport& report) const;

  IntakeSources sources_;
  sources::MappingMemory memory_;
  std::optional<Catalog> catalog_;
  std::optional<map::Borders> borders_;
  std::optional<places::Gazetteer> towns_;
  std::size_t generation_ = 0;
  // The last import, for an answer that nobody waited for.
  std::optional<IntakeReport> report_;
  std::size_t reported_ = 0;
};

Result<Catalog*> Intaker::catalog() {
  if (!catalog_) {
    auto opened = Catalog::open(sources_.catalog_path);
    if (!opened) return opened.error();
    catalog_ = *std::move(opened);
  }
  return &*catalog_;
}

Result<Done> Intaker::add_sources(IntakeAnswer& answer) {
  const auto opened = catalog();
  if (!opened) return opened.error();
  auto stations = (*opened)->sources();
  if (!stations) return stations.error();
  auto programs = (*opened)->program_sources();
  if (!programs) return programs.error();
  answer.stations = *std::move(stations);
  answer.programs = *std::move(programs);
  return Done{};
}

// The source of the catalog with more than half of the sample's call signs, or empty. The same
// table often has another file name each year.
Result<std::string> Intaker::source_renewed_by(const TableLook& look) {
  std::map<std::string, std::size_t> having;
  for (const CheckedStation& station : look.sample) {
    const auto known = catalog_->with_call_sign(station.call_sign);
    if (!known) return known.error();
    std::set<std::string> sources;
    for (const Station& one : *known) sources.insert(one.provenance.source.name);
    for (const std::string& source : sources) ++having[source];
  }
  for (const auto& [source, count] : having) {
    if (2 * count > look.sample.size()) return source;
  }
  return std::string();
}

const map::Borders* Intaker::borders() {
  if (!borders_ && sources_.borders) {
    if (auto borders = sources_.borders()) borders_ = *std::move(borders);
  }
  return borders_ ? &*borders_ : nullptr;
}

CountriesNear Intaker::countries_near() {
  if (!towns_ && sources_.towns) {
    if (auto towns = sources_.towns()) towns_ = *std::move(towns);
  }
  return towns_ ? sources::countries_by(*towns_) : CountriesNear();
}

void Intaker::add_ground(IntakeAnswer& answer) {
  const GroundFolders& folders = sources_.ground;
  answer.ground = ground_held(folders);
  answer.around = ground_near(folders, answer.question, borders());
  answer.disk = disk_use({folders.terrain, folders.cover}, sources_.catalog_path);
}

Result<Done> Intaker::add_look(IntakeAnswer& answer) {
  const IntakeQuestion& question = answer.question;
  if (sources::is_raster(question.path)) {
    answer.look = look_into_raster(question.path, question.reading, sources_.ground);
    return Done{};
  }
  if (sources::is_pack(question.path)) {
    answer.look = look_into_pack(question.path, home(), borders());
    return Done{};
  }
  TableLook look = look_into(question.path, question.reading, memory_, countries_near());
  const auto renewed = source_renewed_by(look);
  if (!renewed) return renewed.error();
  look.renews = *renewed;
  if (!look.renews.empty()) look.reading.source.name = look.renews;
  // Without borders the check map shows the stations alone.
  add_maps(look, borders());
  answer.look = std::move(look);
  return Done{};
}

void Intaker::remember(const IntakeQuestion& question, ImportReport& report) const {
  if (question.reading->kind != Kind::Mapped) return;
  const auto head = sources::head_of(question.path);
  if (const auto ready = head ? sources::ready_for_table(*head) : std::nullopt) {
    // A built-in mapping needs no memory.
    TableMapping own = question.reading->mapping;
    own.source = std::get<TableMapping>(ready->way).source;
    if (own == std::get<TableMapping>(ready->way)) return;
  }
  const auto kept =
      head ? memory_.remember(*head, question.reading->mapping) : Result<Done>(head.error());
  if (!kept)
    report.remarks.push_back(
        fill(say("Mastwise could not save the columns: {why}"), {{"why", kept.error().message()}}));
}

Result<IntakeReport> Intaker::take_stations(const IntakeQuestion& question, Progress& progress) {
  const auto way = way_of(*question.reading);
  if (!way) return way.error();
  const auto of = [](std::uint64_t done, std::uint64_t all) -> std::optional<double> {
    if (all == 0) return std::nullopt;
    return static_cast<double>(done) / static_cast<double>(all);
  };
  if (!progress.told(say("Reading"), std::nullopt)) return Error{.what = "the import was stopped"};
  const auto opened = catalog();
  if (!opened) return opened.error();
  const auto before = (*opened)->count();
  if (!before) return before.error();
  auto done = sources::import_stations(
      question.path, *way, **opened,
      [&](const std::string& file, std::uint64_t part, std::uint64_t all) {
        return progress.told(file.empty() ? std::string(say("Writing stations"))
                                          : fill(say("Reading {file}"), {{"file", file}}),
                             of(part, all));
      },
      near_stop(question));
  if (!done) return done.error();
  IntakeReport report{.stations = *std::move(done), .first_stations = *before == 0};
  report.rejected = report.stations.rows_rejected;
  keep_first(report.stations.rejected);
  remember(question, report.stations);
  return report;
}

Result<IntakeReport> Intaker::take_programs(const IntakeQuestion& question) {
  const auto text = sources::read_whole(question.path);
  if (!text) return text.error();
  const auto table = read_program_csv(*text, question.reading->source, question.reading->programs);
  if (!table) return table.error();
  if (table->programs.empty()) return no_programs(*table);
  const auto opened = catalog();
  if (!opened) return opened.error();
  auto done = (*opened)->replace_programs(*table);
  if (!done) return done.error();
  IntakeReport report{.of_programs = true, .programs = *std::move(done)};
  report.rejected = report.programs.rejected.size();
  keep_first(report.programs.rejected);
  return report;
}

Result<IntakeReport> Intaker::take_ground(const IntakeQuestion& question, Progress& progress) {
  const char* const doing =
      question.reading->kind == Kind::Terrain ? say("Reading heights") : say("Reading land cover");
  if (!progress.told(doing, 0.0)) return Error{.what = "the import was stopped"};
  auto done = import_ground(question.path, *question.reading, sources_.ground,
                            [&](double part) { return progress.told(doing, part); });
  if (!done) return done.error();
  return IntakeReport{.ground = *std::move(done)};
}

packs::Home Intaker::home() const {
  return {.terrain = sources_.ground.terrain,
          .cover = sources_.ground.cover,
          .catalog = sources_.catalog_path};
}

Result<IntakeReport> Intaker::take_pack(const IntakeQuestion& question, Progress& progress) {
  const auto opened = catalog();
  if (!opened) return opened.error();
  const auto before = (*opened)->count();
  if (!before) return before.error();
  auto done = import_pack(
      question.path, home(), [&](double part) { return progress.told(say("Unpacking"), part); },
      near_stop(question));
  if (!done) return done.error();
  return IntakeReport{.first_stations = *before == 0, .pack = *std::move(done)};
}

FetchPlaces Intaker::fetch_places() const {
  return {.home = home(), .downloads = sources_.downloads, .base = sources_.publishers_base};
}

Result<Done> Intaker::add_offers(IntakeAnswer& answer) {
  auto offers =
      fetch_offers(fetch_places(), ground_to_fetch(sources_.ground, answer.question, borders()));
  if (!offers) return offers.error();
  answer.offers = *std::move(offers);
  answer.connection = connection_now();
  return Done{};
}

Result<IntakeReport> Intaker::fetch(const IntakeQuestion& question, Progress& progress) {
  const auto opened = catalog();
  if (!opened) return opened.error();
  const auto before = (*opened)->count();
  if (!before) return before.error();
  // What was imported before a fault or a stop stays on board.
  ++generation_;
  auto done = fetch_set(fetch_places(), question.fetch,
                        ground_to_fetch(sources_.ground, question, borders()), near_stop(question),
                        [&](std::string doing, std::optional<double> part) {
                          return progress.told(std::move(doing), part);
                        });
  if (!done) return done.error();
  return IntakeReport{.first_stations = *before == 0 && done->stations,
                      .fetched = *std::move(done)};
}

Result<Done> Intaker::take(IntakeAnswer& answer, const IntakeWorker::Work& work) {
  const IntakeQuestion& question = answer.question;
  const bool fetching = question.step == IntakeStep::Fetching;
  if ((!question.reading && !fetching) || question.taking == reported_) return Done{};
  Progress progress(answer, work);
  const bool pack = !fetching && question.reading->kind == Kind::Pack;
  const bool ground = fetching || pack || of_ground(question);
  auto report = fetching                                   ? fetch(question, progress)
                : of_ground(question)                      ? take_ground(question, progress)
                : pack                                     ? take_pack(question, progress)
                : question.reading->kind == Kind::Programs ? take_programs(question)
                                                           : take_stations(question, progress);
  // A fetch that ends early keeps what came.
  if (report || fetching) ++generation_;
  if (!report) return report.error();
  report_ = *std::move(report);
  reported_ = question.taking;
  if (ground) answer.ground = ground_held(sources_.ground);
  return add_sources(answer);
}

Result<Done> Intaker::work_out(IntakeAnswer& answer, const IntakeWorker::Work& work) {
  answer.places = sources_.places();
  if (const auto added = add_sources(answer); !added) return added;
  switch (answer.question.step) {
    case IntakeStep::Catalog:
      add_ground(answer);
      return Done{};
    case IntakeStep::Places:
    case IntakeStep::Report:
      return Done{};
    case IntakeStep::Folder: {
      const auto shown = sources::show_folder(answer.question.folder);
      if (!shown) return shown.error();
      answer.folder = answer.question.for_route ? routes_of(*shown) : folder_of(*shown);
      return Done{};
    }
    case IntakeStep::Table:
      return add_look(answer);
    case IntakeStep::TakingIn:
    case IntakeStep::Fetching:
      return take(answer, work);
    case IntakeStep::Offers:
      return add_offers(answer);
    case IntakeStep::Route: {
      auto look = look_into_routes(answer.question.path);
      if (!look) return look.error();
      answer.route = *std::move(look);
      return Done{};
    }
  }
  return Done{};
}

IntakeAnswer Intaker::answer(const IntakeQuestion& question, const IntakeWorker::Work& work) {
  IntakeAnswer answer{.question = question, .generation = generation_};
  if (const auto done = work_out(answer, work); !done) answer.trouble = done.error().message();
  answer.generation = generation_;
  if (report_ && question.taking == reported_) answer.report = report_;
  return answer;
}

}  // namespace

IntakeWorker::Answerer intake_answerer(IntakeSources sources) {
  auto intaker = std::make_shared<Intaker>(std::move(sources));
  return [intaker](const IntakeQuestion& question, const IntakeWorker::Work& work) {
    return intaker->answer(question, work);
  };
}

}  // namespace mastwise
