package org.halflight.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.halflight.stored.StoredWords;

/**
 * How far a shutter is put together: three switches that stand in any order. They are noted as the
 * conditions {@link RunOption#COVER}, {@link RunOption#CELLS} and {@link RunOption#PLACE}.
 *
 * @param cover whether the cover is on
 * @param cells which cells are in
 * @param place where the shutter is
 * @param curtains whether it has curtains: then cells are no part of it, and its other parts have
 *     other names
 */
public record Assembly(boolean cover, Cells cells, Place place, boolean curtains) {
  /** On the bench, without cells and cover: where putting together begins. */
  public static final Assembly BARE = new Assembly(false, Cells.NONE, Place.BENCH);

  /** Of a shutter with blades. */
  public Assembly(boolean cover, Cells cells, Place place) {
    this(cover, cells, place, false);
  }

  /** Which lens cells are in. */
  public enum Cells {
    /** No cell. */
    NONE("off"),
    /** The rear cell alone. */
    REAR("rear"),
    /** The front cell alone. */
    FRONT("front"),
    /** Both cells. */
    BOTH("on");

    private static final StoredWords<Cells> WORDS = StoredWords.of(Cells.class, c -> c.word);

    private final String word;

    Cells(String word) {
      this.word = word;
    }

    private Cells next() {
      return switch (this) {
        case NONE -> REAR;
        case REAR -> FRONT;
        case FRONT -> BOTH;
        case BOTH -> NONE;
      };
    }
  }

  /** Where the shutter is. */
  public enum Place {
    /** On the bench, out of the camera. */
    BENCH("out"),
    /** In the camera, its retaining ring loose. */
    LOOSE("loose"),
    /** In the camera, its retaining ring tight. */
    TIGHT("in-camera");

    private static final StoredWords<Place> WORDS = StoredWords.of(Place.class, p -> p.word);

    private final String word;

    Place(String word) {
      this.word = word;
    }

    private Place next() {
      return switch (this) {
        case BENCH -> LOOSE;
        case LOOSE -> TIGHT;
        case TIGHT -> BENCH;
      };
    }
  }

  /** One of the three switches. */
  public enum Switch {
    /** Cover on or off. */
    COVER,
    /** Which cells are in. */
    CELLS,
    /** Where the shutter is. */
    PLACE;

    /** The switch of a name. */
    public static Optional<Switch> find(String name) {
      return Arrays.stream(values()).filter(one -> one.option().name().equals(name)).findFirst();
    }

    /** Every assembly that differs by this switch at most, this one first. */
    public List<Assembly> positions(Assembly of) {
      return Stream.iterate(of, this::flipped).limit(Cells.values().length).distinct().toList();
    }

    /** What it is noted as. */
    public RunOption<String> option() {
      return switch (this) {
        case COVER -> RunOption.COVER;
        case CELLS -> RunOption.CELLS;
        case PLACE -> RunOption.PLACE;
      };
    }

    /** The assembly after one flip of this switch. */
    public Assembly flipped(Assembly from) {
      return switch (this) {
        case COVER -> new Assembly(!from.cover, from.cells, from.place, from.curtains);
        case CELLS -> new Assembly(from.cover, from.cells.next(), from.place, from.curtains);
        case PLACE -> new Assembly(from.cover, from.cells, from.place.next(), from.curtains);
      };
    }

    /** Where it is, as it is noted. */
    public String word(Assembly of) {
      return switch (this) {
        case COVER -> of.cover ? "on" : "off";
        case CELLS -> of.cells.word;
        case PLACE -> of.place.word;
      };
    }
  }

  /** What can be there or not. */
  public enum Part {
    /** The cover of the shutter. */
    COVER,
    /** The rear cell. */
    REAR_CELL,
    /** The front cell. */
    FRONT_CELL,
    /** The camera round the shutter. */
    CAMERA,
    /** The retaining ring, tight. */
    RING;

    /** As tables store them. */
    public static final StoredWords<Part> WORDS =
        StoredWords.of(
            Part.class,
            part ->
                switch (part) {
                  case COVER -> "cover";
                  case REAR_CELL -> "rear-cell";
                  case FRONT_CELL -> "front-cell";
                  case CAMERA -> "camera";
                  case RING -> "ring";
                });

    /** Whether it is a lens cell: light and speeds of the blades' own change with it. */
    public boolean isCell() {
      return this == REAR_CELL || this == FRONT_CELL;
    }
  }

  /** The switches that there are: a shutter with curtains has no cells. */
  public List<Switch> switches() {
    return curtains ? List.of(Switch.COVER, Switch.PLACE) : List.of(Switch.values());
  }

  /** The same of a shutter with curtains, or with blades. */
  Assembly of(boolean ofCurtains) {
    return new Assembly(cover, ofCurtains ? Cells.NONE : cells, place, ofCurtains);
  }

  /** Whether a part is there, the ring tight. */
  public boolean has(Part part) {
    return switch (part) {
      case COVER -> cover;
      case REAR_CELL -> cells == Cells.REAR || cells == Cells.BOTH;
      case FRONT_CELL -> cells == Cells.FRONT || cells == Cells.BOTH;
      case CAMERA -> place != Place.BENCH;
      case RING -> place == Place.TIGHT;
    };
  }

  /** The parts that one of the two has and the other has not. */
  public List<Part> unlike(Assembly other) {
    return Arrays.stream(Part.values()).filter(part -> has(part) != other.has(part)).toList();
  }

  /** What was noted of a run; what was not noted is as it is when it is {@link #BARE}. */
  public static Assembly of(RunConditions conditions) {
    return BARE.with(conditions);
  }

  /** The same with what was noted of a run. */
  Assembly with(RunConditions conditions) {
    String coverNoted = conditions.get(RunOption.COVER);
    return new Assembly(
        coverNoted.isEmpty() ? cover : coverNoted.equals("on"),
        Cells.WORDS.find(conditions.get(RunOption.CELLS)).orElse(cells),
        Place.WORDS.find(conditions.get(RunOption.PLACE)).orElse(place),
        curtains);
  }

  /** The same conditions with this assembly. */
  public RunConditions in(RunConditions conditions) {
    SortedMap<String, String> noted = new TreeMap<>(conditions.noted());
    Stream.of(Switch.values()).forEach(each -> noted.remove(each.option().name()));
    switches().forEach(each -> noted.put(each.option().name(), each.word(this)));
    return new RunConditions(conditions.restSeconds(), noted);
  }
}
