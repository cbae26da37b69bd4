#include "inputs/read_programme.h"

#include <fmt/format.h>

#include <algorithm>

#include "piece/read_practice.h"
#include "text/limits.h"

namespace cahier {
namespace {

void read_files(YamlFields& fields, Programme& programme) {
  const auto nodes = fields.list("pieces");
  for (const YamlNode* node : nodes) {
    const auto path =
        yaml_text(fields.source(), *node, "the name of a piece's file", 1000, fields.diagnostics());
    if (!path) continue;
    const bool twice = std::any_of(programme.pieces.begin(), programme.pieces.end(),
                                   [&](const Programme::File& file) { return file.path == *path; });
    if (twice)
      fields.diagnostics().error(fields.source(), node->at,
                                 fmt::format("{} is listed twice", *path), "list each piece once");
    programme.pieces.push_back({*path, node->at});
  }
  if (nodes.empty())
    fields.missing("pieces",
                   "list the files of the pieces, as in pieces: [prelude.yaml, study.yaml]");
  if (nodes.size() > kMostPieces)
    fields.diagnostics().error(fields.source(), fields.node("pieces")->at,
                               fmt::format("a programme can have at most {} pieces", kMostPieces),
                               "split it into two programmes");
}

}  // namespace

bool is_programme(const YamlNode& root) { return root.find("programme") != nullptr; }

std::optional<Programme> read_programme(const Source& source, Diagnostics& diagnostics) {
  const int errors_before = diagnostics.error_count();
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return std::nullopt;
  YamlFields fields(source, *root, diagnostics);
  Programme programme;
  programme.title = fields.text("programme").value_or("");
  programme.occasion = read_occasion(fields);
  if (const YamlNode* practice = fields.node("practice"))
    programme.practice = read_practice(source, *practice, diagnostics);
  read_files(fields, programme);
  fields.refuse_unknown();
  if (diagnostics.error_count() > errors_before) return std::nullopt;
  return programme;
}

}  // namespace cahier
