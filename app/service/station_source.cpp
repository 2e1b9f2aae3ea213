#include "app/service/station_source.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "core/import/table_header.hpp"
#include "core/text/decoded_stream.hpp"
#include "core/text/delimited.hpp"
#include "core/text/utf8.hpp"
#include "core/text/words.hpp"
#include "platform/dbase_table.hpp"
#include "platform/files.hpp"
#include "platform/table_folder.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::sources {
namespace {

namespace fs = std::filesystem;
constexpr const char* kUtf16 = "the text is UTF-16";
constexpr std::size_t kHead = std::size_t{256} << 10;
constexpr std::size_t kLargestPrograms = std::size_t{32} << 20;

// The one table of a file or archive, or a table of an archive: "dump.zip/stations.csv".
Result<std::unique_ptr<ByteStream>> open_raw(const std::string& path) {
  const fs::path file(path);
  std::error_code ignored;
  if (is_archive(file.parent_path().string()) && fs::is_regular_file(file.parent_path(), ignored)) {
    auto archive = platform::TableFolder::at(file.parent_path());
    if (!archive) return archive.error();
    return archive->open(file.filename().string());
  }
  if (!is_archive(path)) {
    if (fs::is_directory(file, ignored)) {
      return Error{.what = "this is a folder of tables",
                   .where = path,
                   .remedy = "give a mapping of joined tables for it"};
    }
    return platform::is_dbase(file) ? platform::open_dbase(file) : platform::open_file(file);
  }
  auto archive = platform::TableFolder::at(file);
  if (!archive) return archive.error();
  if (archive->names().size() == 1) return archive->open(archive->names().front());
  return Error{
      .what = fmt::format("the archive holds {} files: {}", archive->names().size(),
                          fmt::join(archive->names(), ", ")),
      .where = path,
      .remedy = fmt::format("choose one, such as {}/{}, or give a mapping of joined tables", path,
                            archive->names().front())};
}

Result<std::unique_ptr<DecodedStream>> open_single(const std::string& path) {
  auto raw = open_raw(path);
  if (!raw) return raw.error();
  return std::make_unique<DecodedStream>(std::move(raw).value());
}

Result<std::string> read_some(const std::string& path, std::size_t most, bool refuse_more) {
  auto stream = open_single(path);
  if (!stream) return stream.error();
  const Error too_large{.what = fmt::format("the table is larger than {} MB", most >> 20),
                        .where = path,
                        .remedy = "divide it into smaller tables"};
  if (refuse_more && (*stream)->size() > most) return too_large;
  std::string text;
  text.reserve(static_cast<std::size_t>(std::min<std::uint64_t>((*stream)->size(), most)));
  std::array<char, 1 << 16> piece;
  while (text.size() < most) {
    const auto got = (*stream)->read({piece.data(), std::min(piece.size(), most - text.size())});
    if (!got) return got.error();
    if (*got == 0) return text;
    text.append(piece.data(), *got);
  }
  if (!refuse_more) return text;
  const auto more = (*stream)->read({piece.data(), 1});
  if (!more) return more.error();
  if (*more == 0) return text;
  return too_large;
}

}  // namespace

bool is_archive(const std::string& path) {
  return words::same_word(fs::path(path).extension().string(), ".zip");
}

Result<std::string> head_of(const std::string& path) {
  auto head = read_some(path, kHead, false);
  if (head && head->size() < kHead) head->push_back('\n');
  return head;
}

Result<std::string> read_whole(const std::string& path) {
  return read_some(path, kLargestPrograms, true);
}

bool is_own_format(std::string_view head) {
  DelimitedReader rows(head, '\0', '#');
  const auto first = rows.next();
  if (!first) return false;
  const auto header = TableHeader::read(*first);
  return header && header->place("call_sign") && header->place("latitude_deg") &&
         header->place("longitude_deg") && header->place("rf_channel");
}

Source source_of(const std::string& path, const std::string& date) {
  fs::path file(path);
  if (!file.has_filename()) file = file.parent_path();
  return {.name = file.filename().string(), .date = date};
}

Result<Way> load_mapping(const std::string& name, const std::string& date) {
  const std::string ready = platform::assets_folder() + "/mappings/" + name + ".json";
  const std::string& path = platform::exists(name) ? name : ready;
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  const auto told = [&](Error error) {
    error.where = error.where.empty() ? path : path + ", " + error.where;
    return error;
  };
  if (is_joined_mapping(*text)) {
    auto mapping = parse_joined_mapping(*text);
    if (!mapping) return told(mapping.error());
    if (!date.empty()) mapping->stations.source.date = date;
    return Way(std::move(mapping).value());
  }
  auto mapping = parse_table_mapping(*text);
  if (!mapping) return told(mapping.error());
  if (!date.empty()) mapping->source.date = date;
  return Way(std::move(mapping).value());
}

Result<ImportReport> import_stations(const std::string& path, const Way& way, Catalog& catalog,
                                     const JoinProgress& progress, const ImportFocus& focus) {
  if (const auto* joined = std::get_if<JoinedMapping>(&way)) {
    auto files = platform::TableFolder::at(path);
    if (!files) return files.error();
    const auto table = read_joined_tables(*files, *joined, progress);
    if (!table) return table.error();
    return catalog.replace_source(
        *table,
        [&](std::size_t done, std::size_t all) { return !progress || progress({}, done, all); },
        focus);
  }
  auto text = open_single(path);
  if (!text) return text.error();
  const auto* own = std::get_if<OwnFormat>(&way);
  const TableMapping mapping =
      own != nullptr ? own_mapping(own->source) : std::get<TableMapping>(way);
  const std::string name = fs::path(path).filename().string();
  const StationReader reader = [&](StationSink& sink) -> Result<TableSummary> {
    auto summary = stream_station_table(**text, mapping, sink, [&](std::uint64_t done) {
      return !progress || progress(name, std::min(done, (*text)->size()), (*text)->size());
    });
    if (summary && summary->rows_read == 0) {
      return Error{.what = "the table has no rows", .remedy = "the catalog is unchanged"};
    }
    if (summary && (*text)->encoding() != DecodedStream::Encoding::bytes) {
      summary->remarks.push_back(kUtf16);
    }
    return summary;
  };
  return catalog.replace_source(mapping.source, reader, focus);
}

std::vector<std::string> encoding_remarks(const std::string& path, std::string_view head) {
  auto text = open_single(path);
  if (!text) return {};
  char start[64];
  if (!(*text)->read(start)) return {};
  if ((*text)->encoding() != DecodedStream::Encoding::bytes) return {kUtf16};
  if (!is_utf8(guess::whole_lines(head))) return {"the text is not UTF-8: read as Windows-1252"};
  return {};
}

}  // namespace mastwise::sources
