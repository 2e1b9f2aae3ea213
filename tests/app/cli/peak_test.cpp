#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <fstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The verb `peak`, as a child process.
using namespace mastwise;
using nlohmann::json;
using test::contains;

namespace {

class PeakLine {
 public:
  // The file's text, then what follows it on the line.
  test::ChildProgram::Ended run(const std::string& text,
                                const std::vector<std::string>& more) const {
    std::ofstream(folder_.file("sweep.csv"), std::ios::binary) << text;
    std::vector<std::string> arguments{"peak", folder_.file("sweep.csv")};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return test::run_program(arguments, folder_.file("data"));
  }
  json printed(const std::string& text, std::vector<std::string> more) const {
    more.push_back("--json");
    const auto ended = run(text, more);
    INFO(ended.errors << ended.output);
    REQUIRE(ended.status == 0);
    return json::parse(ended.output);
  }
  std::string refusal(const std::string& text, const std::vector<std::string>& more) const {
    const auto ended = run(text, more);
    CHECK(ended.status == 1);
    CHECK(ended.output.empty());
    return ended.errors;
  }

 private:
  test::TemporaryFolder folder_;
};

// Readings that mirror each other about 100 degrees: the peak can only be there.
const std::string kMirrored =
    "heading_deg,reading\n60,58\n75,80\n90,92\n100,95\n110,92\n125,80\n140,58\n";

const std::vector<std::string> kOneBeam{"--gear", "Directional crank-up with amplifier", "--band",
                                        "high-vhf"};

}  // namespace

TEST_CASE("peak prints the fit as one JSON object", "[sweep]") {
  const PeakLine line;
  const json fit = line.printed(kMirrored, kOneBeam);
  CHECK(fit.at("peak_deg").get<double>() == Approx(100.0).margin(0.5));
  CHECK(fit.at("sigma_deg").get<double>() > 0.0);
  CHECK(fit.at("error_deg").get<double>() > fit.at("sigma_deg").get<double>());
  CHECK(fit.at("second_lobe_deg").is_null());
  CHECK(fit.at("other_face_deg").is_null());
  CHECK(fit.at("enough").get<bool>());
  CHECK(fit.at("more_headings") == 0);
  CHECK(fit.at("next_heading_deg").is_number());
}

TEST_CASE("peak without a gear reports a second face that fits", "[sweep]") {
  const PeakLine line;  // the default gear has a bidirectional antenna
  const json fit = line.printed(kMirrored, {});
  CHECK(fit.at("other_face_deg").get<double>() == Approx(280.0).margin(0.5));
}

TEST_CASE("peak as text prints the next step", "[sweep]") {
  const PeakLine line;
  const auto done = line.run(kMirrored, kOneBeam);
  CHECK(done.status == 0);
  CHECK(contains(done.output, "100."));
  CHECK(contains(done.output, "enough"));
  const auto begun = line.run("heading_deg,reading\n60,40\n75,nothing\n90,50\n", kOneBeam);
  CHECK(begun.status == 0);
  CHECK(contains(begun.output, "read at least"));
}

TEST_CASE("peak errors name the fault, its place and a remedy", "[sweep]") {
  const PeakLine line;
  const std::string row = line.refusal("heading_deg,reading\n60,58\n400,80\n", kOneBeam);
  CHECK(contains(row, "sweep.csv, line 3: \"400\""));
  CHECK(contains(row, "0 to 360"));
  CHECK(contains(line.refusal("60,58\n", kOneBeam), "heading_deg,reading"));
  CHECK(contains(line.refusal(kMirrored, {"--band", "shortwave"}), "low-vhf, high-vhf, uhf"));
  CHECK(contains(line.refusal(kMirrored, {"--scale", "volts"}), "quality, db, bars, bars10"));
  CHECK(contains(line.refusal(kMirrored, {"--scale", "bars"}), "reading 1"));
  CHECK(contains(line.refusal(kMirrored, {"--gear", "Omnidirectional roof disc with amplifier"}),
                 "alike"));
}
