#pragma once

#include "core/lens/trimmed_volume.h"
