package org.halflight.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.halflight.calibration.HostClock;
import org.halflight.files.FaultLog;
import org.halflight.link.Ports;

/**
 * What the window gets from the world around it.
 *
 * @param folder where record, session files and settings lie
 * @param ports the ports of this computer
 * @param nanos a clock that never runs back, in nanoseconds
 * @param clock the date and time
 * @param version of this program
 * @param seed of the invented shutter on the practice rig
 * @param hostClock what the clock behind {@code nanos} is worth
 */
public record DeskSurroundings(
    Path folder,
    Supplier<Ports> ports,
    LongSupplier nanos,
    Clock clock,
    String version,
    long seed,
    Supplier<HostClock> hostClock) {
  /** A computer that tells nothing of its clock. */
  public DeskSurroundings(
      Path folder,
      Supplier<Ports> ports,
      LongSupplier nanos,
      Clock clock,
      String version,
      long seed) {
    this(folder, ports, nanos, clock, version, seed, () -> HostClock.NOT_KNOWN);
  }

  /** Where faults of the program leave their details. */
  FaultLog faults() {
    return new FaultLog(folder, clock::instant);
  }
}
