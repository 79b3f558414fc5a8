package org.halflight.speeds;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The marked speeds of a shutter. What a dial offers is common practice, no source; the exact times
 * behind modern markings are APEX.
 *
 * @param name its key, as in files and commands; what a person reads is worded elsewhere
 * @param speeds from slow to fast, at least one, no two of the same time
 * @param reference the time that a marking is held against unless the user says otherwise
 */
public record Dial(String name, List<MarkedSpeed> speeds, Reference reference) {
  /** The name of every dial that the user made from a list. */
  public static final String CUSTOM = "custom";

  private static final Set<String> UNTIMED = Set.of("B", "T", "X", "");

  private static final List<Dial> BUILT_IN =
      List.of(
          builtIn("leaf", Reference.EXACT, "1,1/2,1/4,1/8,1/15,1/30,1/60,1/125,1/250,1/500"),
          builtIn(
              "curtain", Reference.EXACT, "1,1/2,1/4,1/8,1/15,1/30,1/60,1/125,1/250,1/500,1/1000"),
          builtIn("older-leaf", Reference.LITERAL, "1,1/2,1/5,1/10,1/25,1/50,1/100,1/250"),
          builtIn("older-leaf-300", Reference.LITERAL, "1,1/2,1/5,1/10,1/25,1/50,1/100,1/300"),
          builtIn("older-leaf-400", Reference.LITERAL, "1,1/2,1/5,1/10,1/25,1/50,1/100,1/400"),
          builtIn("simple-older", Reference.LITERAL, "1/25,1/50,1/100"));

  public Dial {
    speeds = List.copyOf(speeds);
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("a dial has at least one marked speed");
    }
    for (int i = 1; i < speeds.size(); i++) {
      if (!(speeds.get(i).literalSeconds() < speeds.get(i - 1).literalSeconds())) {
        throw new IllegalArgumentException(
            "marked speeds go from slow to fast: " + speeds.get(i - 1) + ", " + speeds.get(i));
      }
    }
  }

  private static Dial builtIn(String name, Reference reference, String list) {
    return new Dial(name, custom(list).orElseThrow().speeds(), reference);
  }

  /** The dials that are built in. */
  public static List<Dial> builtIn() {
    return BUILT_IN;
  }

  /** The names of the dials that are built in. */
  public static List<String> names() {
    return BUILT_IN.stream().map(Dial::name).toList();
  }

  /** The built-in dial of a name, empty where there is none. */
  public static Optional<Dial> find(String name) {
    return BUILT_IN.stream().filter(dial -> dial.name.equals(name)).findFirst();
  }

  /**
   * A dial from a list of markings with commas or semicolons between, in any order; B, T and X may
   * stand in it and are left out, and a marking that comes twice counts once. Taken literally as
   * soon as one marking stands for no power of two, as on the older 1-2-5-10-25-50-100 dials: on
   * such a dial the others are meant literally too.
   *
   * @return empty where an entry is no marking, or none is left
   */
  public static Optional<Dial> custom(String list) {
    return custom(DecimalComma.separated(list)).or(() -> custom(DecimalComma.pointedEach(list)));
  }

  private static Optional<Dial> custom(List<String> list) {
    List<MarkedSpeed> speeds = new ArrayList<>();
    for (String entry : list) {
      if (UNTIMED.contains(entry.strip())) {
        continue;
      }
      Optional<MarkedSpeed> speed = MarkedSpeed.find(entry);
      if (speed.isEmpty()) {
        return Optional.empty();
      }
      if (speeds.stream().noneMatch(s -> s.literalSeconds() == speed.get().literalSeconds())) {
        speeds.add(speed.get());
      }
    }
    if (speeds.isEmpty()) {
      return Optional.empty();
    }
    speeds.sort(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed());
    boolean modern = speeds.stream().allMatch(MarkedSpeed::standsForPowerOfTwo);
    return Optional.of(new Dial(CUSTOM, speeds, modern ? Reference.EXACT : Reference.LITERAL));
  }

  /**
   * The dial of a key, {@code leaf} or {@code 1,1/2,1/5}; empty where it names none, as {@code
   * custom} does in files of versions that did not keep the speeds.
   */
  public static Optional<Dial> ofKey(String key) {
    return find(key).or(() -> custom(key));
  }

  /** What files keep of it: its name, or its speeds with commas between where it is no built-in. */
  public String key() {
    return find(name).filter(this::hasSpeedsOf).isPresent()
        ? name
        : speeds.stream().map(MarkedSpeed::label).collect(Collectors.joining(","));
  }

  private boolean hasSpeedsOf(Dial other) {
    return speeds.equals(other.speeds);
  }

  /** The marked speed of this dial that a text names, empty where it has none such. */
  public Optional<MarkedSpeed> speed(String text) {
    return MarkedSpeed.find(text)
        .flatMap(
            asked ->
                speeds.stream()
                    .filter(s -> s.literalSeconds() == asked.literalSeconds())
                    .findFirst());
  }

  /** The fastest marked speed. */
  public MarkedSpeed top() {
    return speeds.get(speeds.size() - 1);
  }

  /** The next slower marked speed, empty at the slow end and for a speed not on this dial. */
  public Optional<MarkedSpeed> slower(MarkedSpeed speed) {
    int at = speeds.indexOf(speed);
    return at > 0 ? Optional.of(speeds.get(at - 1)) : Optional.empty();
  }

  /** The next faster marked speed, empty at the top and for a speed not on this dial. */
  public Optional<MarkedSpeed> faster(MarkedSpeed speed) {
    int at = speeds.indexOf(speed);
    return at >= 0 && at + 1 < speeds.size() ? Optional.of(speeds.get(at + 1)) : Optional.empty();
  }
}
