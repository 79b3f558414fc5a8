package org.halflight.link;

import java.util.List;

/** The ports of this computer, or ones that stand in for them. Used by one thread at a time. */
public interface Ports {
  /**
   * The ports that are there now, likely boards first.
   *
   * @throws LinkRefusedException when ports cannot be listed at all
   */
  List<PortCandidate> candidates();

  /**
   * Opens a port. This restarts many boards, whose first words then take up to 2.5 s.
   *
   * @param baudRate bits a second to begin with
   * @throws LinkRefusedException when the port cannot be opened
   */
  Link open(PortCandidate candidate, int baudRate);

  /** What the system says of its ports, with none opened; takes longer than the list. */
  default PortSurvey survey() {
    return PortSurvey.bare(candidates());
  }

  /**
   * Has something done when the program is ended from outside, by Ctrl-C or as the system shuts
   * down, while ports are still open. Ports that end with nothing have no use for it.
   */
  default void beforeTheProgramIsEnded(Runnable last) {}
}
