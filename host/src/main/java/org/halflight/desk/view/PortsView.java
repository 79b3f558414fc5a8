package org.halflight.desk.view;

import java.util.List;

/**
 * The ports of this computer, and why no rig is on one.
 *
 * @param lines the ports, likely boards first
 * @param causes why there is no rig, the likeliest first; empty where there is one
 * @param offer whether the other bench is offered: the rig while practising, the practice rig while
 *     no rig is found
 */
public record PortsView(List<Line> lines, List<String> causes, boolean offer) {
  /** Before anything was looked at. */
  public static final PortsView NOTHING = new PortsView(List.of(), List.of(), false);

  /**
   * One port.
   *
   * @param path what it is opened by
   * @param words what it is, and what was found on it
   * @param chosen whether the person chose it
   */
  public record Line(String path, String words, boolean chosen) {}

  public PortsView {
    lines = List.copyOf(lines);
    causes = List.copyOf(causes);
  }
}
