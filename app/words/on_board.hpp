#pragma once

#include <cstddef>
#include <string>

// The stations on board.
namespace mastwise::words {

// "2,074".
std::string grouped(std::size_t number);

// Why a list by network is empty, and what brings names.
std::string no_networks_named();

}  // namespace mastwise::words
