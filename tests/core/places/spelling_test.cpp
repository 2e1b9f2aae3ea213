#include "core/places/spelling.hpp"

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using places::Spelling;

namespace {

// The plain table of the edit distance with swapped neighbors (optimal string alignment); its last
// row has the distance to each prefix of the name.
std::vector<int> distances_to_beginnings(const std::string& typed, const std::string& name) {
  const std::size_t rows = typed.size() + 1, columns = name.size() + 1;
  std::vector<std::vector<int>> least(rows, std::vector<int>(columns));
  for (std::size_t i = 0; i < rows; ++i) {
    for (std::size_t j = 0; j < columns; ++j) {
      if (i == 0 || j == 0) {
        least[i][j] = static_cast<int>(i + j);
        continue;
      }
      least[i][j] = std::min({least[i - 1][j] + 1, least[i][j - 1] + 1,
                              least[i - 1][j - 1] + (typed[i - 1] == name[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && typed[i - 1] == name[j - 2] && typed[i - 2] == name[j - 1]) {
        least[i][j] = std::min(least[i][j], least[i - 2][j - 2] + 1);
      }
    }
  }
  return least.back();
}

}  // namespace

TEST_CASE("the distance of a spelling is the edit distance to a prefix of the name", "[places]") {
  std::mt19937 random(20261125);
  const auto text = [&](std::size_t least, std::size_t most) {
    std::string letters(std::uniform_int_distribution<std::size_t>(least, most)(random), ' ');
    for (char& letter : letters) {
      letter = static_cast<char>('a' + std::uniform_int_distribution<int>(0, 2)(random));
    }
    return letters;
  };
  int agreeing = 0;
  for (int round = 0; round < 20'000; ++round) {
    const std::string typed = text(1, 12), name = text(0, 16);
    const int allowed = typed.size() < 4 ? 0 : typed.size() < 8 ? 1 : 2;
    const auto distances = distances_to_beginnings(typed, name);
    const int fewest = *std::min_element(distances.begin(), distances.end());
    const auto agreement = Spelling(typed).with_beginning(name);
    if (agreement.has_value() != (fewest <= allowed)) {
      FAIL_CHECK(typed << " " << name << " " << fewest);
    } else if (agreement) {
      ++agreeing;
      CHECK(agreement->wrong_letters == fewest);
      CHECK(agreement->whole_name == (distances.back() == fewest));
    }
  }
  CHECK(agreeing > 1'000);
}

TEST_CASE("a spelling of the most letters is compared whole", "[places]") {
  const std::string longest(Spelling::kMostBytes, 'a');
  CHECK(Spelling(longest).with_beginning(longest)->whole_name);
  CHECK(Spelling(longest).with_beginning(longest.substr(2))->wrong_letters == 2);
  CHECK_FALSE(Spelling(longest).with_beginning(longest.substr(3)));
}
