#include "shared.h"

union shared shared;
