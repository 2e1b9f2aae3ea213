#include "tests/support/child_program.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/pty.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <fstream>
#include <thread>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The command line, with Mastwise itself as a child process.
using namespace mastwise;
using nlohmann::json;
using test::Arguments;
using test::contains;
using test::kExampleCard;
using test::with;

namespace {

class CommandLine {
 public:
  test::ChildProgram::Ended run(const Arguments& arguments) const {
    return test::run_program(arguments, data_.file("data"));
  }
  json printed(Arguments arguments) const {
    arguments.push_back("--json");
    const auto ended = run(arguments);
    INFO(ended.errors << ended.output);
    REQUIRE(ended.status == 0);
    CHECK(ended.errors.empty());
    const json read = json::parse(ended.output, nullptr, false);
    REQUIRE(read.is_object());
    return read;
  }
  // Refused: exit status 1, nothing on standard output, one line on standard error.
  std::string refusal(const Arguments& arguments) const {
    const auto ended = run(arguments);
    INFO(ended.errors << ended.output);
    CHECK(ended.status == 1);
    CHECK(ended.output.empty());
    REQUIRE_FALSE(ended.errors.empty());
    CHECK(std::count(ended.errors.begin(), ended.errors.end(), '\n') == 1);
    CHECK(ended.errors.back() == '\n');
    return ended.errors;
  }
  // Wrong usage: exit status 2, nothing on standard output, the reason on standard error.
  std::string misuse(const Arguments& arguments) const {
    const auto ended = run(arguments);
    INFO(ended.errors << ended.output);
    CHECK(ended.status == 2);
    CHECK(ended.output.empty());
    return ended.errors;
  }
  std::string file(const std::string& name, const std::string& text) const {
    std::ofstream(data_.file(name), std::ios::binary) << text;
    return data_.file(name);
  }
  std::string path(const std::string& name) const { return data_.file(name); }

 private:
  test::TemporaryFolder data_;
};

}  // namespace

