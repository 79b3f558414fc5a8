package org.halflight.stored;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The words that the constants of an enum have in files and where they are typed. Each is written
 * out, so that a constant can be called otherwise in the code and old files are read for ever.
 *
 * <p>Safe for use by several threads.
 *
 * @param <E> the enum
 */
public final class StoredWords<E extends Enum<E>> {
  /** Both ways; the words are in the order of the constants. */
  private record Lists<E>(Map<E, String> words, Map<String, E> constants) {}

  private final Class<E> type;
  private final Function<E, String> word;

  /**
   * Made at first use. While an enum is still being initialised, a switch over it must not run: the
   * compiler keeps what the switches of a class need in one other class, where enums that stand
   * side by side would wait for each other.
   */
  private volatile @Nullable Lists<E> lists;

  private StoredWords(Class<E> type, Function<E, String> word) {
    this.type = type;
    this.word = word;
  }

  /**
   * The words of an enum. That each is there and none twice is found out at first use.
   *
   * @param word gives the word of each constant; a switch without a default, so that no constant is
   *     forgotten
   */
  public static <E extends Enum<E>> StoredWords<E> of(Class<E> type, Function<E, String> word) {
    return new StoredWords<>(type, word);
  }

  /**
   * The word of a constant.
   *
   * @throws IllegalArgumentException like all others, when a word is blank or two constants have
   *     the same
   */
  public String word(E constant) {
    return Objects.requireNonNull(lists().words().get(constant));
  }

  /** The constant of a word; empty where none has it. Capitals count. */
  public Optional<E> find(String word) {
    return Optional.ofNullable(lists().constants().get(word));
  }

  /**
   * The constant of a word.
   *
   * @throws IllegalArgumentException when none has it; says which words there are
   */
  public E parse(String word) {
    return find(word)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "'" + word + "' is none of " + String.join(", ", all())));
  }

  /** All words, in the order of the constants. */
  public List<String> all() {
    return List.copyOf(lists().words().values());
  }

  private Lists<E> lists() {
    Lists<E> made = lists;
    if (made == null) {
      // Two threads may both make them; they are the same.
      made = make();
      lists = made;
    }
    return made;
  }

  private Lists<E> make() {
    Map<E, String> words = new LinkedHashMap<>();
    Map<String, E> constants = new LinkedHashMap<>();
    for (E constant : type.getEnumConstants()) {
      String its = word.apply(constant);
      if (its.isBlank() || constants.put(its, constant) != null) {
        throw new IllegalArgumentException(
            "a constant of " + type.getSimpleName() + " has no word of its own: '" + its + "'");
      }
      words.put(constant, its);
    }
    return new Lists<>(words, constants);
  }
}
