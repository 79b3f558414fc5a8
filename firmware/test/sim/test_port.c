/* The pseudo-terminal behaves like a cable: nothing is kept for a host that is not there, nothing ever waits. */

#include <fcntl.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "port.h"
#include "tap.h"

#define LIMIT_MS 2000

static unsigned char in[256];

static int open_as_host(const char *path) {
  return open(path, O_RDWR | O_NOCTTY | O_NONBLOCK);
}

static void put_text(struct port *port, const char *text) {
  while (*text) {
    port_put(port, (unsigned char)*text++);
  }
}

/* What the host reads when something comes; empty when nothing does at once. */
static size_t read_as_host(int host, char *text, size_t room, int wait_ms) {
  struct pollfd state = {.fd = host, .events = POLLIN};
  poll(&state, 1, wait_ms);
  ssize_t got = read(host, text, room - 1);
  text[got > 0 ? got : 0] = 0;
  return got > 0 ? (size_t)got : 0;
}

int main(void) {
  char directory[] = P_tmpdir "/bench-port-XXXXXX", link[64], target[64] = "", text[8192];
  if (!mkdtemp(directory)) {
    printf("Bail out! no directory for the link\n");
    return 1;
  }
  snprintf(link, sizeof link, "%s/rig", directory);
  struct port port = {.master = -1, .link = link};
  tap_check(port_plug(&port), "a pseudo-terminal opens");
  ssize_t length = readlink(link, target, sizeof target - 1);
  tap_check(length > 0 && strcmp(target, port.path) == 0, "the link leads to it");

  put_text(&port, "early\n");
  port_exchange(&port, in, sizeof in);
  int host = open_as_host(link);
  tap_check(host >= 0 && read_as_host(host, text, sizeof text, 0) == 0, "what was sent before a host came is gone");
  port_exchange(&port, in, sizeof in);
  put_text(&port, "H 0000\r\n");
  port_exchange(&port, in, sizeof in);
  read_as_host(host, text, sizeof text, LIMIT_MS);
  tap_check(strcmp(text, "H 0000\r\n") == 0, "a line arrives byte by byte as sent, its line end too");

  ssize_t put = write(host, "h 0001#\n\r\003\021", 11);
  struct pollfd state = {.fd = port.master, .events = POLLIN};
  poll(&state, 1, LIMIT_MS);
  size_t got = port_exchange(&port, in, sizeof in);
  tap_check(put == 11 && got == 11 && memcmp(in, "h 0001#\n\r\003\021", 11) == 0,
            "what the host sends arrives as sent, control characters too");
  put_text(&port, "x");
  port_exchange(&port, in, sizeof in);
  read_as_host(host, text, sizeof text, LIMIT_MS);
  tap_check(strcmp(text, "x") == 0, "and is not echoed");

  unsigned long lost = port.lost;
  for (int i = 0; i < 100; i++) { /* far more than the system keeps for a host that does not read */
    put_text(&port, "0123456789012345678901234567890123456789012345678901234567890123456789012345678901234567890123456789");
    port_exchange(&port, in, sizeof in);
  }
  for (int i = 0; i < 100; i++) {
    memset(text, 'y', sizeof text);
    for (int k = 0; k < 2000; k++) {
      port_put(&port, 'y');
    }
    port_exchange(&port, in, sizeof in);
  }
  tap_check(port.lost > lost, "a host that does not read loses bytes, and the bench does not wait for it");

  while (read_as_host(host, text, sizeof text, 0) > 0) {
  }
  port.holds = true;
  lost = port.lost;
  size_t sent = 0, came = 0;
  bool right = true;
  for (int i = 0; i < 100000 && came < 200000; i++) { /* more than fits, read a little at a time */
    while (port.waiting < 4096 && sent < 200000) {
      port_put(&port, (unsigned char)('a' + sent++ % 26));
    }
    port_exchange(&port, in, sizeof in);
    size_t now = read_as_host(host, text, 1000, 0);
    for (size_t k = 0; k < now; k++) {
      right &= text[k] == (char)('a' + came++ % 26);
    }
  }
  tap_check(came == 200000 && right && port.lost == lost, "one that holds loses nothing to a host that reads slowly");
  for (int i = 0; i < 100 && !port.waiting; i++) {
    memset(text, 'z', sizeof text);
    for (int k = 0; k < 4096; k++) {
      port_put(&port, 'z');
    }
    port_exchange(&port, in, sizeof in);
  }
  tap_check(port.waiting > 0 && port_wait(&port), "it says that there is something to wait for");
  port_give_up(&port);
  tap_check(port.waiting == 0 && port.lost > lost && !port_wait(&port), "and can give it up");
  port.holds = false;

  close(host);
  port_exchange(&port, in, sizeof in);
  host = open_as_host(link);
  tap_check(host >= 0 && read_as_host(host, text, sizeof text, 0) == 0, "the next host does not get what the last left unread");

  char before[64];
  strcpy(before, port.path);
  port_unplug(&port);
  tap_check(access(link, F_OK) != 0 && readlink(link, target, sizeof target) < 0, "unplugged: the link is gone");
  tap_check(write(host, "a", 1) < 0 || read(host, text, 1) <= 0, "and the host notices");
  put_text(&port, "nobody\n");
  tap_check(port_exchange(&port, in, sizeof in) == 0, "the board runs on unheard");
  close(host);
  tap_check(port_plug(&port) && strcmp(before, port.path) != 0, "plugged again: another name");
  length = readlink(link, target, sizeof target - 1);
  target[length > 0 ? length : 0] = 0;
  tap_check(strcmp(target, port.path) == 0, "and the link leads there");
  port_unplug(&port);
  rmdir(directory);
  return tap_done();
}
