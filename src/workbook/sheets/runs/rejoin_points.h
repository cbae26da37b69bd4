// Where to go on after a slip, and the card that says so.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// A slip anywhere in `from` is followed by a jump to `to`; at the end there is nowhere to go.
struct Rejoin {
  std::vector<BarRange> from;  // as they are played: an ending may lie between
  int to = 0;                  // bar; 0 for the end
  bool begins_section = false;
  std::vector<int> times{};  // at which times of a repeat, where that matters
  int of = 1;                // how many times there are
};

// For every bar of the piece, in order, the next of the piece's places to rejoin: where it is
// another one from time to time of a repeat, one for each.
std::vector<Rejoin> rejoins(const PlannedPiece& piece);

// One card to cut out: all of a piece's rejoins, or a stretch of them.
struct RejoinCard {
  const PlannedPiece* piece = nullptr;
  std::vector<Rejoin> rows;
  int number = 1;  // of the piece's cards
  int of = 1;
};

// ISO 216: A6.
inline constexpr double kCardShort = 105;
inline constexpr double kCardLong = 148;

// How many rows of this piece a card of this size holds; one that is wider than high has two
// columns of them. Rows are higher where a mark is in force at one of them.
std::size_t rejoin_rows(const Typefaces& typefaces, const PlannedPiece& piece, double width,
                        double height);

// The card, with a line in each row to write how it begins there, and with its line to cut along,
// the frame's path on the edges of `box`.
void draw_rejoin_card_in(Book& book, const Box& box, const RejoinCard& card);

}  // namespace cahier
