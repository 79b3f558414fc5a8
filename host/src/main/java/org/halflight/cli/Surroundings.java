package org.halflight.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.halflight.calibration.HostClock;
import org.halflight.files.SettingsFile;
import org.halflight.link.Ports;
import org.halflight.report.PageFromRuns;
import org.halflight.report.PageInput;
import org.halflight.report.PageStyle;
import org.halflight.report.Workshop;

/**
 * What commands get from the world around them.
 *
 * @param terminal where the person reads and types
 * @param ports the ports of this computer, with those that the person named
 * @param nanos a clock that never runs back, in nanoseconds
 * @param date the date and time
 * @param folder where the record lies
 * @param version of this program
 * @param hostClock what the clock behind {@code nanos} is worth
 */
public record Surroundings(
    Terminal terminal,
    Function<List<String>, Ports> ports,
    LongSupplier nanos,
    Supplier<Instant> date,
    Path folder,
    String version,
    Supplier<HostClock> hostClock) {
  /** A computer that tells nothing of its clock. */
  public Surroundings(
      Terminal terminal,
      Function<List<String>, Ports> ports,
      LongSupplier nanos,
      Supplier<Instant> date,
      Path folder,
      String version) {
    this(terminal, ports, nanos, date, folder, version, () -> HostClock.NOT_KNOWN);
  }

  /** The day, by which profiles are dated, the same wherever the workshop is. */
  LocalDate today() {
    return LocalDate.ofInstant(date.get(), ZoneOffset.UTC);
  }

  /** What a page of some runs says now. */
  PageInput page(PageFromRuns runs) {
    return runs.input(date.get(), ZoneId.systemDefault(), version);
  }

  /** Who pages are from, by the settings. */
  Workshop workshop() {
    return Workshop.of(SettingsFile.read(folder));
  }

  /** The page for the owner, with or without those for the bench, on the usual paper. */
  PageStyle pageStyle(boolean bench) {
    Workshop from = workshop();
    return new PageStyle(
        from.paperIn(Locale.getDefault(Locale.Category.FORMAT)), bench, false, from);
  }
}
