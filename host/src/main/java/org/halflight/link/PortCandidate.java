package org.halflight.link;

/**
 * A port that a rig may be on.
 *
 * @param path what to open it by, a device file or a port name
 * @param description what the system or the person says of it
 * @param likelyBoard whether it may be opened without being asked for: it looks like a board of the
 *     kind that rigs are made of, or the person named it. Opening a port restarts many boards, so
 *     others are left alone.
 */
public record PortCandidate(String path, String description, boolean likelyBoard) {
  public PortCandidate {
    if (path.isBlank()) {
      throw new IllegalArgumentException("a port has a path");
    }
  }
}
