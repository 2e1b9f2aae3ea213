#pragma once

#include "app/touch/targets.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace mastwise::touch {

enum class Key { Next, Previous, Left, Right, Up, Down, Press, Back, PageUp, PageDown };

// Which target keys act on. It stays on its target by name from frame to frame.
class Focus {
 public:
  bool shown() const { return shown_; }
  void hide() { shown_ = false; }
  // Where it last was, or at the first target.
  void show(const Targets& targets);

  const std::string& name() const { return name_; }
  // The focused target, shown or not; nullptr if it is not there. Valid like Targets::find().
  const Target* on(const Targets& targets) const;

  void put_on(const std::string& name) { name_ = name; }
  // To the next target in the order of reading, or back; round at the ends.
  void step(const Targets& targets, int by);
  // To the nearest target in the direction of an arrow. False if there is none.
  bool go(const Targets& targets, Key arrow);

  // After a frame. If the target is gone, the nearest one in order is taken; on another screen the
  // one that had the focus there before, or the first.
  void follow(const Targets& targets);

 private:
  std::size_t place_in(const std::vector<const Target*>& there) const;
  std::string instead(const std::vector<const Target*>& there) const;
  void remember();

  bool shown_ = false;
  std::string name_;
  std::vector<std::string> order_;  // of the last frame
  std::vector<std::string> left_;   // that had the focus on screens before, the newest last
};

}  // namespace mastwise::touch
