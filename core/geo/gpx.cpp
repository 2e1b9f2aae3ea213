#include "core/geo/gpx.hpp"

#include "core/text/iso_time.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <memory>
#include <type_traits>
#include <utility>

#include <expat.h>
#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr std::size_t kLongestText = 10'000;  // of one element; longer text is cut
constexpr std::size_t kMostRemarks = 20;
// More than any real file has; they bound the memory.
constexpr std::size_t kMostPlaces = 1'000'000;
constexpr std::size_t kDeepest = 64;                         // elements within one another
constexpr std::size_t kLongestToken = std::size_t{1} << 20;  // a tag, comment or instruction

std::optional<double> number(std::string_view text) {
  text = words::trimmed(text);
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  double value = 0.0;
  const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (trouble != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

// A name without its namespace prefix.
std::string_view local_name(const char* name) {
  const std::string_view whole = name;
  return whole.substr(whole.rfind(':') + 1);
}

class Reader {
 public:
  Reader() : parser_(XML_ParserCreate(nullptr)) {
    XML_SetUserData(parser_.get(), this);
    XML_SetElementHandler(
        parser_.get(),
        [](void* self, const XML_Char* name, const XML_Char** attributes) {
          static_cast<Reader*>(self)->begin(local_name(name), attributes);
        },
        [](void* self, const XML_Char*) { static_cast<Reader*>(self)->end(); });
    XML_SetCharacterDataHandler(parser_.get(), [](void* self, const XML_Char* text, int size) {
      static_cast<Reader*>(self)->add_text({text, static_cast<std::size_t>(size)});
    });
    XML_SetEntityDeclHandler(
        parser_.get(), [](void* self, const XML_Char*, int, const XML_Char*, int, const XML_Char*,
                          const XML_Char*, const XML_Char*, const XML_Char*) {
          static_cast<Reader*>(self)->stop("the file declares entities, which no GPX needs");
        });
  }

  Result<GpxPlaces> read(std::string_view text);

 private:
  struct ParserFree {
    void operator()(XML_Parser parser) const { XML_ParserFree(parser); }
  };

  void begin(std::string_view name, const XML_Char** attributes);
  void end();
  void add_text(std::string_view text);
  void stop(std::string reason);
  void begin_place(const XML_Char** attributes);
  void end_place(const std::string& element);
  void remark(std::string text);
  std::size_t line() const { return XML_GetCurrentLineNumber(parser_.get()); }
  bool within(std::string_view name) const {
    return open_.size() >= 2 && open_[open_.size() - 2] == name;
  }

  std::unique_ptr<std::remove_pointer_t<XML_Parser>, ParserFree> parser_;
  std::vector<std::string> open_ = {};  // elements, the root first
  std::size_t passed_over_ = 0;         // depth within an ignored element
  std::string text_ = {};               // of the innermost element
  std::optional<GpxPlace> place_ = {};
  std::size_t places_ = 0;
  GpxLine line_ = {};
  GpxPlaces found_ = {};
  std::string stopped_ = {};
};

bool is_place(std::string_view name) {
  return name == "wpt" || name == "rtept" || name == "trkpt";
}

bool is_known(std::string_view name) {
  constexpr std::string_view kNames[] = {"rte",  "trk", "trkseg", "name",
                                         "desc", "cmt", "ele",    "time"};
  return is_place(name) ||
         std::find(std::begin(kNames), std::end(kNames), name) != std::end(kNames);
}

void Reader::stop(std::string reason) {
  if (stopped_.empty()) stopped_ = fmt::format("line {}: {}", line(), std::move(reason));
  XML_StopParser(parser_.get(), XML_FALSE);
}

void Reader::remark(std::string text) {
  if (found_.remarks.size() < kMostRemarks) found_.remarks.push_back(std::move(text));
}

void Reader::begin(std::string_view name, const XML_Char** attributes) {
  if (!stopped_.empty()) return;
  if (open_.empty() && name != "gpx") return stop("not a GPX file");
  if (open_.size() + passed_over_ >= kDeepest) return stop("the elements nest too deep");
  if (passed_over_ > 0 || (!open_.empty() && !is_known(name))) {
    ++passed_over_;
    return;
  }
  text_.clear();
  open_.emplace_back(name);
  if (is_place(name)) begin_place(attributes);
  if (name == "rte" || name == "trk") line_ = {};
}

void Reader::begin_place(const XML_Char** attributes) {
  std::optional<double> latitude_deg, longitude_deg;
  for (std::size_t i = 0; attributes[i] != nullptr; i += 2) {
    if (local_name(attributes[i]) == "lat") latitude_deg = number(attributes[i + 1]);
    if (local_name(attributes[i]) == "lon") longitude_deg = number(attributes[i + 1]);
  }
  place_.reset();
  if (!latitude_deg || !longitude_deg) {
    return remark(fmt::format("line {}: skipped a place without a position", line()));
  }
  const auto position = Position::at_deg(*latitude_deg, *longitude_deg);
  if (!position) {
    return remark(fmt::format("line {}: skipped a place: {}", line(), position.error().message()));
  }
  place_ = GpxPlace{.position = *position};
}

void Reader::add_text(std::string_view text) {
  if (passed_over_ > 0) return;
  text_ += text.substr(0, kLongestText - std::min(text_.size(), kLongestText));
}

void Reader::end() {
  if (!stopped_.empty()) return;
  if (passed_over_ > 0) {
    --passed_over_;
    return;
  }
  const std::string element = std::exchange(open_.back(), {});
  const std::string text(words::trimmed(text_));
  text_.clear();
  const bool of_place = open_.size() >= 2 && is_place(open_[open_.size() - 2]);
  if (of_place && place_) {
    if (element == "name") place_->name = text;
    if (element == "desc" || (element == "cmt" && place_->description.empty())) {
      place_->description = text;
    }
    if (element == "ele") place_->elevation_m = number(text);
    if (element == "time") place_->time = parse_iso_utc(text);
  }
  if (element == "name" && (within("rte") || within("trk"))) line_.name = text;
  if (is_place(element)) end_place(element);
  if (!line_.places.empty()) {
    if (element == "rte") found_.routes.push_back(std::exchange(line_, {}));
    if (element == "trkseg" || element == "trk") {
      found_.tracks.push_back({.name = line_.name, .places = std::exchange(line_.places, {})});
    }
  }
  open_.pop_back();
}

void Reader::end_place(const std::string& element) {
  if (!place_) return;
  if (++places_ == kMostPlaces) {
    remark(fmt::format("line {}: the places after the first {} are left out", line(), places_));
  }
  if (places_ > kMostPlaces) return place_.reset();
  if (element == "wpt") {
    found_.waypoints.push_back(*std::move(place_));
  } else {
    line_.places.push_back(*std::move(place_));
  }
  place_.reset();
}

Result<GpxPlaces> Reader::read(std::string_view text) {
  constexpr std::size_t kPiece = kLongestToken / 4;
  bool whole = true;
  std::size_t given = 0;
  do {
    const std::string_view piece = text.substr(0, kPiece);
    text.remove_prefix(piece.size());
    given += piece.size();
    const auto status = XML_Parse(parser_.get(), piece.data(), static_cast<int>(piece.size()),
                                  text.empty() ? XML_TRUE : XML_FALSE);
    whole = status == XML_STATUS_OK;
    // Expat keeps and reads again all of a token whose end has not come.
    const auto read = std::max<XML_Index>(XML_GetCurrentByteIndex(parser_.get()), 0);
    if (whole && given - static_cast<std::size_t>(read) > kLongestToken) {
      stop("a tag or comment is longer than 1 MB");
      whole = false;
    }
  } while (whole && !text.empty());
  if (!stopped_.empty()) return Error{.what = stopped_, .remedy = "choose another file"};
  if (whole) return std::move(found_);

  const std::string fault =
      fmt::format("line {}: {}", line(), XML_ErrorString(XML_GetErrorCode(parser_.get())));
  if (!line_.places.empty()) {
    const bool route = std::find(open_.begin(), open_.end(), "rte") != open_.end();
    (route ? found_.routes : found_.tracks).push_back(std::exchange(line_, {}));
  }
  if (found_.waypoints.empty() && found_.routes.empty() && found_.tracks.empty()) {
    return Error{.what = "this cannot be read as GPX: " + fault, .remedy = "choose another file"};
  }
  found_.remarks.push_back(fault + "; the part before it is used");
  return std::move(found_);
}

}  // namespace

Result<GpxPlaces> read_gpx(std::string_view text) {
  return Reader().read(text);
}

}  // namespace mastwise
