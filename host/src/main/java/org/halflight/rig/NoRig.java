package org.halflight.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.link.PortCandidate;
import org.halflight.link.PortSurvey;
import org.halflight.link.PortSurvey.Service;
import org.halflight.rig.PortOutcome.Finding;
import org.halflight.words.Words;

/**
 * Why there is no rig, judged from what the ports answered and what the system says of them. What
 * was seen comes before what is only possible; the order of the possible is common practice, no
 * source.
 */
public final class NoRig {
  /** A reason; those that were seen in order of likelihood, then those that are only possible. */
  public enum Reason {
    /** Rigs are there, but not the one that is meant, or several. */
    WHICH_RIG,
    /** A rig whose line protocol is older than this program's. */
    OLDER_FIRMWARE,
    /** A rig whose line protocol is newer. */
    NEWER_FIRMWARE,
    /** The person may not use the port. */
    NO_PERMISSION,
    /** A program has the port. */
    HELD,
    /** A board is plugged in but its USB chip got no port. */
    NO_DRIVER,
    /** A board answers, but not as a rig. */
    OTHER_FIRMWARE,
    /** Nothing answers on a likely port. */
    SILENT,
    /** The port could not be opened for another reason. */
    UNUSABLE,
    /** A program that tries new ports may be at it. */
    SERVICE,
    /** There are ports, but none looks like a board. */
    NOT_OPENED,
    /** The board is not plugged in, or its cable only charges. */
    CABLE,
    /** The driver may be missing, which the system shows elsewhere. */
    MAYBE_DRIVER
  }

  /**
   * One reason.
   *
   * @param sentence what it is and what to do
   */
  public record Cause(Reason reason, String sentence) {}

  private NoRig() {}

  /**
   * The causes, the likeliest first; at least one.
   *
   * @param survey of all ports
   * @param outcomes of the ports that were asked
   */
  public static List<Cause> causes(PortSurvey survey, List<PortOutcome> outcomes) {
    List<Cause> causes = new ArrayList<>();
    for (PortOutcome outcome : outcomes) {
      if (outcome.finding() != Finding.RIG) {
        causes.add(of(outcome, survey));
      }
    }
    if (!survey.chipsWithoutPort().isEmpty()) {
      causes.add(
          cause(
              Reason.NO_DRIVER,
              survey.services().contains(Service.BRLTTY) ? "rig.none.chip.brltty" : "rig.none.chip",
              String.join(", ", survey.chipsWithoutPort())));
    }
    causes.sort(Comparator.comparing(Cause::reason));
    causes.addAll(possible(survey, causes));
    return causes;
  }

  private static Cause of(PortOutcome outcome, PortSurvey survey) {
    return switch (outcome.finding()) {
      case OTHER_PROTOCOL ->
          new Cause(
              outcome.greeting().filter(its -> its.protocol() < RigFinder.PROTOCOL).isPresent()
                  ? Reason.OLDER_FIRMWARE
                  : Reason.NEWER_FIRMWARE,
              outcome.sentence());
      case NO_PERMISSION -> new Cause(Reason.NO_PERMISSION, outcome.sentence());
      case BUSY -> held(outcome, survey);
      case NO_RIG -> new Cause(Reason.OTHER_FIRMWARE, outcome.sentence());
      case SILENT -> new Cause(Reason.SILENT, outcome.sentence());
      case UNUSABLE, RIG -> new Cause(Reason.UNUSABLE, outcome.sentence());
    };
  }

  private static Cause held(PortOutcome outcome, PortSurvey survey) {
    String path = outcome.candidate().path();
    Optional<String> holder = holder(path, survey);
    if (holder.isPresent()) {
      return cause(Reason.HELD, "rig.none.held", path, holder.get());
    }
    return survey.services().contains(Service.MODEM_MANAGER)
        ? cause(Reason.HELD, "rig.none.held.modemManager", path)
        : new Cause(Reason.HELD, outcome.sentence());
  }

  private static Optional<String> holder(String path, PortSurvey survey) {
    return survey.ports().stream()
        .filter(seen -> seen.port().path().equals(path))
        .findFirst()
        .flatMap(PortSurvey.Seen::holder);
  }

  /** What may be as well, where nothing that was seen is the whole reason. */
  private static List<Cause> possible(PortSurvey survey, List<Cause> seen) {
    List<Cause> possible = new ArrayList<>();
    boolean mayBeAnotherDevice =
        seen.stream().allMatch(each -> each.reason().compareTo(Reason.OTHER_FIRMWARE) >= 0);
    if (!mayBeAnotherDevice) {
      return possible;
    }
    List<PortCandidate> ports = survey.ports().stream().map(PortSurvey.Seen::port).toList();
    boolean likely = ports.stream().anyMatch(PortCandidate::likelyBoard);
    if (likely && survey.services().contains(Service.MODEM_MANAGER)) {
      possible.add(cause(Reason.SERVICE, "rig.none.modemManager"));
    } else if (!likely && survey.services().contains(Service.BRLTTY)) {
      possible.add(cause(Reason.SERVICE, "rig.none.brltty"));
    }
    possible.add(cause(Reason.CABLE, likely ? "rig.none.cable.others" : "rig.none.cable"));
    if (!likely && survey.system() == PortSurvey.Kind.WINDOWS) {
      possible.add(cause(Reason.MAYBE_DRIVER, "rig.none.driver.windows"));
    } else if (!likely && survey.system() == PortSurvey.Kind.MACOS) {
      possible.add(cause(Reason.MAYBE_DRIVER, "rig.none.driver.macos"));
    }
    if (!likely && !ports.isEmpty()) {
      String paths = ports.stream().map(PortCandidate::path).collect(Collectors.joining(", "));
      boolean first = ports.stream().anyMatch(NoRig::isUsb);
      possible.add(
          first ? 0 : possible.size(), cause(Reason.NOT_OPENED, "rig.search.notOpened", paths));
    }
    return possible;
  }

  /** Built-in ports are always there; one on USB was plugged in by somebody. */
  private static boolean isUsb(PortCandidate port) {
    return (port.path() + port.description()).toLowerCase(Locale.ROOT).contains("usb")
        || port.path().contains("ACM");
  }

  private static Cause cause(Reason reason, String key, Object... parts) {
    return new Cause(reason, Words.say(key, parts));
  }
}
