package org.halflight.validation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.exposure.CurtainMethod;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.SensorLevel;
import org.halflight.session.FiringResult;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.validation.invented.CurtainBar;
import org.halflight.validation.invented.SessionText;

/** What the program says of an invented curtain shutter: edges and marks go to the session. */
final class StudiedCurtain {
  private static final long PAUSE_TICKS = 16_000_000;
  private static final long BEAT_TICKS = 1L << 22;

  /**
   * What a person told.
   *
   * @param distances of curtain and lamp
   * @param outerLight that each outer sensor has
   */
  record Told(boolean distances, boolean outerLight) {
    static final Told ALL = new Told(true, true);
  }

  private StudiedCurtain() {}

  /**
   * What a rig stamped, and what it knew.
   *
   * @param frame in the direction of travel, in millimetres
   * @param aAtStart whether outer sensor A is at the start
   * @param said of the bar
   * @param speeds marked, one for each firing
   * @param firings each with its stamps
   */
  record Run(
      double frame,
      boolean aAtStart,
      CurtainBar.Said said,
      List<String> speeds,
      List<List<CurtainBar.Stamp>> firings) {}

  /** The firings of a case in order, empty where the rig or the method has none. */
  static List<Optional<FiringResult>> firings(CurtainCase its, Told told) {
    return firings(
        new Run(
            its.shutter().frame(),
            its.bar().aAtStart(),
            its.said(),
            its.shots().stream().map(shot -> shot.speed().label()).toList(),
            its.shots().stream().map(CurtainCase.Shot::stamps).toList()),
        told);
  }

  /** The firings of a run in order, likewise. */
  static List<Optional<FiringResult>> firings(Run its, Told told) {
    Session session = new Session();
    session.handle(
        new SessionInput.RigIs(SessionText.RIG, 7, BoardTraits.USUAL, SessionText.FIRMWARE));
    session.handle(new SessionInput.BeatAt(0, 0, OptionalInt.of(0)));
    marks(its, told).forEach(mark -> StudiedMethod.input(mark).ifPresent(session::handle));
    List<Optional<FiringResult>> all = new ArrayList<>();
    long now = PAUSE_TICKS;
    for (List<CurtainBar.Stamp> stamps : its.firings()) {
      int before = session.results().size();
      long shift = now - (stamps.isEmpty() ? 0 : stamps.get(0).ticks());
      for (CurtainBar.Stamp stamp : stamps) {
        now = stamp.ticks() + shift;
        Channel channel = Channel.ofCode(stamp.channel()).orElseThrow();
        session.handle(new SessionInput.EdgeAt(new Edge(channel, stamp.light(), now)));
      }
      for (int i = 0; i < 3; i++) {
        now += BEAT_TICKS;
        session.handle(new SessionInput.BeatAt(now, 0, OptionalInt.of(0)));
      }
      now += PAUSE_TICKS;
      List<FiringResult> results = session.results();
      all.add(
          results.size() > before
              ? Optional.of(results.get(results.size() - 1))
              : Optional.empty());
    }
    session.handle(new SessionInput.Ends());
    return all;
  }

  /** The exposures of a case in order by the method alone, without a session; empty if dark. */
  static List<Optional<Exposure>> directly(CurtainCase its, Told told) {
    CurtainBar.Said said = its.said();
    double dark = said.dark()[1];
    double span = said.full()[1] - dark;
    double middle = (said.low() + said.high()) / 2;
    int a = its.bar().aAtStart() ? 0 : 2;
    CurtainGeometry geometry =
        new CurtainGeometry(
            its.shutter().frame(),
            said.outer(),
            said.slit(),
            told.distances() ? said.gap() : CurtainGeometry.USUAL_GAP_MILLIMETRES,
            told.distances() ? said.lamp() : CurtainGeometry.USUAL_LAMP_DISTANCE_MILLIMETRES,
            said.across(),
            told.distances());
    OuterSensors sensors =
        new OuterSensors(
            OptionalDouble.of(span),
            told.outerLight()
                ? Optional.of(SensorLevel.of(said.dark()[a], said.full()[a], middle))
                : Optional.empty(),
            told.outerLight()
                ? Optional.of(SensorLevel.of(said.dark()[2 - a], said.full()[2 - a], middle))
                : Optional.empty(),
            Set.of(Channel.OUTER_A, Channel.OUTER_B),
            Optional.of(its.bar().aAtStart() ? Direction.A_TO_B : Direction.B_TO_A));
    CurtainMethod method = new CurtainMethod(geometry, sensors, CurtainMethod.CLOCK_SHARE);
    LevelPair levels = new LevelPair((said.low() - dark) / span, (said.high() - dark) / span);
    return its.shots().stream()
        .map(CurtainCase.Shot::stamps)
        .map(
            stamps ->
                stamps.isEmpty()
                    ? Optional.<Exposure>empty()
                    : Optional.of(
                        method.measure(
                            new Firing(
                                stamps.stream().map(StudiedCurtain::edge).toList(), List.of()),
                            levels,
                            BoardTraits.USUAL.rate(),
                            stamps.get(stamps.size() - 1).ticks() + PAUSE_TICKS)))
        .toList();
  }

