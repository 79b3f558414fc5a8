#ifndef BENCH_PORT_H
#define BENCH_PORT_H

#include <stdbool.h>
#include <stddef.h>

/* The pseudo-terminal that a host opens like a serial port, as a cable would behave: what comes while nobody has it open is
   gone, what does not fit into the host's buffer is lost, and nothing here ever waits. One that `holds` keeps what did not fit
   instead; whoever owns it stands still until it is gone. */
struct port {
  int master; /* -1 while unplugged */
  char path[64];
  const char *link; /* symbolic link kept to it, or NULL */
  bool heard;       /* a host has it open */
  bool holds;       /* loses nothing to a host that reads slowly */
  unsigned char out[8192];
  size_t waiting;
  unsigned long lost; /* bytes nobody took */
};

/* Opens a new pseudo-terminal, under a name other than the last one. False with errno set when that fails. */
bool port_plug(struct port *port);
void port_unplug(struct port *port);
/* Keeps a byte for the host; port_exchange passes it on. */
void port_put(struct port *port, unsigned char byte);
/* Hands the kept bytes to the host and takes what it sent: returns how many bytes came. */
size_t port_exchange(struct port *port, unsigned char *in, size_t room);

/* Waits a millisecond for the host to read what it holds; false when there is nothing to wait for. */
bool port_wait(const struct port *port);
/* Gives up what it holds: that host reads no more. */
void port_give_up(struct port *port);

#endif
