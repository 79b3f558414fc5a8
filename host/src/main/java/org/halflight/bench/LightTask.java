package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Channel;

/** Measures the light of the centre sensor for some milliseconds. */
final class LightTask implements RigTask {
  private static final int BLOCKS = 100;

  private final List<Integer> sums = new ArrayList<>();

  @Override
  public RigCommand begin() {
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, BLOCKS);
  }

  @Override
  public State hear(RigEvent event) {
    if (event instanceof RigEvent.Light light && light.block().channel() == Channel.CENTRE_LOW) {
      sums.add(light.block().sum16());
      return light.block().index() + 1 >= BLOCKS ? State.DONE : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  /** Mean light in counts of the ten-bit converter. */
  double counts() {
    return sums.stream().mapToInt(Integer::intValue).average().orElseThrow() / 16;
  }
}
