package org.halflight.desk.view;

import java.util.List;

/**
 * The ports of this computer, and why no rig is on one.
 *
 * @param lines the ports, likely boards first
 * @param main how things are, or the likeliest reason for no rig; empty while that is in the link
 * @param others the other reasons, in order of likelihood
 * @param offer whether the other bench is offered: the rig while practising, the practice rig while
 *     no rig is found
 */
public record PortsView(List<Line> lines, String main, List<String> others, boolean offer) {
  /** Before anything was looked at. */
  public static final PortsView NOTHING = new PortsView(List.of(), "", List.of(), false);

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
    others = List.copyOf(others);
  }
}
