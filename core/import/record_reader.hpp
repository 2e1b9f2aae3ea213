#pragma once

#include "core/result.hpp"
#include "core/text/byte_stream.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// How a table's records are written. Quoting is not supported.
struct RecordFormat {
  char separator = '|';
  // The end of a record, followed by an end of line or of the file: "|^|"; line ends within a
  // record are then part of its cells. Empty: every line is a record. At most 8 bytes.
  std::string record_end = {};
  // The first record is a header: if its line does not end with record_end, every line is a record.
  bool end_as_in_first_line = true;
};

struct Record {
  std::size_t line = 0;  // where it begins, counted from 1
  std::vector<std::string_view> cells = {};
};

// Reads a table of any length record by record, in memory for one record and a chunk of 256 kB.
// Empty records and a byte-order mark are skipped. A record of more than 1 MB (a missing end) is
// skipped and counted.
class RecordReader {
 public:
  static constexpr std::size_t kLongestRecord = std::size_t{1} << 20;

  // `stream` must outlive the reader.
  RecordReader(ByteStream& stream, RecordFormat format);

  // Reads the next record into the argument; its cells are valid until the next call. False at the
  // end. Errors are those of the stream.
  Result<bool> next(Record& record);

  std::uint64_t bytes_read() const { return bytes_read_; }
  std::size_t too_long() const { return too_long_; }

 private:
  struct End {
    std::size_t at = std::string::npos;  // where the record's text ends
    std::size_t next = 0;                // where the next one begins
  };
  Result<bool> fill();
  Result<Done> begin();
  End find_end(std::size_t from) const;
  Result<End> end_of_record();
  void split(std::string_view text, Record& record) const;
  void advance(std::size_t to);

  ByteStream& stream_;
  RecordFormat format_;
  std::string buffer_ = {};
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  std::uint64_t bytes_read_ = 0;
  std::size_t too_long_ = 0;
  bool begun_ = false;
  bool ended_ = false;
};

}  // namespace mastwise
