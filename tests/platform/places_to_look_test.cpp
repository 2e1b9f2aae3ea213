#include "platform/places_to_look.hpp"

#include "platform/mounts_linux.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>
#include <stdlib.h>

using namespace mastwise;

TEST_CASE("sticks and cards are the mounts at removable media paths") {
  const test::TemporaryFolder folder;
  // Lines as in fstab(5); a blank in a name is \040 there.
  std::ofstream(folder.file("mounts")) << "/dev/sda2 / ext4 rw 0 0\n"
                                          "proc /proc proc rw 0 0\n"
                                          "/dev/sdb1 /media/rover/STATION\\040DATA vfat rw 0 0\n"
                                          "/dev/sdc1 /run/media/rover/card exfat rw 0 0\n"
                                          "/dev/sdd1 /mnt ext4 rw 0 0\n"
                                          "/dev/sde1 /home/media/inside ext4 rw 0 0\n";
  const auto media = platform::media_in(folder.file("mounts"));
  CHECK(media == std::vector<platform::PlaceToLook>{{"STATION DATA", "/media/rover/STATION DATA"},
                                                    {"card", "/run/media/rover/card"},
                                                    {"mnt", "/mnt"}});
  CHECK(platform::media_in(folder.file("none")).empty());
}

TEST_CASE("the user's existing folders are offered") {
  const test::TemporaryFolder home;
  std::filesystem::create_directory(home.file("Downloads"));
  const char* before = std::getenv("HOME");
  const std::string kept = before == nullptr ? "" : before;
  ::setenv("HOME", home.path().c_str(), 1);
  const auto places = platform::places_to_look();
  ::setenv("HOME", kept.c_str(), 1);
  const auto has = [&](const std::string& path) {
    return std::any_of(places.begin(), places.end(),
                       [&](const platform::PlaceToLook& place) { return place.path == path; });
  };
  CHECK(has(home.file("Downloads")));
  CHECK(has(home.path()));
  CHECK_FALSE(has(home.file("Documents")));
}
