#include "app/cli/area_picture.hpp"

#include "app/look/chance_colors.hpp"
#include "app/service/png.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::cli {
namespace {

constexpr std::size_t kLeastWidth_px = 500;
constexpr int kMark_px = 6;  // from a mark's middle to its edge
constexpr ui::Color kInk{0x11, 0x11, 0x11};
constexpr ui::Color kPaper{0xFF, 0xFF, 0xFF};
constexpr ui::Color kUnknown{0xC8, 0xC8, 0xC8};

class Picture {
 public:
  explicit Picture(std::size_t side_px) : side_(static_cast<int>(side_px)) {
    pixels_.resize(3 * side_px * side_px);
  }

  void put(int x, int y, ui::Color color) {
    if (x < 0 || y < 0 || x >= side_ || y >= side_) return;
    unsigned char* pixel =
        &pixels_[3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(side_) +
                      static_cast<std::size_t>(x))];
    pixel[0] = color.red;
    pixel[1] = color.green;
    pixel[2] = color.blue;
  }
  void cross(int x, int y) {
    for (int i = -kMark_px; i <= kMark_px; ++i) {
      for (const int edge : {-1, 1}) {
        put(x + i, y + edge, kPaper);
        put(x + edge, y + i, kPaper);
      }
    }
    for (int i = -kMark_px; i <= kMark_px; ++i) {
      put(x + i, y, kInk);
      put(x, y + i, kInk);
    }
  }
  void square(int x, int y) {
    for (const int size : {kMark_px, kMark_px - 1}) {
      const ui::Color color = size == kMark_px ? kInk : kPaper;
      for (int i = -size; i <= size; ++i) {
        for (const int edge : {-size, size}) {
          put(x + i, y + edge, color);
          put(x + edge, y + i, color);
        }
      }
    }
  }
  Result<Done> write(const std::string& path) const {
    return service::write_png(path, side_, side_, pixels_);
  }

 private:
  int side_;
  std::vector<unsigned char> pixels_;
};

}  // namespace

Result<Done> write_area_picture(const std::string& path, const reception::AreaGrid& grid,
                                const reception::ChanceMap& chances,
                                const std::vector<reception::Spot>& spots) {
  const std::size_t cell_px =
      std::max<std::size_t>(1, (kLeastWidth_px + grid.side() - 1) / grid.side());
  const std::size_t side_px = cell_px * grid.side();
  Picture picture(side_px);
  for (std::size_t y = 0; y < side_px; ++y) {
    for (std::size_t x = 0; x < side_px; ++x) {
      const auto& chance = chances[y / cell_px * grid.side() + x / cell_px];
      const ui::Color chequer = (x / 2 + y / 2) % 2 == 0 ? kUnknown : kPaper;
      picture.put(static_cast<int>(x), static_cast<int>(y),
                  chance ? ui::chance_shade(*chance) : chequer);
    }
  }
  const auto at_px = [&](double offset_m) {
    return static_cast<int>((offset_m + grid.radius_m()) / grid.cell_m() *
                            static_cast<double>(cell_px));
  };
  for (const reception::Spot& spot : spots) {
    picture.square(at_px(grid.east_m(spot.cell)), at_px(-grid.north_m(spot.cell)));
  }
  picture.cross(at_px(0.0), at_px(0.0));
  return picture.write(path);
}

}  // namespace mastwise::cli
