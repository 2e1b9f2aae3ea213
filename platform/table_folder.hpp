#pragma once

#include "core/result.hpp"
#include "core/text/byte_stream.hpp"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace mastwise::platform {

// The tables of a folder, or of one zip archive. Both may also contain a table "x.dat" zipped as
// the one file of that name in "x.zip". Tables are never unpacked to the disk or wholly into
// memory; an archive within an archive is copied to a temporary file.
class TableFolder : public TableFiles {
 public:
  static Result<TableFolder> at(const std::filesystem::path& folder_or_zip);

  Result<std::unique_ptr<ByteStream>> open(const std::string& name) override;
  bool has(const std::string& name) const override;

  // The files, without folders; sorted.
  const std::vector<std::string>& names() const { return names_; }

 private:
  TableFolder(std::filesystem::path path, bool zipped, std::vector<std::string> names)
      : path_(std::move(path)), zipped_(zipped), names_(std::move(names)) {}
  std::filesystem::path path_;
  bool zipped_;
  std::vector<std::string> names_;
};

// A file of any type as a stream.
Result<std::unique_ptr<ByteStream>> open_file(const std::filesystem::path& file);

}  // namespace mastwise::platform
