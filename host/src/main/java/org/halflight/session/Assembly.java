package org.halflight.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.halflight.stored.StoredWords;

/**
 * How far a shutter is put together: three switches that stand in any order. They are noted as the
 * conditions {@link RunOption#COVER}, {@link RunOption#CELLS} and {@link RunOption#PLACE}.
 *
 * @param cover whether the cover is on
 * @param cells which cells are in
 * @param place where the shutter is
 */
public record Assembly(boolean cover, Cells cells, Place place) {
  /** On the bench, without cells and cover: where putting together begins. */
  public static final Assembly BARE = new Assembly(false, Cells.NONE, Place.BENCH);

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
      return values()[(ordinal() + 1) % values().length];
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
      return values()[(ordinal() + 1) % values().length];
    }
  }

  /** One of the three switches. */
  public enum Switch {
    /** Cover on or off. */
    COVER(
        RunOption.COVER,
        a -> new Assembly(!a.cover, a.cells, a.place),
        a -> a.cover ? "on" : "off"),
    /** Which cells are in. */
    CELLS(RunOption.CELLS, a -> new Assembly(a.cover, a.cells.next(), a.place), a -> a.cells.word),
    /** Where the shutter is. */
    PLACE(RunOption.PLACE, a -> new Assembly(a.cover, a.cells, a.place.next()), a -> a.place.word);

    private final RunOption<String> option;
    private final Function<Assembly, Assembly> flip;
    private final Function<Assembly, String> word;

    Switch(
        RunOption<String> option,
        Function<Assembly, Assembly> flip,
        Function<Assembly, String> word) {
      this.option = option;
      this.flip = flip;
      this.word = word;
    }

    /** The switch of a name. */
    public static Optional<Switch> find(String name) {
      return Arrays.stream(values()).filter(one -> one.option.name().equals(name)).findFirst();
    }

    /** Every assembly that differs by this switch at most, this one first. */
    public List<Assembly> positions(Assembly of) {
      return Stream.iterate(of, this::flipped).limit(Cells.values().length).distinct().toList();
    }

    /** What it is noted as. */
    public RunOption<String> option() {
      return option;
    }

    /** The assembly after one flip of this switch. */
    public Assembly flipped(Assembly from) {
      return flip.apply(from);
    }

    /** Where it stands, as it is noted. */
    public String word(Assembly of) {
      return word.apply(of);
    }
  }

  /** What can be there or not. */
  public enum Part {
    /** The cover of the shutter. */
    COVER(Assembly::cover),
    /** The rear cell. */
    REAR_CELL(a -> a.cells == Cells.REAR || a.cells == Cells.BOTH),
    /** The front cell. */
    FRONT_CELL(a -> a.cells == Cells.FRONT || a.cells == Cells.BOTH),
    /** The camera round the shutter. */
    CAMERA(a -> a.place != Place.BENCH),
    /** The retaining ring, tight. */
    RING(a -> a.place == Place.TIGHT);

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

    private final Function<Assembly, Boolean> there;

    Part(Function<Assembly, Boolean> there) {
      this.there = there;
    }

    /** Whether it is a lens cell: light and speeds of the blades' own change with it. */
    public boolean isCell() {
      return this == REAR_CELL || this == FRONT_CELL;
    }
  }

  /** Whether a part is there, the ring tight. */
  public boolean has(Part part) {
    return part.there.apply(this);
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
        Place.WORDS.find(conditions.get(RunOption.PLACE)).orElse(place));
  }

  /** The same conditions with this assembly. */
  public RunConditions in(RunConditions conditions) {
    SortedMap<String, String> noted = new TreeMap<>(conditions.noted());
    Stream.of(Switch.values()).forEach(each -> noted.put(each.option.name(), each.word(this)));
    return new RunConditions(conditions.restSeconds(), noted);
  }
}
