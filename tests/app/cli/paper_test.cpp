#include "tests/support/child_program.hpp"
#include "tests/support/pdf.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <cmath>
#include <filesystem>

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

// The verb `card` on paper, as a child process; other tools read its files.
using namespace mastwise;
using nlohmann::json;
using test::Arguments;
using test::contains;
using test::kExampleCard;
using test::with;

namespace {

// Width and height follow the signature and the first chunk's head (PNG, section 11.2.2).
std::pair<unsigned, unsigned> size_of_png(const std::string& bytes) {
  REQUIRE(bytes.size() > 24);
  REQUIRE(bytes.substr(0, 8) == "\x89PNG\r\n\x1A\n");
  const auto number = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t i = 0; i < 4; ++i) {
      value = value << 8U | static_cast<unsigned char>(bytes[at + i]);
    }
    return value;
  };
  return {number(16), number(20)};
}

}  // namespace

TEST_CASE("card on paper: other tools read its one page and its picture") {
  const test::TemporaryFolder data;
  const std::string pdf = data.file("card.pdf"), png = data.file("card.png");
  const auto ended = test::run_program(
      with(kExampleCard, {"--nose", "300", "--pdf", pdf, "--png", png, "--dpi", "100"}),
      data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  CHECK(contains(ended.output, "222.1° magnetic"));                    // printed as without paper
  CHECK(size_of_png(test::read_file(png)) == std::pair(850U, 1100U));  // 8.5 by 11 inches
  CHECK_FALSE(std::filesystem::exists(pdf + ".part"));
  CHECK(test::read_file(pdf).substr(0, 5) == "%PDF-");
  const auto read = test::read_pdf(pdf);
  if (!read) return;
  CHECK(read->pages == 1);
  CHECK(read->width_pt == Approx(612.0));
  CHECK(read->height_pt == Approx(792.0));
  for (const char* words : {"222°", "208° true", "92° left", "14.1° west", "44.435217, -71.675993",
                            "Tolerance unknown: aim exactly", "47 mm left and 88 mm down",
                            "before you raise the antenna"}) {
    INFO(words << " in: " << read->text);
    CHECK(contains(read->text, words));
  }
  CHECK_FALSE(contains(read->text, "PRACTICE"));
  CHECK_FALSE(contains(read->text, "TURN PLAN"));
}

TEST_CASE("card on paper: the practice area's plan is marked and equals the verb plan's") {
  const test::TemporaryFolder data;
  const std::string pdf = data.file("card.pdf");
  const auto ended = test::run_program(
      {"card", "--date", "2026-07-02", "--plan", "--page", "A4", "--pdf", pdf}, data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  const auto planned =
      test::run_program({"plan", "--date", "2026-07-02", "--json"}, data.file("data"));
  const json plan = json::parse(planned.output, nullptr, false);
  REQUIRE(plan.is_object());
  REQUIRE_FALSE(plan.at("headings").empty());
  const auto read = test::read_pdf(pdf);
  if (!read) return;
  CHECK(read->pages == 1);
  CHECK(read->height_pt == Approx(841.89).margin(0.01));  // 297 mm
  CHECK(contains(read->text, "PRACTICE: invented stations and hills"));
  CHECK(contains(read->text, "TURN PLAN"));
  std::size_t number = 0;
  for (const json& heading : plan.at("headings")) {
    const auto whole = [&](const char* name) {
      return std::lround(heading.at(name).get<double>()) % 360;
    };
    const std::string row = fmt::format(" {} {}° {}° ", ++number, whole("bearing_magnetic_deg"),
                                        whole("bearing_true_deg"));
    INFO(row << " in: " << read->text);
    CHECK(contains(read->text, row));
    CHECK(contains(read->text, heading.at("brings")[0].at("call_sign").get<std::string>()));
  }
}

TEST_CASE("card on paper: a refusal names the option and leaves no file") {
  const test::TemporaryFolder data;
  const auto refusal = [&](const Arguments& more, int status) {
    const auto ended = test::run_program(with(kExampleCard, more), data.file("data"));
    INFO(ended.errors << ended.output);
    CHECK(ended.status == status);
    return ended.errors;
  };
  const std::string nowhere = data.file("missing/card.pdf");
  CHECK(contains(refusal({"--pdf", nowhere}, 1), nowhere));
  CHECK(contains(refusal({"--plan"}, 2), "--pdf"));
  CHECK(contains(refusal({"--pdf", data.file("card.pdf"), "--page", "a3"}, 2), "--page"));
  CHECK(contains(refusal({"--png", data.file("card.png"), "--dpi", "5000"}, 2), "--dpi"));
  CHECK_FALSE(std::filesystem::exists(data.file("card.pdf")));
  CHECK_FALSE(std::filesystem::exists(data.file("card.png")));
}
