#include "port.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

static int open_master(char *path, size_t room) {
  int master = posix_openpt(O_RDWR | O_NOCTTY);
  if (master < 0) {
    return -1;
  }
  if (grantpt(master) != 0 || unlockpt(master) != 0 || ptsname_r(master, path, room) != 0) {
    close(master);
    return -1;
  }
  fcntl(master, F_SETFL, fcntl(master, F_GETFL) | O_NONBLOCK);
  fcntl(master, F_SETFD, FD_CLOEXEC);
  return master;
}

/* Raw, no echo. Opened and closed once, so that from now on the kernel tells whether a host has it open. */
static void make_raw(const char *path) {
  int slave = open(path, O_RDWR | O_NOCTTY | O_NONBLOCK);
  if (slave >= 0) {
    struct termios settings;
    tcgetattr(slave, &settings);
    cfmakeraw(&settings);
    tcsetattr(slave, TCSANOW, &settings);
    tcflush(slave, TCIOFLUSH);
    close(slave);
  }
}

/* Replaced in one step: at no time does the link point nowhere. */
static void set_link(const struct port *port) {
  if (port->link) {
    char beside[4096];
    snprintf(beside, sizeof beside, "%s.%ld.new", port->link, (long)getpid());
    unlink(beside);
    if (symlink(port->path, beside) != 0 || rename(beside, port->link) != 0) {
      fprintf(stderr, "bench: cannot make the link %s: %s; choose a path in a directory you may write to\n", port->link,
              strerror(errno));
      unlink(beside);
    }
  }
}

static void drop_link(const struct port *port) {
  char target[sizeof port->path];
  ssize_t length = port->link ? readlink(port->link, target, sizeof target - 1) : -1;
  if (length > 0) {
    target[length] = 0;
    if (strcmp(target, port->path) == 0) {
      unlink(port->link);
    }
  }
}

bool port_plug(struct port *port) {
  char path[sizeof port->path];
  int master = open_master(path, sizeof path);
  if (master >= 0 && strcmp(path, port->path) == 0) {
    int same = master; /* kept open, so that the next one gets another name */
    master = open_master(path, sizeof path);
    close(same);
  }
  if (master < 0) {
    return false;
  }
  port->master = master;
  strcpy(port->path, path);
  port->waiting = 0;
  port->heard = false;
  make_raw(path);
  set_link(port);
  return true;
}

void port_unplug(struct port *port) {
  if (port->master >= 0) {
    drop_link(port);
    close(port->master);
    port->master = -1;
  }
}

void port_put(struct port *port, unsigned char byte) {
  if (port->waiting < sizeof port->out) {
    port->out[port->waiting++] = byte;
  } else {
    port->lost++;
  }
}

size_t port_exchange(struct port *port, unsigned char *in, size_t room) {
  if (port->master < 0) {
    port->waiting = 0;
    return 0;
  }
  struct pollfd state = {.fd = port->master, .events = POLLIN};
  poll(&state, 1, 0);
  ssize_t got = state.revents & POLLIN ? read(port->master, in, room) : 0;
  bool heard = !(state.revents & POLLHUP);
  if (port->heard && !heard) {
    make_raw(port->path); /* what the last host left unread must not reach the next */
  }
  port->heard = heard;
  if (port->waiting > 0) {
    ssize_t taken = heard ? write(port->master, port->out, port->waiting) : 0;
    size_t left = port->waiting - (size_t)(taken > 0 ? taken : 0);
    if (heard && port->holds) {
      memmove(port->out, port->out + port->waiting - left, left);
    } else {
      port->lost += left;
      left = 0;
    }
    port->waiting = left;
  }
  return got > 0 ? (size_t)got : 0;
}

bool port_wait(const struct port *port) {
  if (port->waiting == 0) {
    return false;
  }
  struct pollfd state = {.fd = port->master, .events = POLLOUT};
  poll(&state, 1, 1);
  return true;
}

void port_give_up(struct port *port) {
  port->lost += port->waiting;
  port->waiting = 0;
}
