package org.halflight.rig.practice;

import java.util.List;
import java.util.function.Consumer;
import org.halflight.link.Link;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.words.Words;

/**
 * The one port that the practice rig is on, so that it is found, lost and found again as a rig on a
 * cable is. Its controls are in {@link #rig}. Safe for use by several threads.
 */
public final class PracticePorts implements Ports {
  private static final String PATH = "practice";

  private PracticeRig rig;
  private boolean pluggedIn = true;

  public PracticePorts(PracticeRig rig) {
    this.rig = rig;
  }

  @Override
  public synchronized List<PortCandidate> candidates() {
    return pluggedIn
        ? List.of(new PortCandidate(PATH, Words.say("rig.practice.port"), true))
        : List.of();
  }

  @Override
  public synchronized Link open(PortCandidate candidate, int baudRate) {
    if (!pluggedIn) {
      throw new LinkRefusedException(
          LinkRefusedException.Reason.ABSENT, Words.say("rig.practice.out"));
    }
    // A link that was let go cannot be opened again: the board starts anew, as most boards do.
    rig = rig.plugIn();
    return rig;
  }

  /** Does something on the bench of the practice rig. */
  public void onBench(Consumer<PracticeRig> doing) {
    PracticeRig now;
    synchronized (this) {
      now = rig;
    }
    doing.accept(now);
  }

  /** Pulls the cable: the link is lost, and there is no such port any more. */
  public synchronized void pullCable() {
    pluggedIn = false;
    rig.pullCable();
  }

  /** Plugs the cable in again. */
  public synchronized void plugIn() {
    pluggedIn = true;
  }
}
