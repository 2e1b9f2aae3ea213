#include "core/text/words.hpp"
#include "platform/dbase_table.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <system_error>

#include <cpl_error.h>
#include <ogrsf_frmts.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

// GDAL reads dBase with its driver for shapefiles, which opens no connection.
constexpr std::array<const char*, 2> kDbaseDriver{"ESRI Shapefile", nullptr};

void add_dbase_cell(std::string& line, std::string_view cell, bool first) {
  if (!first) line += ',';
  line += '"';
  for (const char c : words::trimmed(cell)) {
    if (c == '"') line += '"';
    line += c;
  }
  line += '"';
}

class DbaseStream : public ByteStream {
 public:
  DbaseStream(GDALDatasetUniquePtr table, OGRLayer* rows) : table_(std::move(table)), rows_(rows) {
    const OGRFeatureDefn* columns = rows_->GetLayerDefn();
    for (int i = 0; i < columns->GetFieldCount(); ++i) {
      add_dbase_cell(line_, columns->GetFieldDefn(i)->GetNameRef(), i == 0);
    }
    line_ += '\n';
    rows_->ResetReading();
  }

  Result<std::size_t> read(std::span<char> into) override {
    if (at_ == line_.size() && !next_line()) return std::size_t{0};
    const std::size_t count = std::min(into.size(), line_.size() - at_);
    std::copy_n(line_.data() + at_, count, into.data());
    at_ += count;
    return count;
  }
  std::uint64_t size() const override { return 0; }

 private:
  bool next_line() {
    const OGRFeatureUniquePtr row(rows_->GetNextFeature());
    line_.clear();
    at_ = 0;
    if (!row) return false;
    for (int i = 0; i < row->GetFieldCount(); ++i) {
      const bool known = row->IsFieldSetAndNotNull(i);
      add_dbase_cell(line_, known ? row->GetFieldAsString(i) : "", i == 0);
    }
    line_ += '\n';
    return true;
  }

  GDALDatasetUniquePtr table_;
  OGRLayer* rows_;
  std::string line_ = {};
  std::size_t at_ = 0;
};

}  // namespace

bool is_dbase(const fs::path& file) {
  return words::same_word(file.extension().string(), ".dbf");
}

Result<std::unique_ptr<ByteStream>> open_dbase(const fs::path& file) {
  const Error unreadable{.what = "this is not a dBase table that can be read",
                         .where = file.string(),
                         .remedy = "save it as CSV with another program"};
  std::error_code ignored;
  const fs::path whole = fs::absolute(file, ignored);
  if (!fs::is_regular_file(whole, ignored)) {
    return Error{.what = "no such file", .where = file.string()};
  }
  OGRRegisterAll();
  CPLPushErrorHandler(CPLQuietErrorHandler);
  GDALDatasetUniquePtr table(GDALDataset::Open(
      whole.string().c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, kDbaseDriver.data()));
  CPLPopErrorHandler();
  OGRLayer* rows = table && table->GetLayerCount() == 1 ? table->GetLayer(0) : nullptr;
  if (rows == nullptr || rows->GetLayerDefn()->GetFieldCount() == 0) return unreadable;
  return std::unique_ptr<ByteStream>(std::make_unique<DbaseStream>(std::move(table), rows));
}

}  // namespace mastwise::platform
