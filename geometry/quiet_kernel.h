#pragma once

namespace prismwright {

/// Takes the kernel's own messages off the console, once for the whole program.
void quiet_kernel();

}  // namespace prismwright
