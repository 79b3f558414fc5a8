package org.halflight.session;

import java.util.List;

/**
 * What becomes of the stages of an assembly when a switch is flipped. A stage in which nothing was
 * fired was none: it is put right, and when the switch only went there and back, the stage before
 * goes on and its firings count on. Once something was fired, parts have moved, and a stage that is
 * the same as an earlier one is measured again.
 *
 * @param how it comes about
 * @param stage counts the stages of the assembly from 1
 * @param earlier the last stage that was the same; 0 where none was
 * @param dropsTheLast whether the run before was none
 * @param lightAgain whether the cells are others than when something was fired last
 */
public record StageSwitch(
    How how, int stage, int earlier, boolean dropsTheLast, boolean lightAgain) {
  /** How a stage comes about. */
  public enum How {
    /** A part was put on or taken off, or the assembly begins. */
    NEXT,
    /** The stage before was set wrongly; nothing was fired in it. */
    PUT_RIGHT,
    /** The stage goes on, with nothing fired in between. */
    GOES_ON,
    /** The same as an earlier stage, but parts have moved since. */
    AGAIN
  }

  /**
   * What a run that begins is among the stages.
   *
   * @param runs so far
   * @param begun the stage that begins
   * @param untouched whether nothing has happened in the last run
   */
  static StageSwitch of(List<RunSetup> runs, RunSetup begun, boolean untouched) {
    List<Assembly> stages = stages(runs, begun).stream().map(RunSetup::assembly).toList();
    Assembly now = begun.assembly();
    int count = stages.size();
    if (count > 0 && stages.get(count - 1).equals(now)) {
      return new StageSwitch(How.GOES_ON, count, 0, false, false);
    }
    // The stages in which something has happened.
    int fired = untouched && count > 0 ? count - 1 : count;
    boolean lightAgain = fired > 0 && stages.get(fired - 1).cells() != now.cells();
    if (fired < count) {
      boolean back = fired > 0 && stages.get(fired - 1).equals(now);
      return back
          ? new StageSwitch(How.GOES_ON, fired, 0, true, false)
          : new StageSwitch(How.PUT_RIGHT, count, 0, true, lightAgain);
    }
    int earlier = stages.lastIndexOf(now) + 1;
    return new StageSwitch(
        earlier > 0 ? How.AGAIN : How.NEXT, count + 1, earlier, false, lightAgain);
  }

  /** Which stage of its assembly the last run is, from 1. */
  public static int number(List<RunSetup> runs) {
    return runs.isEmpty() ? 0 : stages(runs, runs.get(runs.size() - 1)).size();
  }

  /** The last runs that are stages of one assembly with another one. */
  private static List<RunSetup> stages(List<RunSetup> runs, RunSetup with) {
    int first = runs.size();
    while (first > 0 && runs.get(first - 1).isStageOf(with)) {
      first--;
    }
    return runs.subList(first, runs.size());
  }

  SessionEvent event(RunSetup begun) {
    return new SessionEvent.StageBegins(stage, begun.assembly(), how, earlier, lightAgain);
  }
}
