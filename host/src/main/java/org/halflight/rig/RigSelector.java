package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.words.Words;

/**
 * Which rig is looked for, and how far.
 *
 * @param serial its serial number, if it must be that one
 * @param bootCount for a rig without a serial number that was there before: how often it had
 *     started then
 * @param everyPort whether ports that do not look like a board are opened too
 */
public record RigSelector(Optional<String> serial, OptionalLong bootCount, boolean everyPort) {
  /** A rig may have been plugged in anew so often before it is found again. */
  private static final long STARTS_IN_BETWEEN_MOST = 20;

  /** Any rig, if there is only one, on a port that looks like a board. */
  public static RigSelector any() {
    return new RigSelector(Optional.empty(), OptionalLong.empty(), false);
  }

  /** The rig of a serial number. */
  public static RigSelector of(String serial) {
    return new RigSelector(Optional.of(serial), OptionalLong.empty(), false);
  }

  /** The same rig as one that was there before. */
  static RigSelector again(Greeting greeting, boolean everyPort) {
    return RigNames.hasSerial(greeting)
        ? new RigSelector(Optional.of(greeting.serial()), OptionalLong.empty(), everyPort)
        : new RigSelector(Optional.empty(), OptionalLong.of(greeting.bootCount()), everyPort);
  }

  /** The same rig, on ports of any kind. */
  public RigSelector onEveryPort() {
    return new RigSelector(serial, bootCount, true);
  }

  /** Whether any rig will do, if there is only one. */
  boolean isAny() {
    return serial.isEmpty() && bootCount.isEmpty();
  }

  /** Whether a rig is the one for certain, so that no other needs to be asked. */
  boolean isSurely(Greeting greeting) {
    return serial.filter(wanted -> wanted.equals(greeting.serial())).isPresent();
  }

  /** The rig that is meant among those that answered; empty when none is or several may be. */
  Optional<OpenRig> choose(List<OpenRig> rigs) {
    if (serial.isPresent()) {
      return rigs.stream().filter(rig -> isSurely(rig.greeting())).findFirst();
    }
    if (bootCount.isEmpty()) {
      return onlyOne(rigs);
    }
    List<OpenRig> unnamed =
        rigs.stream().filter(rig -> !RigNames.hasSerial(rig.greeting())).toList();
    return onlyOne(unnamed).or(() -> onlyOne(unnamed.stream().filter(this::mayHaveRunOn).toList()));
  }

  private boolean mayHaveRunOn(OpenRig rig) {
    long starts = rig.greeting().bootCount() - bootCount.getAsLong();
    return starts >= 0 && starts <= STARTS_IN_BETWEEN_MOST;
  }

  private static Optional<OpenRig> onlyOne(List<OpenRig> rigs) {
    return rigs.size() == 1 ? Optional.of(rigs.get(0)) : Optional.empty();
  }

  /** Why none of the rigs that answered was chosen, and what to do. */
  String whyNone(List<PortOutcome> rigs) {
    String found =
        rigs.stream()
            .map(rig -> Words.say("rig.nameOn", rig.name().orElse(""), rig.candidate().path()))
            .collect(Collectors.joining(", "));
    if (serial.isPresent()) {
      return Words.say("rig.other", serial.get(), found);
    }
    if (bootCount.isPresent()
        && rigs.stream().allMatch(r -> RigNames.hasSerial(r.greeting().orElseThrow()))) {
      return Words.say("rig.other.noSerial", found);
    }
    return Words.say("rig.several", rigs.size(), found);
  }
}
