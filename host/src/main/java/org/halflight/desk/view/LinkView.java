package org.halflight.desk.view;

import org.halflight.link.LinkState;
import org.halflight.session.Source;

/**
 * How things stand with the rig.
 *
 * @param state of the link
 * @param sentence what happened last, what it means for the data, and what to do
 * @param source where figures come from
 * @param serial serial number of the rig; empty before it greeted
 * @param damagedLines lines that could not be believed since the session began
 * @param missingLines lines that never came
 * @param ports the ports of this computer, and why no rig is on one
 */
public record LinkView(
    LinkState state,
    String sentence,
    Source source,
    String serial,
    long damagedLines,
    long missingLines,
    PortsView ports) {
  /** Whether the rig answers. */
  public boolean isUp() {
    return state == LinkState.CONNECTED || state == LinkState.BACK;
  }

  /** Whether the figures are those of an invented shutter. */
  public boolean isPractice() {
    return source == Source.PRACTICE;
  }
}
