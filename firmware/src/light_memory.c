#include "light_memory.h"

union light_memory light_memory;
