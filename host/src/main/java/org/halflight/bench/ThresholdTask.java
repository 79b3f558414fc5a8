package org.halflight.bench;

import java.util.Optional;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.time.TickRate;

/** Sets both thresholds, or none, and reads back where they are once the filters have settled. */
final class ThresholdTask implements RigTask {
  /** The filters need 0.1 s. */
  private static final double SETTLE_SECONDS = 0.25;

  /** Empty for a level that is only read. */
  private final Optional<RigCommand> set;

  private final Elapsed elapsed = new Elapsed();
  private boolean settled;
  private boolean asked;
  private Optional<RigMessage.Thresholds> read = Optional.empty();

  ThresholdTask(int lowCode, int highCode) {
    this(Optional.of(new RigCommand.SetThresholds(lowCode, highCode)));
  }

  private ThresholdTask(Optional<RigCommand> set) {
    this.set = set;
    asked = set.isEmpty();
  }

  /** The levels as they are. */
  static ThresholdTask asItIs() {
    return new ThresholdTask(Optional.empty());
  }

  @Override
  public RigCommand begin() {
    return set.orElseGet(RigCommand.AskThresholds::new);
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

  /** What came back; it must be done. */
  RigMessage.Thresholds read() {
    return read.orElseThrow();
  }

  /** The low threshold in counts. */
  double lowCounts() {
    return read().lowSum64() / 64.0;
  }

  /** The high threshold in counts. */
  double highCounts() {
    return read().highSum64() / 64.0;
  }
}
