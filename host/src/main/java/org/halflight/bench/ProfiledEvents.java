package org.halflight.bench;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.BenchEvent.Mark;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigStream;

/**
 * The events of a session with another profile than they tell of, or with none, to be replayed so.
 * The file itself stays as it is.
 */
public final class ProfiledEvents {
  private ProfiledEvents() {}

  /** As they are, where they tell of a profile; else with what a source has for their rigs. */
  public static List<BenchEvent> orElse(List<BenchEvent> events, ProfileSource source) {
    return events.stream().anyMatch(ProfiledEvents::isAboutProfile) ? events : add(events, source);
  }

  /** With what a source has for their rigs, whatever they tell. */
  public static List<BenchEvent> with(List<BenchEvent> events, ProfileSource source) {
    return add(without(events), source);
  }

  /** Without any profile. */
  public static List<BenchEvent> without(List<BenchEvent> events) {
    return events.stream().filter(event -> !isAboutProfile(event)).toList();
  }

  private static boolean isAboutProfile(BenchEvent event) {
    return event instanceof Mark mark && mark.kind().equals(ProfileMarks.PROFILE);
  }

  private static List<BenchEvent> add(List<BenchEvent> events, ProfileSource source) {
    Optional<LocalDate> on = day(events);
    List<BenchEvent> all = new ArrayList<>();
    for (String serial : rigs(events)) {
      source.forRig(serial, on).ifPresent(input -> all.add(Marks.of(0, input)));
    }
    all.addAll(events);
    return all;
  }

  private static Set<String> rigs(List<BenchEvent> events) {
    RigStream stream = new RigStream();
    Set<String> serials = new LinkedHashSet<>();
    for (BenchEvent event : events) {
      if (event instanceof BenchEvent.Received received) {
        for (RigEvent said : stream.accept(received.rigLine())) {
          if (said instanceof RigMessage.Greeting greeted) {
            serials.add(greeted.serial());
          }
        }
      }
    }
    return serials;
  }

  private static Optional<LocalDate> day(List<BenchEvent> events) {
    return events.stream()
        .flatMap(event -> Marks.beganAt(event).stream())
        .map(OffsetDateTime::toLocalDate)
        .findFirst();
  }
}
