package org.halflight.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.job.Details;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;

/**
 * What a page says of camera and work beside its runs. An empty text leaves its place out.
 *
 * @param camera the owner's label; empty for that of the last run
 * @param serial number of the camera
 * @param job number of the workshop
 * @param details of the camera and of its visit
 * @param shutter its kind in the person's words; empty for those of the kind
 * @param kind how the shutter is built; where it is unknown, the last run may tell
 * @param dial of the camera; empty for that of the last run
 * @param lists what was looked at, by hand
 * @param workDone in order
 * @param moved whether the shutter has moved since it went back the last time; empty for not asked
 * @param notTested what else was not tested
 * @param wet whether the shutter was still wet in the last run, besides what the run notes
 * @param fNumber the stop that was set in the last run; empty for what the run notes
 */
public record PageAbout(
    String camera,
    String serial,
    String job,
    Details details,
    String shutter,
    ShutterKind kind,
    Optional<Dial> dial,
    List<CheckLine> lists,
    List<String> workDone,
    String moved,
    List<String> notTested,
    boolean wet,
    OptionalDouble fNumber) {
  public PageAbout {
    lists = List.copyOf(lists);
    workDone = List.copyOf(workDone);
    notTested = List.copyOf(notTested);
  }

  /**
   * Of a camera that is in no record, and about which nobody typed anything.
   *
   * @param shutter in words; may be empty
   * @param workDone in order
   */
  public static PageAbout of(String shutter, ShutterKind kind, List<String> workDone) {
    return new PageAbout(
        "",
        "",
        "",
        Details.NONE,
        shutter,
        kind,
        Optional.empty(),
        List.of(),
        workDone,
        "",
        List.of(),
        false,
        OptionalDouble.empty());
  }

  boolean isCurtain(PageRun last) {
    return kind == ShutterKind.UNKNOWN
        ? last.setup().shutter().isCurtain() || kind.isCurtain(dial.map(Dial::name).orElse(""))
        : kind.isCurtain();
  }
}
