#include "instances.h"

CAHIER_VECTORS();
template class std::basic_string<char>;
