#pragma once

#include "app/service/worker.hpp"
#include "app/session/model.hpp"

#include <functional>
#include <optional>
#include <utility>

namespace mastwise::shell {

// Work in another thread for the session: asks when the model's question changes, and returns the
// answer as an action.
class Errand {
 public:
  Errand() = default;
  virtual ~Errand() = default;
  Errand(const Errand&) = delete;
  Errand& operator=(const Errand&) = delete;

  virtual void ask(const Model& model) = 0;
  virtual std::optional<Action> take() = 0;
  // As Worker::turn().
  virtual bool turn() = 0;
  // Waits until the worker is idle, for tests and pictures.
  virtual void finish() = 0;
};

template <class Question, class Answer>
class WorkerErrand final : public Errand {
 public:
  struct Way {
    // Empty: no question now; a pending answer may still arrive.
    std::function<std::optional<Question>(const Model&)> question;
    std::function<Action(Answer)> found;
    // Whether the answer to one question serves the other.
    std::function<bool(const Question& asked, const Question& now)> same = std::equal_to<>();
  };

  WorkerErrand(Way way, typename Worker<Question, Answer>::Answerer answer,
               std::function<void()> wake)
      : way_(std::move(way)), worker_(std::move(answer), std::move(wake)) {}

  void ask(const Model& model) override {
    std::optional<Question> question = way_.question(model);
    if (!question || (asked_ && way_.same(*asked_, *question))) return;
    asked_ = question;
    worker_.ask(*std::move(question));
  }
  std::optional<Action> take() override {
    std::optional<Answer> answer = worker_.take();
    if (!answer) return std::nullopt;
    return way_.found(*std::move(answer));
  }
  bool turn() override { return worker_.turn(); }
  void finish() override { worker_.finish(); }

 private:
  Way way_;
  std::optional<Question> asked_;
  Worker<Question, Answer> worker_;
};

}  // namespace mastwise::shell
