#pragma once

#include <concepts>
#include <cstddef>
#include <memory>
#include <string_view>
#include <utility>

namespace mastwise {

// A struct that describes an event, with its name in recordings.
template <class A>
concept ActionType = requires {
  { A::kName } -> std::convertible_to<std::string_view>;
};

// The actions of a feature, or of all.
template <ActionType... A>
struct ActionList {
  static constexpr std::size_t kSize = sizeof...(A);
};

template <class First, class Second>
struct JoinedLists;
template <class... A, class... B>
struct JoinedLists<ActionList<A...>, ActionList<B...>> {
  using List = ActionList<A..., B...>;
};
template <class First, class Second>
using Joined = typename JoinedLists<First, Second>::List;

// Anything that can happen to the model. Who makes or passes one on need not know the others: a
// variant of them all cost half of the time to compile the app.
class Action {
 public:
  template <ActionType A>
  Action(A action) : kind_(&kKind<A>), value_(std::make_shared<const A>(std::move(action))) {}

  std::string_view name() const { return kind_->name; }
  template <ActionType A>
  bool is() const {
    return kind_ == &kKind<A>;
  }
  template <ActionType A>
  const A* get_if() const {
    return is<A>() ? static_cast<const A*>(value_.get()) : nullptr;
  }

 private:
  struct Kind {
    std::string_view name;
  };
  template <class A>
  static constexpr Kind kKind{A::kName};

  const Kind* kind_;
  std::shared_ptr<const void> value_;
};

// Calls `f` with the action if it is in the list; false if it is not.
template <class F, ActionType... A>
bool visit(const Action& action, ActionList<A...>, F&& f) {
  const auto try_one = [&]<class One>(const One* one) {
    if (one != nullptr) f(*one);
    return one != nullptr;
  };
  return (try_one(action.get_if<A>()) || ...);
}

}  // namespace mastwise
