package org.halflight.session;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.halflight.speeds.Tolerances;

/**
 * What the verdicts of a run are about, chosen before its first firing.
 *
 * @param chosen what is not usual, by its option of {@link RunOption#CRITERIA}
 */
public record AcceptanceCriteria(Map<RunOption<?>, Object> chosen) {
  /** Usual tolerances, the usual exposure of each setting, a fixed number of firings. */
  public static final AcceptanceCriteria USUAL = new AcceptanceCriteria(Map.of());

  public AcceptanceCriteria {
    Map<RunOption<?>, Object> others = new LinkedHashMap<>(chosen);
    others.entrySet().removeIf(each -> each.getValue().equals(each.getKey().usual()));
    chosen = Map.copyOf(others);
  }

  /** What was chosen, or the usual. */
  @SuppressWarnings("unchecked") // put in by 'with' alone, under the same type
  public <T> T get(RunOption<T> option) {
    return (T) chosen.getOrDefault(option, option.usual());
  }

  /** The same criteria but for one. */
  public <T> AcceptanceCriteria with(RunOption<T> option, T value) {
    Map<RunOption<?>, Object> others = new LinkedHashMap<>(chosen);
    others.put(option, value);
    return new AcceptanceCriteria(others);
  }

  /** The value of an option as {@link RunOption#find} reads it; empty for the usual one. */
  public <T> String text(RunOption<T> option) {
    return option.text(get(option));
  }

  /** What is kept of them, by name; only what is not usual. */
  public Map<String, String> written(RunOption.In place) {
    Map<String, String> written = new LinkedHashMap<>();
    RunOption.CRITERIA.stream()
        .filter(chosen::containsKey)
        .forEach(option -> written.put(option.name(place), stored(option, place)));
    return written;
  }

  private <T> String stored(RunOption<T> option, RunOption.In place) {
    return option.stored(get(option), place);
  }

  /**
   * The criteria that were kept; other names are passed over.
   *
   * @throws IllegalArgumentException where one makes no sense
   */
  public static AcceptanceCriteria read(Map<String, String> written, RunOption.In place) {
    Map<RunOption<?>, Object> chosen = new LinkedHashMap<>();
    for (RunOption<?> option : RunOption.CRITERIA) {
      String text = written.get(option.name(place));
      if (text != null) {
        chosen.put(option, option.read(text, place));
      }
    }
    return new AcceptanceCriteria(chosen);
  }

  /** What each speed is held against. */
  public Tolerances tolerances() {
    return get(RunOption.TOLERANCE);
  }

  /** What is decided on. */
  public Measurand measurand() {
    return get(RunOption.ABOUT);
  }

  /** Whether a speed is fired until its verdict is in. */
  public boolean untilDecided() {
    return get(RunOption.UNTIL_DECIDED);
  }

  /** Whether each speed is fired once, and then the largest error until it is known. */
  public boolean isQuick() {
    return get(RunOption.QUICK);
  }

  /** What an aperture check is about. */
  public StopsAsked stops() {
    return new StopsAsked(get(RunOption.STOPS), get(RunOption.STOP_TOLERANCE));
  }

  /**
   * How far ahead of the shutter the advance may unlock on a screw plunger, where that was asked.
   */
  public Optional<GapLimits> linkageGap() {
    return get(RunOption.LINKAGE_GAP);
  }

  /** Whether the run is a stage of assembly. */
  public boolean stages() {
    return get(RunOption.STAGES);
  }

  /** Whether the flash contact is wired and asked about. */
  public boolean flashContact() {
    return get(RunOption.CONTACT);
  }
}
