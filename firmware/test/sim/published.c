#include "published.h"

#include <fcntl.h>
#include <stdatomic.h>
#include <sys/mman.h>
#include <unistd.h>

bool published_open(struct published *time, const char *path) {
  int file = open(path, O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (file < 0) {
    return false;
  }
  void *page = ftruncate(file, sizeof(int64_t)) == 0
                   ? mmap(NULL, sizeof(int64_t), PROT_READ | PROT_WRITE, MAP_SHARED, file, 0)
                   : MAP_FAILED;
  close(file);
  if (page == MAP_FAILED) {
    return false;
  }
  time->ns = page;
  return true;
}

void published_tell(struct published *time, double seconds) {
  if (time->ns) {
    int64_t ns = (int64_t)(seconds * 1e9);
    if (ns > atomic_load_explicit(time->ns, memory_order_relaxed)) {
      atomic_store_explicit(time->ns, ns, memory_order_release);
    }
  }
}
