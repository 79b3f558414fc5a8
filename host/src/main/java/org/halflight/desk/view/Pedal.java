package org.halflight.desk.view;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.halflight.session.Question;
import org.halflight.workflow.Prompt;

/**
 * A foot switch that types a key. One key does what the bench proposes, another takes the last
 * firing back; both are learnt by pressing them. What is asked anew is not answered for a second: a
 * foot that was on its way to something else must not answer what nobody has read. For the window's
 * own thread.
 */
public final class Pedal {
  /** So long after something new is asked a pedal is not heard, in nanoseconds. */
  public static final long UNREAD_NANOS = 1_000_000_000;

  /** What a pedal is for. */
  public enum Use {
    /** Does what the bench proposes. */
    GO,
    /** Takes the last firing out of the count. */
    BACK
  }

  /**
   * A key of a keyboard.
   *
   * @param code its number
   * @param location which one, where a keyboard has several
   */
  public record Key(int code, int location) {
    private static final int NONE = 0;

    /** A key as it is written, such as {@code 61440:1}; empty where it is none. */
    public static Optional<Key> parse(String written) {
      String[] parts = written.split(":", -1);
      try {
        return parts.length == 2
            ? Optional.of(new Key(Integer.parseInt(parts[0]), Integer.parseInt(parts[1])))
            : Optional.empty();
      } catch (NumberFormatException noKey) {
        return Optional.empty();
      }
    }

    @Override
    public String toString() {
      return code + ":" + location;
    }
  }

  /** What became of a key that was pressed to be learnt. */
  public enum Lesson {
    LEARNT,
    /** It does something already. */
    HAS_A_MEANING,
    /** The other pedal types it. */
    IS_THE_OTHER,
    /** The keyboard gives it no number by which it could be known again. */
    HAS_NO_NUMBER
  }

  /** What a person is asked, as far as a new question can be told from it. */
  private record Asked(
      UserAction place,
      Optional<Question> question,
      Optional<Prompt> test,
      Optional<Prompt> light,
      Optional<Prompt> linkage,
      boolean hangs) {
    static Asked of(BenchView view, UserAction place) {
      return new Asked(
          place,
          // Firings that join a question leave it the same.
          view.question().map(q -> new Question(q.kind(), q.shown(), q.other(), List.of())),
          asking(view.lightTest().prompt()),
          asking(view.light().prompt()),
          asking(view.linkage().prompt()),
          view.openSeconds().isPresent());
    }

    private static Optional<Prompt> asking(Prompt prompt) {
      return Optional.of(prompt).filter(its -> its.state() == Prompt.State.ASKING);
    }
  }

  private final LongSupplier nanos;
  private final Map<Use, Key> keys = new EnumMap<>(Use.class);
  private Optional<Use> learning = Optional.empty();
  private Optional<Asked> asked = Optional.empty();
  private long askedNanos;

  /**
   * @param nanos a clock that only goes on
   * @param learnt keys of earlier times
   */
  public Pedal(LongSupplier nanos, Map<Use, Key> learnt) {
    this.nanos = nanos;
    keys.putAll(learnt);
  }

  /** The keys that are learnt. */
  public Map<Use, Key> learnt() {
    return Map.copyOf(keys);
  }

  /** Other keys are pedals from here on. */
  public void learnt(Map<Use, Key> others) {
    forget();
    keys.putAll(others);
  }

  /** What a key is for, as a pedal. */
  public Optional<Use> use(Key key) {
    return keys.entrySet().stream()
        .filter(known -> known.getValue().equals(key))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** The next key that is pressed becomes this pedal. */
  public void learn(Use use) {
    learning = Optional.of(use);
  }

  /** What the next key is learnt for. */
  public Optional<Use> learning() {
    return learning;
  }

  /** No key is learnt after all. */
  public void learnsNothing() {
    learning = Optional.empty();
  }

  /** No key is a pedal from here on. */
  public void forget() {
    keys.clear();
    learning = Optional.empty();
  }

  /**
   * A key is pressed while one is to be learnt; that goes on until a key will do.
   *
   * @param hasMeaning whether the key does something without being a pedal
   */
  public Lesson lesson(Key key, boolean hasMeaning) {
    Use use = learning.orElseThrow();
    if (key.code() == Key.NONE) {
      return Lesson.HAS_NO_NUMBER;
    }
    if (hasMeaning) {
      return Lesson.HAS_A_MEANING;
    }
    if (use(key).filter(its -> its != use).isPresent()) {
      return Lesson.IS_THE_OTHER;
    }
    keys.put(use, key);
    learning = Optional.empty();
    return Lesson.LEARNT;
  }

  /** The person sees this now, at this place. */
  public void sees(BenchView view, UserAction place) {
    Optional<Asked> now = Optional.of(Asked.of(view, place));
    if (!now.equals(asked)) {
      // Before the first view nothing was asked, so nothing is new.
      askedNanos = asked.isPresent() ? nanos.getAsLong() : nanos.getAsLong() - UNREAD_NANOS;
      asked = now;
    }
  }

  /** Whether what is asked has been there long enough to be read. */
  public boolean isHeard() {
    return nanos.getAsLong() - askedNanos >= UNREAD_NANOS;
  }
}