  private static Edge edge(CurtainBar.Stamp stamp) {
    return new Edge(Channel.ofCode(stamp.channel()).orElseThrow(), stamp.light(), stamp.ticks());
  }

  /** How the curtains went, where it is said. */
  static Optional<CurtainTravel> travel(Optional<FiringResult> firing) {
    return firing.flatMap(its -> its.exposure().curtains());
  }

  /** Firings of a case of which a session says something else than the method alone. */
  static List<String> differences(CurtainCase its) {
    List<Optional<Exposure>> direct = directly(its, Told.ALL);
    List<Optional<FiringResult>> session = firings(its, Told.ALL);
    List<String> found = new ArrayList<>();
    for (int i = 0; i < direct.size(); i++) {
      String alone = numbers(direct.get(i).flatMap(Exposure::curtains));
      String said = numbers(travel(session.get(i)));
      if (!alone.equals(said)) {
        found.add(its.number() + " at " + its.shots().get(i).speed().label());
      }
    }
    return found;
  }

  /** The figures of a travel, without what hangs on when it was. */
  private static String numbers(Optional<CurtainTravel> travel) {
    return travel
        .map(
            its ->
                String.join(
                    " ",
                    String.valueOf(its.places()),
                    String.valueOf(its.first()),
                    String.valueOf(its.second()),
                    String.valueOf(its.windowSeconds()),
                    String.valueOf(its.windowPlusMinusSeconds()),
                    String.valueOf(its.notes())))
        .orElse("none");
  }

  private static List<SessionText.Mark> marks(Run its, Told told) {
    CurtainBar.Said said = its.said();
    boolean aFirst = its.aAtStart();
    Map<String, String> light = new LinkedHashMap<>();
    counts(light, "dark", said.dark()[1]);
    counts(light, "full", said.full()[1]);
    counts(light, "low", said.low());
    counts(light, "high", said.high());
    if (told.outerLight()) {
      counts(light, "a-dark", said.dark()[aFirst ? 0 : 2]);
      counts(light, "a-full", said.full()[aFirst ? 0 : 2]);
      counts(light, "b-dark", said.dark()[aFirst ? 2 : 0]);
      counts(light, "b-full", said.full()[aFirst ? 2 : 0]);
    }
    Map<String, String> run = new LinkedHashMap<>();
    run.put("camera", "invented");
    run.put("phase", "as-left");
    run.put("dial", "curtain");
    run.put("speeds", String.join(",", its.speeds()));
    run.put("reference", "exact");
    run.put("firings", "1");
    run.put("most-tries", "1");
    boolean isLong = its.frame() > 24;
    run.put("shutter", isLong ? "curtain-long-side" : "curtain-short-side");
    double frame = its.frame();
    run.put(
        "with.frame",
        String.format(Locale.ROOT, "%.1fx%.1f", frame, isLong ? frame * 2 / 3 : frame * 1.5));
    put(run, "with.outer-sensors", said.outer());
    put(run, "with.sensor-slit", said.slit());
    put(run, "with.lamp-size", said.across());
    if (told.distances()) {
      put(run, "with.curtain-gap", said.gap());
      put(run, "with.lamp-distance", said.lamp());
    }
    return List.of(new SessionText.Mark("light", light), new SessionText.Mark("run", run));
  }

  private static void counts(Map<String, String> values, String name, double counts) {
    values.put(name, String.valueOf(counts));
  }

  /** Lengths are typed to a thousandth. */
  private static void put(Map<String, String> values, String name, double number) {
    values.put(name, String.format(Locale.ROOT, "%.3f", number));
  }
}
