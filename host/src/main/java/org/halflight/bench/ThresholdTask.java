package org.halflight.bench;

import java.util.Optional;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.time.TickRate;

/** Sets both thresholds and reads back where they stand once their filters have settled. */
final class ThresholdTask implements RigTask {
  /** The filters need 0.1 s. */
  private static final double SETTLE_SECONDS = 0.25;

  private final RigCommand.SetThresholds set;
  private final Elapsed elapsed = new Elapsed();
  private boolean settled;
  private boolean asked;
  private Optional<RigMessage.Thresholds> read = Optional.empty();

  ThresholdTask(int lowCode, int highCode) {
    set = new RigCommand.SetThresholds(lowCode, highCode);
  }

  @Override
  public RigCommand begin() {
    return set;
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.TimeAt time) {
      settled = elapsed.seconds(time, rate) >= SETTLE_SECONDS;
    } else if (event instanceof RigMessage.Thresholds thresholds && asked) {
      read = Optional.of(thresholds);
    }
    return read.isPresent() ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public Optional<RigCommand> next() {
    if (asked || !settled) {
      return Optional.empty();
    }
    asked = true;
    return Optional.of(new RigCommand.AskThresholds());
  }

  /** The low threshold in counts. */
  double lowCounts() {
    return read.orElseThrow().lowSum64() / 64.0;
  }

  /** The high threshold in counts. */
  double highCounts() {
    return read.orElseThrow().highSum64() / 64.0;
  }
}
