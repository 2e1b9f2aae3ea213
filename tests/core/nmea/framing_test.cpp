#include "core/nmea/framing.hpp"

#include "tests/support/reference.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise::nmea;

namespace {

struct Framed {
  std::vector<std::string> sentences;
  SentenceCounts counts;
};

Framed frame(const std::string& bytes, std::size_t piece = std::string::npos) {
  Framed framed;
  Framer framer;
  for (std::size_t at = 0; at < bytes.size(); at += std::min(piece, bytes.size() - at)) {
    framer.feed(std::string_view(bytes).substr(at, piece),
                [&](std::string_view sentence) { framed.sentences.emplace_back(sentence); });
  }
  framed.counts = framer.counts();
  return framed;
}

}  // namespace

// Checksums worked by hand (exclusive-or): "HEHDT,4.0,T" gives 2B, as in saab-r4.log.
TEST_CASE("a sentence counts only with its checksum") {
  CHECK(frame("$HEHDT,4.0,T*2B\r\n").sentences == std::vector<std::string>{"$HEHDT,4.0,T"});
  CHECK(frame("$HEHDT,4.0,T*2b\n").counts.sentences_good == 1);
  CHECK(frame("$HEHDT,4.0,T*2C\r\n").sentences.empty());
  CHECK(frame("$HEHDT,4.0,T*2C\r\n").counts.sentences_bad_checksum == 1);
  CHECK(frame("$HEHDT,4.0,T*B\r\n").counts.sentences_bad_checksum == 1);
  CHECK(frame("$HEHDT,4.0,T*\r\n").counts.sentences_bad_checksum == 1);
  CHECK(frame("$HEHDT,4.0,T*2G\r\n").counts.sentences_bad_checksum == 1);
  CHECK(frame("$HEHDT,4.0,T\r\n").counts.sentences_without_checksum == 1);
  CHECK(frame("$HEHDT,4.0,T\r\n").sentences.empty());
  CHECK(frame("HEHDT,4.0,T*2B\r\n").counts == SentenceCounts{16});
  CHECK(frame("$*00\r\n").counts.sentences_good == 1);
}

TEST_CASE("a dollar or an exclamation mark starts a new sentence") {
  CHECK(frame("$GPGGA,1234$HEHDT,4.0,T*2B\r\n").sentences.size() == 1);
  CHECK(frame("!AIVDM,1$HEHDT,4.0,T*2B!AIVDM,1\r\n").sentences.size() == 1);
  CHECK(frame("$HEHDT,4.0,T*2B$HEHDT,4.0,T*2B\r\n").sentences.size() == 2);
  CHECK(frame("$$$HEHDT,4.0,T*2B\r\n").counts.sentences_without_checksum == 0);
}

// gp-320fw-2019-04-07-coldboot.log has debris after whole sentences; the standard forbids a star
// within the text, but some receivers send it.
TEST_CASE("the last star that agrees ends the sentence") {
  CHECK(frame("$HEHDT,4.0,T*2B*43\r\n").sentences == std::vector<std::string>{"$HEHDT,4.0,T"});
  CHECK(frame("$HEHDT,4.0,T*2B0,,13,68*73\r\n").counts.sentences_good == 1);
  CHECK(frame("$GPTXT,a*b*4A\r\n").sentences == std::vector<std::string>{"$GPTXT,a*b"});
}

TEST_CASE("a buffer that overflows starts over") {
  const std::string endless = "$" + std::string(100000, 'x');
  const Framed framed = frame(endless + "$HEHDT,4.0,T*2B\r\n");
  CHECK(framed.counts.sentences_too_long == 1);
  CHECK(framed.counts.sentences_good == 1);
  const std::string longest = "$" + std::string(Framer::kLongest - 4, 'x') + "*00\r\n";
  CHECK(frame(longest).counts.sentences_good == 1);
}

// Counted by an independent script that follows the rule in Framer's comment.
TEST_CASE("real logs give their counts of good, bad and missing checksums") {
  struct Expected {
    const char* log;
    std::uint64_t good, bad, without;
  };
  const Expected expected[] = {
      {"bu353s4", 90, 0, 0},        {"garmin48", 91, 1, 0},
      {"hemi", 753, 0, 0},          {"gp-320fw-2019-04-07-coldboot", 96, 33, 8},
      {"humminbird-M37", 98, 0, 0}, {"mtk-3301", 56, 0, 3},
      {"saab-r4", 122, 0, 0},       {"nmea-fuzzy-cases", 28, 0, 0},
      {"tnt-revolution", 60, 0, 0}, {"ublox-zed-f9p-nmea", 1015, 0, 0},
  };
  for (const Expected& log : expected) {
    const auto path = mastwise::test::reference("nmea/" + std::string(log.log) + ".log");
    if (!path) return;
    INFO(log.log);
    // The logs' last lines may lack their end.
    const std::string bytes = mastwise::test::read_file(*path) + "\n";
    const Framed framed = frame(bytes);
    CHECK(framed.counts.sentences_good == log.good);
    CHECK(framed.counts.sentences_bad_checksum == log.bad);
    CHECK(framed.counts.sentences_without_checksum == log.without);
    CHECK(framed.counts.sentences_too_long == 0);
    for (const std::size_t piece : {1, 7, 64}) {
      CHECK(frame(bytes, piece).sentences == framed.sentences);
      CHECK(frame(bytes, piece).counts == framed.counts);
    }
  }
}
