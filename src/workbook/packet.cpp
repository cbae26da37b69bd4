#include "workbook/packet.h"

#include <fmt/format.h>

#include <algorithm>

#include "text/did_you_mean.h"
#include "text/limits.h"
#include "text/yaml.h"

namespace cahier {

Packet read_packet(const Source& source, Diagnostics& diagnostics) {
  Packet packet;
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return packet;
  YamlFields fields(source, *root, diagnostics);
  fields.text("about");
  packet.teacher = fields.yes_no("teacher").value_or(false);
  std::vector<std::string> known;
  for (const Sheet& sheet : all_sheets()) known.emplace_back(sheet.name);
  for (const YamlNode* node : fields.list("sheets")) {
    const auto sheet = std::find_if(all_sheets().begin(), all_sheets().end(),
                                    [&](const Sheet& one) { return one.name == node->text; });
    if (sheet != all_sheets().end())
      packet.sheets.push_back(*sheet);
    else
      diagnostics.error(
          source, node->at,
          fmt::format("there is no sheet \"{}\"{}", node->text, did_you_mean(node->text, known)),
          fmt::format("the sheets are: {}", fmt::join(known, ", ")));
  }
  if (packet.sheets.size() > kMostSheets)
    diagnostics.error(source, fields.node("sheets")->at,
                      fmt::format("a packet can have at most {} sheets, found {}", kMostSheets,
                                  packet.sheets.size()),
                      "list each sheet once");
  if (packet.sheets.empty() && !diagnostics.has_errors())
    fields.missing("sheets", "write it as sheets: [cover, day panels, cue starts]");
  fields.refuse_unknown();
  return packet;
}

}  // namespace cahier
