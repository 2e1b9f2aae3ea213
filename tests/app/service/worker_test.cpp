#include "app/service/worker.hpp"

#include <atomic>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

namespace {

using Doubler = Worker<int, std::vector<int>>;

// Two partial answers and the whole one, unless a newer question waits.
std::vector<int> doubled(const int& question, const Doubler::Work& work) {
  std::vector<int> answer;
  for (int part = 0; part < 3 && !work.superseded(); ++part) {
    answer.push_back(2 * question);
    if (part < 2) work.publish(answer);
  }
  return answer;
}

}  // namespace

TEST_CASE("a worker answers the newest question, and no older answer follows it") {
  std::atomic<int> wakes = 0;
  Doubler worker(doubled, [&] { ++wakes; });
  worker.turn();
  int newest = 0;
  for (int question = 1; question <= 2000; ++question) {
    worker.ask(question);
    if (const auto answer = worker.take(); answer && !answer->empty()) {
      // Only a whole or partial answer to the question just asked.
      CHECK(answer->front() == 2 * question);
      newest = question;
    }
  }
  worker.finish();
  const auto last = worker.take();
  REQUIRE((last || newest == 2000));
  if (last) CHECK(*last == std::vector<int>(3, 4000));
  CHECK(wakes > 0);
  CHECK_FALSE(worker.take());
}

TEST_CASE("a worker that is ended while it works tells its answerer to stop") {
  std::atomic<bool> began = false, told = false;
  {
    Worker<int, int> worker(
        [&](const int&, const Worker<int, int>::Work& work) {
          began = true;
          while (!work.superseded()) std::this_thread::yield();
          told = true;
          return 0;
        },
        [] {});
    worker.ask(1);
    CHECK_FALSE(began);
    worker.turn();
    while (!began) std::this_thread::yield();
  }
  CHECK(told);
}

}  // namespace mastwise
