// What every test includes, compiled once ahead of them all. The vectors of our own types are
// instantiated in instances.cpp alone: each test would compile some thousand functions of its own.
#pragma once

#include <string>
#include <vector>

#include "catch.h"
#include "paper/recording_canvas.h"
#include "plan/plan.h"
#include "practice/record.h"
#include "text/diagnostics.h"

#define CAHIER_VECTORS(KEYWORD)                                \
  KEYWORD template class std::vector<int>;                     \
  KEYWORD template class std::vector<std::string>;             \
  KEYWORD template class std::vector<std::vector<int>>;        \
  KEYWORD template class std::vector<cahier::BarRange>;        \
  KEYWORD template class std::vector<cahier::Change>;          \
  KEYWORD template class std::vector<cahier::Chunk>;           \
  KEYWORD template class std::vector<cahier::Clef>;            \
  KEYWORD template class std::vector<cahier::CueStart>;        \
  KEYWORD template class std::vector<cahier::DateSpan>;        \
  KEYWORD template class std::vector<cahier::Day>;             \
  KEYWORD template class std::vector<cahier::DayMinutes>;      \
  KEYWORD template class std::vector<cahier::Diagnostic>;      \
  KEYWORD template class std::vector<cahier::DiceTable::Row>;  \
  KEYWORD template class std::vector<cahier::DiceTable>;       \
  KEYWORD template class std::vector<cahier::Done>;            \
  KEYWORD template class std::vector<cahier::DrawnPage>;       \
  KEYWORD template class std::vector<cahier::HardBars>;        \
  KEYWORD template class std::vector<cahier::LookAlikes>;      \
  KEYWORD template class std::vector<cahier::Mark>;            \
  KEYWORD template class std::vector<cahier::Method::Spacing>; \
  KEYWORD template class std::vector<cahier::Piece>;           \
  KEYWORD template class std::vector<cahier::PlannedPiece>;    \
  KEYWORD template class std::vector<cahier::PlannedSection>;  \
  KEYWORD template class std::vector<cahier::Remedy>;          \
  KEYWORD template class std::vector<cahier::Repeat>;          \
  KEYWORD template class std::vector<cahier::Section>;         \
  KEYWORD template class std::vector<cahier::Sensitivity>;     \
  KEYWORD template class std::vector<cahier::Step>;            \
  KEYWORD template class std::vector<cahier::Task>;            \
  KEYWORD template class std::vector<cahier::Unplaced>

CAHIER_VECTORS(extern);
extern template class std::basic_string<char>;
