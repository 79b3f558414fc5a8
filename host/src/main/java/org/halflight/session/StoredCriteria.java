package org.halflight.session;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.halflight.speeds.Tolerances;

/**
 * The one way in which an {@link AcceptanceCriteria} is written and read as text. Files call its
 * parts by names of their own; only what is not usual is there. What cannot be read is never taken
 * for the usual.
 */
public final class StoredCriteria {
  /** What acceptance criteria are made of. */
  public enum Part {
    /** As {@link Tolerances#text} writes it. */
    TOLERANCE,
    /** A word of {@link Measurand#WORDS}. */
    MEASURAND,
    /** There where a speed is fired until its verdict is in. */
    UNTIL_DECIDED,
    /** The stops of a stop check, with commas between. */
    STOPS,
    /** How far a stop may be off, in stops. */
    STOP_TOLERANCE,
    /** As {@link LinkageLimits#text} writes it. */
    LINKAGE,
    /** There where the flash contact is wired. */
    FLASH_CONTACT
  }

  /** A part that cannot be read. */
  public static final class Unreadable extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final Part part;
    private final String text;

    Unreadable(Part part, String name, String text) {
      super(name + " cannot be read: " + text);
      this.part = part;
      this.text = text;
    }

    /** Which part it is. */
    public Part part() {
      return part;
    }

    /** What stands there. */
    public String text() {
      return text;
    }
  }

  private final Map<Part, String> names;
  private final String untilDecided;
  private final String flashContact;

  /**
   * The criteria of one kind of file.
   *
   * @param names what it calls each part
   * @param untilDecided its word for a speed that is fired until it is decided
   * @param flashContact its word for a contact that is wired
   */
  public StoredCriteria(Map<Part, String> names, String untilDecided, String flashContact) {
    this.names = Map.copyOf(names);
    this.untilDecided = Objects.requireNonNull(untilDecided);
    this.flashContact = Objects.requireNonNull(flashContact);
  }

  /** What is written of criteria, by name. */
  public Map<String, String> write(AcceptanceCriteria criteria) {
    Map<String, String> written = new LinkedHashMap<>();
    if (!criteria.tolerances().areUsual()) {
      written.put(name(Part.TOLERANCE), criteria.tolerances().text());
    }
    if (criteria.measurand() != Measurand.MEAN_OF_SETTING) {
      written.put(name(Part.MEASURAND), Measurand.WORDS.word(criteria.measurand()));
    }
    if (criteria.untilDecided()) {
      written.put(name(Part.UNTIL_DECIDED), untilDecided);
    }
    if (!criteria.stops().markings().equals(StopsAsked.USUAL.markings())) {
      written.put(name(Part.STOPS), String.join(",", criteria.stops().markings()));
    }
    if (criteria.stops().toleranceStops() != StopsAsked.USUAL_TOLERANCE_STOPS) {
      written.put(name(Part.STOP_TOLERANCE), Double.toString(criteria.stops().toleranceStops()));
    }
    if (!criteria.linkage().equals(LinkageLimits.USUAL)) {
      written.put(name(Part.LINKAGE), criteria.linkage().text());
    }
    if (criteria.flashContact()) {
      written.put(name(Part.FLASH_CONTACT), flashContact);
    }
    return written;
  }

  /**
   * The criteria that were written; other names are passed over.
   *
   * @throws Unreadable where a part makes no sense
   */
  public AcceptanceCriteria read(Map<String, String> written) {
    return new AcceptanceCriteria(
        find(written, Part.TOLERANCE).map(this::tolerances).orElse(Tolerances.USUAL),
        find(written, Part.MEASURAND).map(this::measurand).orElse(Measurand.MEAN_OF_SETTING),
        isSaid(written, Part.UNTIL_DECIDED, untilDecided),
        new StopsAsked(
            find(written, Part.STOPS).map(this::stops).orElse(StopsAsked.USUAL.markings()),
            find(written, Part.STOP_TOLERANCE)
                .map(this::stopTolerance)
                .orElse(StopsAsked.USUAL_TOLERANCE_STOPS)),
        find(written, Part.LINKAGE).map(this::linkage).orElse(LinkageLimits.USUAL),
        isSaid(written, Part.FLASH_CONTACT, flashContact));
  }

  private String name(Part part) {
    return names.get(part);
  }

  private Optional<String> find(Map<String, String> written, Part part) {
    return Optional.ofNullable(written.get(name(part)));
  }

  private boolean isSaid(Map<String, String> written, Part part, String word) {
    Optional<String> said = find(written, part);
    if (said.isPresent() && !said.get().equals(word)) {
      throw unreadable(part, said.get());
    }
    return said.isPresent();
  }

  private Tolerances tolerances(String text) {
    return Tolerances.find(text).orElseThrow(() -> unreadable(Part.TOLERANCE, text));
  }

  private Measurand measurand(String text) {
    return Measurand.WORDS.find(text).orElseThrow(() -> unreadable(Part.MEASURAND, text));
  }

  private LinkageLimits linkage(String text) {
    return LinkageLimits.find(text).orElseThrow(() -> unreadable(Part.LINKAGE, text));
  }

  private List<String> stops(String text) {
    List<String> stops = Arrays.asList(text.split(",", -1));
    try {
      return new StopsAsked(stops, StopsAsked.USUAL_TOLERANCE_STOPS).markings();
    } catch (IllegalArgumentException noStops) {
      throw unreadable(Part.STOPS, text);
    }
  }

  private double stopTolerance(String text) {
    try {
      return new StopsAsked(StopsAsked.USUAL.markings(), Double.parseDouble(text)).toleranceStops();
    } catch (IllegalArgumentException noTolerance) {
      throw unreadable(Part.STOP_TOLERANCE, text);
    }
  }

  private Unreadable unreadable(Part part, String text) {
    return new Unreadable(part, name(part), text);
  }
}
