#include "core/text/decoded_stream.hpp"
#include "core/text/delimited_stream.hpp"
#include "tests/support/made_tables.hpp"

#include <memory>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

std::string utf16(const std::u16string& text, bool little, bool mark) {
  std::string bytes;
  const auto put = [&](char16_t unit) {
    const auto low = static_cast<char>(unit & 0xFF), high = static_cast<char>(unit >> 8);
    bytes += little ? low : high;
    bytes += little ? high : low;
  };
  if (mark) put(0xFEFF);
  for (const char16_t unit : text) put(unit);
  return bytes;
}

std::string decoded(const std::string& bytes, std::size_t chunk) {
  DecodedStream stream(std::make_unique<test::TextStream>(bytes, chunk));
  std::string text;
  std::string piece(7, '\0');
  while (true) {
    const auto got = stream.read({piece.data(), piece.size()});
    REQUIRE(got);
    if (*got == 0) return text;
    text.append(piece, 0, *got);
  }
}

std::vector<DelimitedRow> streamed(const std::string& text, std::size_t chunk) {
  test::TextStream stream(text, chunk);
  DelimitedStream rows(stream, '\0', '#');
  std::vector<DelimitedRow> all;
  while (true) {
    auto row = rows.next();
    REQUIRE(row);
    if (!*row) return all;
    all.push_back(**std::move(row));
  }
}

std::vector<DelimitedRow> whole(const std::string& text) {
  DelimitedReader rows(text, '\0', '#');
  std::vector<DelimitedRow> all;
  while (auto row = rows.next()) all.push_back(*std::move(row));
  return all;
}

void check_same(const std::string& text, std::size_t chunk) {
  const auto a = streamed(text, chunk), b = whole(text);
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK(a[i].line == b[i].line);
    CHECK(a[i].cells == b[i].cells);
    CHECK(a[i].fault == b[i].fault);
  }
}

}  // namespace

// RFC 2781 gives U+12345 as D808 DF45.
TEST_CASE("UTF-16 of both byte orders is read, with and without its mark") {
  const std::u16string text = u"call_sign,rf_channel\nQ\u00C4AB,23\nnot plain: \U00012345\n";
  const std::string expected =
      "call_sign,rf_channel\nQ\xC3\x84"
      "AB,23\nnot plain: \xF0\x92\x8D\x85\n";
  for (const bool little : {true, false}) {
    for (const bool mark : {true, false}) {
      for (const std::size_t chunk : {1, 3, 64, 4096}) {
        CHECK(decoded(utf16(text, little, mark), chunk) == expected);
      }
    }
  }
  CHECK(decoded(utf16(u"some words " + std::u16string(1, 0xD800) + u"x", true, true), 8) ==
        "some words \xEF\xBF\xBDx");
}

TEST_CASE("other bytes pass the decoder unchanged") {
  for (const std::string& text :
       {std::string("\xEF\xBB\xBF"
                    "call_sign\n"),
        std::string("Ca\xF1on\n"), std::string(), std::string("x"), std::string(100'000, 'a')}) {
    CHECK(decoded(text, 5) == text);
  }
}

TEST_CASE("rows from a stream are those of the whole text") {
  const std::string text =
      "\xEF\xBB\xBF"
      "a;b\r\n# note\r\n1;\"two\r\nlines\"\r\n\r\n3;\"bad\"x\r\n5;6";
  for (const std::size_t chunk : {1, 2, 5, 100}) check_same(text, chunk);
  std::string large = "a,b\n";
  for (int i = 0; i < 120'000; ++i) large += std::to_string(i) + ",\"some text\nof two lines\"\n";
  check_same(large, 50'000);
  check_same("a,b\n" + std::string(5 * DelimitedReader::kLongestRow, 'x') + "\nc,d\n", 1 << 16);
  check_same("a,b\n" + std::string(3'000'000, '\n') + "c,d\n", 1 << 16);
}

// Unicode's table CP1252.TXT: 0x80 is U+20AC, 0x96 is U+2013, 0xF1 is U+00F1.
TEST_CASE("bytes that are not UTF-8 are Windows-1252") {
  CHECK(to_utf8("5 \x80 \x96 Ca\xF1on") == "5 \xE2\x82\xAC \xE2\x80\x93 Ca\xC3\xB1on");
  CHECK(to_utf8("Ca\xC3\xB1on") == "Ca\xC3\xB1on");
}