TEST_CASE("card prints the published heading as one JSON object") {
  const CommandLine program;
  const json card = program.printed(kExampleCard);
  // reference/README.md: 207.950 degrees true, 10,368.18 m, declination 14.14 degrees west.
  CHECK(card.at("bearing_true_deg").get<double>() == Approx(207.950).margin(0.0005));
  CHECK(card.at("distance_m").get<double>() == Approx(10'368.18).margin(0.005));
  CHECK(card.at("declination_deg").get<double>() == Approx(-14.14).margin(0.01));
  CHECK(card.at("bearing_magnetic_deg").get<double>() ==
        Approx(card.at("bearing_true_deg").get<double>() - card.at("declination_deg").get<double>())
            .margin(1e-9));
  // sqrt(0.26^2 + (5417 / H)^2) with a horizontal field of 16,000 to 20,000 nT in New England.
  CHECK(card.at("declination_sigma_deg").get<double>() > 0.37);
  CHECK(card.at("declination_sigma_deg").get<double>() < 0.43);
  CHECK(card.at("utm_zone") == "19N");
  // Spherical first term, atan(tan(longitude - central meridian) sin(latitude)), good to 0.01
  // degree at 2.7 degrees from the meridian 69 degrees west.
  const double degree = 3.14159265358979323846 / 180.0;
  const double convergence_deg =
      std::atan(std::tan((-71.675993 + 69.0) * degree) * std::sin(44.435217 * degree)) / degree;
  CHECK(card.at("convergence_deg").get<double>() == Approx(convergence_deg).margin(0.01));
  CHECK(card.at("bearing_grid_deg").get<double>() ==
        Approx(card.at("bearing_true_deg").get<double>() - card.at("convergence_deg").get<double>())
            .margin(1e-9));
  CHECK_FALSE(card.contains("rig_angle_deg"));
  CHECK_FALSE(card.contains("warning"));
}

// Reading 3, deviation 1.0 to 1.2 at H of some 18,000 nT, the sight 1, declination 0.4 degrees, and
// 0.3 for 58 m at 10 km: 3.4 in all.
TEST_CASE("card counts the compass's whole error where it is read") {
  const CommandLine program;
  const json clear = program.printed(with(kExampleCard, {"--standing", "clear"}));
  CHECK(clear.at("compass_sigma_deg").get<double>() == Approx(3.4).margin(0.1));
  CHECK(clear.at("compass_errors_deg").at("reading").get<double>() == 3.0);
  CHECK(clear.at("compass_errors_deg").at("sight line").get<double>() == 1.0);
  const json table = program.printed(with(kExampleCard, {"--standing", "table"}));
  CHECK(table.at("compass_sigma_deg").get<double>() > 7.0);
  for (const char* refused : {"beside", "roof"}) {
    const json card = program.printed(with(kExampleCard, {"--standing", refused}));
    CHECK(contains(card.at("compass_refused").get<std::string>(), "steel"));
    CHECK_FALSE(card.contains("compass_sigma_deg"));
  }
  CHECK(contains(program.printed(kExampleCard).at("compass_refused").get<std::string>(),
                 "say where you stand"));
  const std::string text = program.run(with(kExampleCard, {"--standing", "clear"})).output;
  CHECK(contains(text, "with a handheld compass well clear of the rig"));
  CHECK(contains(text, "reading 3.0°"));
  CHECK(contains(program.run(kExampleCard).output, "say --standing for its error"));
  CHECK(contains(program.refusal(with(kExampleCard, {"--standing", "beneath"})), "beside, roof"));
}

TEST_CASE("card gives the rig angle from the nose's true heading") {
  const CommandLine program;
  const json card = program.printed(with(kExampleCard, {"--nose", "300"}));
  CHECK(card.at("rig_angle_deg").get<double>() == Approx(207.950 - 300.0 + 360.0).margin(0.0005));
  CHECK(contains(program.refusal(with(kExampleCard, {"--nose", "361"})), "--nose"));
}

TEST_CASE("card reads every notation and shows the wrong character") {
  const CommandLine program;
  const json decimal = program.printed(kExampleCard);
  const json sexagesimal =
      program.printed({"card", "--at", "44°26′06.78″N 71°40′33.57″W", "--to",
                       "44 21 10.0 N 71 44 13.0 W", "--date", "2026-07-02T00:00:00Z"});
  CHECK(sexagesimal.at("bearing_true_deg").get<double>() ==
        Approx(decimal.at("bearing_true_deg").get<double>()).margin(0.02));
  const std::string error =
      program.refusal({"card", "--at", "44.435217,-71.67x993", "--to", "44.352778,-71.736944"});
  CHECK(contains(error, "--at"));
  CHECK(contains(error, "character 17"));
}

TEST_CASE("card as text names the north of each heading") {
  const CommandLine program;
  const auto ended = program.run(with(kExampleCard, {"--nose", "300"}));
  CHECK(ended.status == 0);
  CHECK(contains(ended.output, "222.1° magnetic"));
  CHECK(contains(ended.output, "208.0° true"));  // 207.950 to one decimal
  CHECK(contains(ended.output, "14.1° west of true north on 2 July 2026"));
  CHECK(contains(ended.output, "10.4 km"));
  CHECK(contains(ended.output, "6.4 mi"));
  CHECK(contains(ended.output, "92° left"));
  CHECK_FALSE(contains(ended.output, "PRACTICE"));
}

TEST_CASE("card without a place uses the practice area and marks it") {
  const CommandLine program;
  const auto ended = program.run({"card"});
  CHECK(ended.status == 0);
  CHECK(contains(ended.output, "PRACTICE"));
  CHECK(contains(ended.output, "magnetic"));
}

TEST_CASE("card refuses targets without a heading") {
  const CommandLine program;
  CHECK(contains(program.refusal({"card", "--at", "44,-71", "--to", "44,-71"}), "same place"));
  CHECK(contains(program.misuse({"card", "--at", "44,-71"}), "--to"));
  CHECK(contains(program.misuse({"card", "--to", "44,-71"}), "--at"));
  CHECK(contains(program.refusal({"card", "--at", "44,-71", "--station", "QNONE"}), "QNONE"));
  CHECK(contains(
      program.refusal(with({"card", "--at", "44,-71", "--to", "45,-71"}, {"--date", "2026-02-30"})),
      "2026-02-30"));
}

TEST_CASE("import reads a station table, and card aims at its stations by call sign") {
  const CommandLine program;
  const std::string table = program.file("own.csv",
                                         "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n"
                                         "QRST,ATSC,23,44.352778,-71.736944\n"
                                         "QBAD,ATSC,23,144.0,-71.7\n"
                                         "QUVW,ATSC,28,44.571111,-71.893611\n"
                                         "QCHN,ATSC,99,44.5,-71.7\n");
  const json report = program.printed({"import", "stations", table});
  CHECK(report.at("rows_read") == 4);
  CHECK(report.at("stations_added") == 2);
  CHECK(report.at("rows_rejected") == 2);
  CHECK(report.at("rejected").at(0).at("line") == 3);
  CHECK_FALSE(report.at("rejected").at(0).at("reason").get<std::string>().empty());
  CHECK(report.at("rejected").at(1).at("line") == 5);

  const json card = program.printed(
      {"card", "--at", "44.435217,-71.675993", "--station", "qrst", "--date", "2026-07-02"});
  CHECK(card.at("bearing_true_deg").get<double>() == Approx(207.950).margin(0.0005));
  // reference/README.md, the other transmitter of the place.
  const json other = program.printed(
      {"card", "--at", "44.435217,-71.675993", "--station", "QUVW", "--date", "2026-07-02"});
  CHECK(other.at("bearing_true_deg").get<double>() == Approx(311.183).margin(0.0005));
  CHECK(other.at("distance_m").get<double>() == Approx(22'968.18).margin(0.005));

  const json again = program.printed({"import", "stations", table});
  CHECK(again.at("stations_added") == 0);
  CHECK(again.at("stations_unchanged") == 2);
  const auto text = program.run({"import", "stations", table, "--catalog", program.path("other")});
  CHECK(text.status == 0);
  CHECK(contains(text.output, "4 rows read, 2 stations added"));
  CHECK(contains(text.output, "line 3"));
}

TEST_CASE("a failed import prints one line") {
  const CommandLine program;
  CHECK(contains(program.refusal({"import", "stations", program.path("none.csv")}), "none.csv"));
  const std::string broken = program.file("broken.csv", "name,somewhere\nQAAA,here\n");
  const std::string error = program.refusal({"import", "stations", broken});
  CHECK(contains(error, "broken.csv"));
  CHECK(contains(error, "call_sign"));
  CHECK(
      contains(program.refusal({"import", "stations", broken, "--mapping", "no_such"}), "no_such"));
  const std::string no_catalog = program.file("notes.txt", std::string(4096, 'x'));
  const std::string good = program.file(
      "good.csv", "call_sign,raster,rf_channel,latitude_deg,longitude_deg\nQRST,ATSC,23,44,-71\n");
  CHECK(contains(program.refusal({"import", "stations", good, "--catalog", no_catalog}),
                 "notes.txt"));
}

TEST_CASE("import reads or refuses a table that is not UTF-8, and never crashes") {
  const CommandLine program;
  const std::string table = program.file("latin.csv",
                                         "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n"
                                         "QRST,ATSC,23,44.35,-71.7\n"
                                         "Q\xE9,ATSC,\xE9,44.5,-71.7\n");
  const auto ended = program.run({"import", "stations", table, "--json"});
  INFO(ended.errors);
  CHECK((ended.status == 0 || ended.status == 1));
  CHECK(std::count(ended.errors.begin(), ended.errors.end(), '\n') == ended.status);
}

TEST_CASE("the built-in mapping imports the regulator's table of 2,074 rows") {
  const auto table = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!table) return;
  const CommandLine program;
  const json report =
      program.printed({"import", "stations", table->string(), "--mapping", "us_post_auction"});
  CHECK(report.at("rows_read") == 2074);
  CHECK(report.at("stations_added").get<int>() + report.at("rows_rejected").get<int>() == 2074);
  CHECK(report.at("rejected").size() == report.at("rows_rejected").get<std::size_t>());
  const json card = program.printed(
      {"card", "--at", "44.435217,-71.675993", "--station", "WLED-TV", "--date", "2026-07-02"});
  // NAD83 and WGS84 differ by a meter or two: 0.02 degree at 10 km.
  CHECK(card.at("bearing_true_deg").get<double>() == Approx(207.950).margin(0.02));
}

TEST_CASE("replay gives the last good fix of a log with its counts") {
  const auto coldboot = test::reference("nmea/gp-320fw-2019-04-07-coldboot.log");
  const auto boat = test::reference("nmea/humminbird-M37.log");
  if (!coldboot || !boat) return;
  const CommandLine program;
  // A decoder that restarts at each $ finds 96 good ones.
  const json cold = program.printed({"replay", coldboot->string()});
  CHECK(cold.at("sentences_good") == 96);
  CHECK(cold.at("sentences_bad_checksum") == 33);
  CHECK(cold.at("sentences_without_checksum") == 8);

  const json log = program.printed({"replay", boat->string(), "--to", "44.352778,-71.736944",
                                    "--date", "2026-07-02", "--nose", "0"});
  const json& fix = log.at("fix");
  CHECK(fix.at("lat").get<double>() == Approx(44.4352).margin(0.002));
  CHECK(fix.at("lon").get<double>() == Approx(-71.6760).margin(0.002));
  CHECK(fix.at("quality").is_string());
  CHECK(fix.at("time").is_string());
  CHECK(log.at("card").at("bearing_true_deg").get<double>() == Approx(207.95).margin(1.5));
  CHECK(log.at("card").contains("rig_angle_deg"));
  const auto text = program.run({"replay", boat->string()});
  CHECK(text.status == 0);
  CHECK(contains(text.output, "Last good fix: 44.43"));
}

TEST_CASE("replay of a log without a fix prints an unknown position") {
  const CommandLine program;
  const std::string log =
      program.file("void.log", test::sentence("GPRMC,120000.00,V,,,,,,,010126,,,N"));
  const json read = program.printed({"replay", log});
  CHECK(read.at("fix").is_null());
  CHECK(read.at("sentences_good") == 1);
  CHECK(contains(program.refusal({"replay", program.path("none.log")}), "none.log"));
  CHECK(contains(program.misuse({"replay"}), "--device"));
}

TEST_CASE("replay listens to a live serial device", "[linux]") {
  const CommandLine program;
  test::Pty device;
  std::string log;
  for (int second = 0; second < 5; ++second) {
    log += test::sentence(fmt::format(
        "GPGGA,1200{:02}.00,4426.1130,N,07140.5596,W,1,09,0.9,214.0,M,-28.0,M,,", second));
  }
  test::ChildProgram child({"replay", "--device", device.path(), "--seconds", "4", "--json"},
                           program.path("data"));
  // The device keeps sending while Mastwise listens.
  std::atomic<bool> listening{true};
  std::thread speaker([&] {
    while (listening) {
      device.send(log.substr(0, log.find('\n') + 1));
      std::this_thread::sleep_for(std::chrono::milliseconds(100));
    }
  });
  const auto ended = child.wait();
  listening = false;
  speaker.join();
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  const json read = json::parse(ended.output, nullptr, false);
  CHECK(read.at("fix").at("lat").get<double>() == Approx(44.435217).margin(1e-6));
  CHECK(read.at("fix").at("lon").get<double>() == Approx(-71.675993).margin(1e-6));
  CHECK(read.at("fix").at("time") == "12:00:00Z");
  CHECK(read.at("sentences_good").get<int>() > 1);
}

TEST_CASE("replay refuses a missing device") {
  const CommandLine program;
  const std::string error =
      program.refusal({"replay", "--device", program.path("no_port"), "--seconds", "0.5"});
  CHECK(contains(error, "no_port"));
}

TEST_CASE("shot draws every screen without a display", "[linux]") {
  const CommandLine program;
  const std::string file = program.path("screen.png");
  for (const std::string screen : {"here", "stations", "aim"}) {
    const auto ended = program.run({"shot", screen, "--size", "1280x800", file});
    INFO(screen << ": " << ended.errors);
    REQUIRE(ended.status == 0);
    // ISO/IEC 15948: signature, then IHDR with width and height, most significant byte first.
    const std::string png = test::read_file(file);
    REQUIRE(png.size() > 10'000);
    CHECK(png.substr(0, 8) == "\x89PNG\r\n\x1a\n");
    CHECK(png.substr(12, 12) == std::string("IHDR\0\0\x05\0\0\0\x03\x20", 12));
    std::filesystem::remove(file);
  }
  const auto night = program.run({"shot", "aim", "--size", "800x480", "--night", file});
  CHECK(night.status == 0);
  CHECK(test::read_file(file).substr(12, 12) == std::string("IHDR\0\0\x03\x20\0\0\x01\xE0", 12));
  CHECK(contains(program.refusal({"shot", "attic", file}), "attic"));
  CHECK(contains(program.refusal({"shot", "aim", "--size", "12by8", file}), "--size"));
  CHECK(contains(program.refusal({"shot", "aim", program.path("none/screen.png")}), "none"));
}

TEST_CASE("wrong usage exits with 2, help with 0") {
  const CommandLine program;
  for (const Arguments& wrong :
       {Arguments{"frobnicate"}, Arguments{"card", "--sideways"}, Arguments{"import"},
        Arguments{"import", "stations"}, Arguments{"shot"}, Arguments{"shot", "aim"},
        Arguments{"card", "--nose", "north"}, Arguments{"replay", "--seconds", "-1"},
        Arguments{"card", "--to", "1,2", "--station", "QABC"}}) {
    const auto ended = program.run(wrong);
    INFO(wrong.front());
    CHECK(ended.status == 2);
    CHECK_FALSE(ended.errors.empty());
  }
  for (const Arguments& help :
       {Arguments{"--help"}, Arguments{"card", "--help"}, Arguments{"import", "--help"},
        Arguments{"import", "stations", "--help"}, Arguments{"replay", "--help"},
        Arguments{"shot", "--help"}, Arguments{"--version"}}) {
    const auto ended = program.run(help);
    CHECK(ended.status == 0);
    CHECK_FALSE(ended.output.empty());
    CHECK(ended.errors.empty());
  }
}
