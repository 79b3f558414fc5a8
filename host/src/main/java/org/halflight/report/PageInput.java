package org.halflight.report;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.StopTable;
import org.halflight.session.Source;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CalibrationStatus;

/**
 * Everything that the page says, as plain values, so that it can be filled from a record, from
 * session files or by hand. Texts are printed as they are; an empty one leaves its place out.
 *
 * @param camera the owner's label
 * @param serialNumber of the camera
 * @param jobNumber of the workshop
 * @param shutterKind in words
 * @param dial all marked speeds of the camera, slow to fast; those that were not fired are named
 * @param asFound the run before work
 * @param asLeft the run after work; at least one of the two is there
 * @param lists what was looked at
 * @param alsoTried what was tried beside the marked speeds, one plain sentence each
 * @param workDone in order
 * @param notTested what else was not tested
 * @param standing whether the figures count as calibrated, and why not
 * @param stillWet whether the shutter was still wet in the last run
 * @param stopTables by marked speed, of the last run; empty for other than leaf shutters
 * @param measuredFNumber the stop that was set in the last run
 * @param source where the figures come from
 * @param sourceWords the same in words
 * @param writtenAt when the page was made
 * @param date the same as it is to be printed
 * @param version of this program
 */
public record PageInput(
    String camera,
    String serialNumber,
    String jobNumber,
    String shutterKind,
    List<MarkedSpeed> dial,
    Optional<RunPart> asFound,
    Optional<RunPart> asLeft,
    List<CheckLine> lists,
    List<String> alsoTried,
    List<String> workDone,
    List<String> notTested,
    CalibrationStatus standing,
    boolean stillWet,
    Map<MarkedSpeed, StopTable> stopTables,
    OptionalDouble measuredFNumber,
    Source source,
    String sourceWords,
    Instant writtenAt,
    String date,
    String version) {
  public PageInput {
    dial = List.copyOf(dial);
    lists = List.copyOf(lists);
    alsoTried = List.copyOf(alsoTried);
    workDone = List.copyOf(workDone);
    notTested = List.copyOf(notTested);
    stopTables = Map.copyOf(stopTables);
    if (asFound.isEmpty() && asLeft.isEmpty()) {
      throw new IllegalArgumentException("a page has at least one run");
    }
    if (measuredFNumber.isPresent() && !(measuredFNumber.getAsDouble() > 0)) {
      throw new IllegalArgumentException("an f-number is above 0: " + measuredFNumber);
    }
  }

  /** The last run there is: as left, else as found. */
  public RunPart last() {
    return asLeft.or(() -> asFound).orElseThrow();
  }
}
