package org.halflight.job;

import java.util.Arrays;
import java.util.List;
import org.halflight.stored.StoredWords;

/** What is noted in words of a camera, or of one of its visits, beside what the bench needs. */
public enum Detail {
  MAKER,
  MODEL,
  LENS,
  /** The serial number of the lens or the shutter. */
  SECOND_SERIAL,
  /** What the owner says is wrong, in their words. */
  COMPLAINT,
  /** What the workshop answers to it. */
  ANSWER,
  OWNER,
  /** Whether film is inside: {@link #YES}, {@link #NO}, or nobody knows. */
  FILM,
  /** Which lubricant went where. */
  LUBRICANT;

  public static final String YES = "yes";
  public static final String NO = "no";

  /** As files store them and as they are typed. */
  public static final StoredWords<Detail> WORDS =
      StoredWords.of(
          Detail.class,
          detail ->
              switch (detail) {
                case MAKER -> "maker";
                case MODEL -> "model";
                case LENS -> "lens";
                case SECOND_SERIAL -> "second-serial";
                case COMPLAINT -> "complaint";
                case ANSWER -> "answer";
                case OWNER -> "owner";
                case FILM -> "film";
                case LUBRICANT -> "lubricant";
              });

  /** Those of a camera. */
  public static final List<Detail> OF_CAMERA =
      Arrays.stream(values()).filter(detail -> !detail.isOfVisit()).toList();

  /** Those of a visit. */
  public static final List<Detail> OF_VISIT =
      Arrays.stream(values()).filter(Detail::isOfVisit).toList();

  /** Whether it may be another one at the next visit. */
  public boolean isOfVisit() {
    return switch (this) {
      case MAKER, MODEL, LENS, SECOND_SERIAL -> false;
      case COMPLAINT, ANSWER, OWNER, FILM, LUBRICANT -> true;
    };
  }
}
