#include "text/errors.h"

#include <utility>

namespace cahier {
namespace {

std::string compose_all(const std::vector<Diagnostic>& diagnostics) {
  std::string text;
  for (const Diagnostic& diagnostic : diagnostics) text += compose(diagnostic);
  return text;
}

}  // namespace

InputError::InputError(std::vector<Diagnostic> diagnostics)
    : std::runtime_error(compose_all(diagnostics)), diagnostics_(std::move(diagnostics)) {}

}  // namespace cahier
