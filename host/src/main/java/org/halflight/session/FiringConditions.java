package org.halflight.session;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * The special conditions of a firing, as the person said them. What it does not say is as the run
 * was set up.
 *
 * @param said in the order of their constants; of each kind one at most
 */
public record FiringConditions(SortedSet<FiringCondition> said) {
  /** Nothing special. */
  public static final FiringConditions NONE = new FiringConditions(Collections.emptySortedSet());

  /**
   * Conditions of different kinds.
   *
   * @throws IllegalArgumentException when two contradict each other
   */
  public FiringConditions {
    said = Collections.unmodifiableSortedSet(new TreeSet<>(said));
    if (said.stream().map(FiringCondition::kind).distinct().count() < said.size()) {
      throw new IllegalArgumentException("these contradict each other: " + said);
    }
  }

  private static FiringConditions of(Collection<FiringCondition> said) {
    return new FiringConditions(new TreeSet<>(said));
  }

  /**
   * Conditions as files store them.
   *
   * @param words with spaces between; empty for none
   * @throws IllegalArgumentException when one is unknown, or two contradict each other
   */
  public static FiringConditions parse(String words) {
    return words.isBlank()
        ? NONE
        : of(Arrays.stream(words.strip().split("\\s+")).map(FiringCondition.WORDS::parse).toList());
  }

  /** As {@link #parse} reads them. */
  public String words() {
    return said.stream().map(FiringCondition.WORDS::word).collect(Collectors.joining(" "));
  }

  /** Whether nothing is special. */
  public boolean isEmpty() {
    return said.isEmpty();
  }

  /** Whether a condition is among them. */
  public boolean has(FiringCondition condition) {
    return said.contains(condition);
  }

  /** The one of a kind. */
  public Optional<FiringCondition> of(FiringCondition.Kind kind) {
    return said.stream().filter(each -> each.kind() == kind).findFirst();
  }

  /** With one more, in the place of the one that contradicts it. */
  public FiringConditions with(FiringCondition condition) {
    TreeSet<FiringCondition> all = new TreeSet<>(without(condition.kind()).said);
    all.add(condition);
    return of(all);
  }

  /** With one more; without it where it is there already. */
  public FiringConditions toggled(FiringCondition condition) {
    return has(condition) ? without(condition.kind()) : with(condition);
  }

  /** Without the one of a kind. */
  public FiringConditions without(FiringCondition.Kind kind) {
    return only(each -> each.kind() != kind);
  }

  /** Those that last, as others have them; those of one firing as here. */
  public FiringConditions lastingAs(FiringConditions others) {
    TreeSet<FiringCondition> all = new TreeSet<>(only(each -> !each.kind().isLasting()).said);
    all.addAll(others.only(each -> each.kind().isLasting()).said);
    return of(all);
  }

  /**
   * Those that set a firing apart from the rest of its run: what the whole run was set up for is
   * nothing special in it.
   */
  FiringConditions within(RunConditions run) {
    return only(each -> !isUsual(each, run));
  }

  /** The conditions of a kind that are special in a run. */
  public static List<FiringCondition> special(FiringCondition.Kind kind, RunConditions run) {
    return FiringCondition.of(kind).stream().filter(each -> !isUsual(each, run)).toList();
  }

  /** A run whose set-up says no attitude is fired with the lens level. */
  private static boolean isUsual(FiringCondition condition, RunConditions run) {
    String ofRun = FiringCondition.ofRun(condition.kind()).map(run::get).orElse("");
    return ofRun.isBlank()
        ? condition == FiringCondition.LENS_LEVEL
        : ofRun.equals(FiringCondition.WORDS.word(condition));
  }

  /**
   * What holds of a kind: what was said of the firing, else what the run was set up for.
   *
   * @return a word of {@link FiringCondition#WORDS}, or what the run says; empty where nothing does
   */
  public String inForce(FiringCondition.Kind kind, RunConditions run) {
    return of(kind)
        .map(FiringCondition.WORDS::word)
        .orElseGet(() -> FiringCondition.ofRun(kind).map(run::get).orElse(""));
  }

  /** Without what is said of rest: such firings are known by that. */
  public FiringConditions besideRest() {
    return without(FiringCondition.Kind.REST);
  }

  private FiringConditions only(Predicate<FiringCondition> which) {
    return of(said.stream().filter(which).toList());
  }

  @Override
  public String toString() {
    return words();
  }
}
