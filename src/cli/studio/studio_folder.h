// Students' data stay in their studio's folder.
#pragma once

#include "cli/inputs.h"
#include "cli/studio/studio_file.h"

namespace cahier {

// Throws InputError that names each file of a student's entry that lies outside the studio's
// folder, links followed, at its place.
void refuse_outside(const StudioFiles& files, const Student& student);

// The same for the pieces and scores that files of the student name.
void refuse_outside(const StudioFiles& files, const Student& student, const Inputs& inputs);

}  // namespace cahier
