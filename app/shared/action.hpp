#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <memory>
#include <string_view>
#include <utility>

namespace mastwise {

// The names of an action's members in recordings, in their order.
template <class... Name>
constexpr std::array<std::string_view, sizeof...(Name)> fields(Name... name) {
  return {name...};
}

// A struct that describes an event, with its name in recordings. If it carries something, its
// members are named too: static constexpr auto kFields = fields("key").
template <class A>
concept ActionType = requires {
  { A::kName } -> std::convertible_to<std::string_view>;
};

// The actions of a feature, or of all.
template <ActionType... A>
struct ActionList {
  static constexpr std::size_t kSize = sizeof...(A);
};

template <class... Lists>
struct JoinedLists;
template <class Only>
struct JoinedLists<Only> {
  using List = Only;
};
template <class... A, class... B, class... Rest>
struct JoinedLists<ActionList<A...>, ActionList<B...>, Rest...> {
  using List = typename JoinedLists<ActionList<A..., B...>, Rest...>::List;
};
template <class... Lists>
using Joined = typename JoinedLists<Lists...>::List;

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
  // The same event, not only a like one.
  bool operator==(const Action&) const = default;

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
