package org.halflight.report;

import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.exposure.StopTable;
import org.halflight.job.Detail;
import org.halflight.job.Details;
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
 * @param details of the camera and of its visit
 * @param shutterKind in words
 * @param dial all marked speeds of the camera, slow to fast; those that were not fired are named
 * @param asFound the run before work
 * @param asLeft the run after work; at least one of the two is there
 * @param lists what was looked at
 * @param alsoTried what was tried beside the marked speeds, one plain sentence each
 * @param workDone in order
 * @param moved whether the shutter has moved since it went back the last time; empty for not asked
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
 * @param turns what was turned on the curtains and how it was found, for the bench alone
 */
public record PageInput(
    String camera,
    String serialNumber,
    String jobNumber,
    Details details,
    String shutterKind,
    List<MarkedSpeed> dial,
    Optional<RunPart> asFound,
    Optional<RunPart> asLeft,
    List<CheckLine> lists,
    List<String> alsoTried,
    List<String> workDone,
    String moved,
    List<String> notTested,
    CalibrationStatus standing,
    boolean stillWet,
    Map<MarkedSpeed, StopTable> stopTables,
    OptionalDouble measuredFNumber,
    Source source,
    String sourceWords,
    Instant writtenAt,
    String date,
    String version,
    List<String> turns) {
  private static final int SHORTEST_NAME = 3;

  public PageInput {
    dial = List.copyOf(dial);
    lists = List.copyOf(lists);
    alsoTried = List.copyOf(alsoTried);
    workDone = List.copyOf(workDone);
    notTested = List.copyOf(notTested);
    stopTables = Map.copyOf(stopTables);
    turns = List.copyOf(turns);
    if (asFound.isEmpty() && asLeft.isEmpty()) {
      throw new IllegalArgumentException("a page has at least one run");
    }
    if (measuredFNumber.isPresent() && !(measuredFNumber.getAsDouble() > 0)) {
      throw new IllegalArgumentException("an f-number is above 0: " + measuredFNumber);
    }
  }

  /** Of which nothing was turned. */
  public PageInput(
      String camera,
      String serialNumber,
      String jobNumber,
      Details details,
      String shutterKind,
      List<MarkedSpeed> dial,
      Optional<RunPart> asFound,
      Optional<RunPart> asLeft,
      List<CheckLine> lists,
      List<String> alsoTried,
      List<String> workDone,
      String moved,
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
    this(
        camera,
        serialNumber,
        jobNumber,
        details,
        shutterKind,
        dial,
        asFound,
        asLeft,
        lists,
        alsoTried,
        workDone,
        moved,
        notTested,
        standing,
        stillWet,
        stopTables,
        measuredFNumber,
        source,
        sourceWords,
        writtenAt,
        date,
        version,
        List.of());
  }

  /** The same with what was turned on the curtains. */
  PageInput with(List<String> turned) {
    return new PageInput(
        camera,
        serialNumber,
        jobNumber,
        details,
        shutterKind,
        dial,
        asFound,
        asLeft,
        lists,
        alsoTried,
        workDone,
        moved,
        notTested,
        standing,
        stillWet,
        stopTables,
        measuredFNumber,
        source,
        sourceWords,
        writtenAt,
        date,
        version,
        turned);
  }

  /** The last run there is: as left, else as found. */
  public RunPart last() {
    return asLeft.or(() -> asFound).orElseThrow();
  }

  /** Maker and model; empty where neither is noted. */
  String make() {
    return (details.of(Detail.MAKER) + " " + details.of(Detail.MODEL)).strip();
  }

  /**
   * The same for a stranger: without the owner's name, wherever it stands, and the complaint. Maker
   * and model take the place of the owner's label, where they are noted.
   */
  PageInput forSale() {
    UnaryOperator<String> nameless = nameless(details.of(Detail.OWNER));
    Map<Detail, String> kept = new EnumMap<>(Detail.class);
    details.noted().forEach((detail, words) -> kept.put(detail, nameless.apply(words)));
    kept.keySet().removeAll(Set.of(Detail.OWNER, Detail.COMPLAINT, Detail.ANSWER, Detail.FILM));
    return new PageInput(
        make().isEmpty() ? nameless.apply(camera) : make(),
        serialNumber,
        jobNumber,
        new Details(kept),
        shutterKind,
        dial,
        asFound,
        asLeft,
        lists.stream().map(line -> line.withRemark(nameless.apply(line.remark()))).toList(),
        alsoTried,
        workDone.stream().map(nameless).toList(),
        moved,
        notTested.stream().map(nameless).toList(),
        standing,
        stillWet,
        stopTables,
        measuredFNumber,
        source,
        sourceWords,
        writtenAt,
        date,
        version,
        turns.stream().map(nameless).toList());
  }

  private static UnaryOperator<String> nameless(String owner) {
    if (owner.isEmpty()) {
      return words -> words;
    }
    // The whole name, and each longer word of it: a surname alone tells as much.
    String words =
        Stream.concat(
                Stream.of(Pattern.quote(owner)),
                Arrays.stream(owner.split("[\\s,.]+"))
                    .filter(word -> word.length() >= SHORTEST_NAME)
                    .map(
                        word -> "(?<![\\p{L}\\p{N}])" + Pattern.quote(word) + "(?![\\p{L}\\p{N}])"))
            .collect(Collectors.joining("|", "(?:", ")(?:['\u2019]s)?"));
    Pattern name = Pattern.compile(words, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    return said -> name.matcher(said).replaceAll("\u2026").strip();
  }
}
