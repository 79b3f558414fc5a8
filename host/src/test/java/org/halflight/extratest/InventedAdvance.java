package org.halflight.extratest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;

/**
 * An invented camera with a film advance before a session. Times of sounds and of contacts are told
 * in seconds before the blades open, which is when light rises through the low level.
 */
public final class InventedAdvance {
  static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** The blades sound this long before they let light through. */
  public static final double BLADES = 0.0004;

  /** Long enough that the closing is out of reach. */
  public static final double SLOW = 0.125;

  /** How long a click rings, in seconds. */
  static final double RINGING_SECONDS = 0.003;

  private static final double RAMP_SECONDS = 0.0005;
  private static final double QUIET_SECONDS = 1;

  private final Session session = new Session();
  private final List<Edge> edges = new ArrayList<>();
  private double opening = 1;

  /** Full light is set. */
  public InventedAdvance() {
    session.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    session.handle(
        new SessionInput.LightSet(
            new LightLevels(0, 800, 800 * LevelPair.GAUSS.low(), 800 * LevelPair.GAUSS.high())));
  }

  /** Trials with an interval each, after the blades were heard alone. */
  public static InventedAdvance trials(Phase phase, double... intervals) {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(phase, intervals.length, UntimedTest.RELEASE_ALONE, UntimedTest.WIND_AND_RELEASE);
    for (int i = 0; i < 3; i++) {
      camera.click(BLADES);
      camera.fire(SLOW);
    }
    for (double interval : intervals) {
      camera.click(BLADES);
      camera.click(interval);
      camera.fire(SLOW);
    }
    return camera;
  }

  /** A run that asks for checks only. */
  public void begin(Phase phase, int trials, UntimedTest... checks) {
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented camera", phase, "leaf", List.of(), Reference.EXACT, trials, checks)));
  }

  /** A click whose onset is this long before the opening, and that rings at 4 kHz. */
  public void click(double beforeSeconds) {
    click(beforeSeconds, 4000, RINGING_SECONDS);
  }

  /** A click whose sensor holds its output for so long, and makes one pulse of it. */
  void held(double beforeSeconds, double heldSeconds) {
    edge(Channel.CLICK, true, opening - beforeSeconds);
    edge(Channel.CLICK, false, opening - beforeSeconds + heldSeconds);
  }

  /** Pulses get narrower while the ringing decays. */
  void click(double beforeSeconds, double hertz, double ringingSeconds) {
    double onset = opening - beforeSeconds;
    for (double t = 0; t < ringingSeconds; t += 1 / hertz) {
      double width = Math.max(20e-6, 0.5 / hertz * (1 - t / ringingSeconds));
      edge(Channel.CLICK, true, onset + t);
      edge(Channel.CLICK, false, onset + t + width);
    }
  }

  /** A contact that closes with five bounces of 100 us, and opens again. */
  public void contact(double beforeSeconds, double closedSeconds) {
    double touch = opening - beforeSeconds;
    for (int i = 0; i < 5; i++) {
      edge(Channel.CONTACT, true, touch + 2e-4 * i);
      edge(Channel.CONTACT, false, touch + 2e-4 * i + 1e-4);
    }
    edge(Channel.CONTACT, true, touch + 1e-3);
    edge(Channel.CONTACT, false, touch + closedSeconds);
  }

  /** The release is pressed this long before the opening, and let go. */
  void press(double beforeSeconds) {
    edge(Channel.RELEASE, true, opening - beforeSeconds);
    edge(Channel.RELEASE, false, opening - beforeSeconds + 0.08);
  }

  /** The shutter opens and stays open for this long; then it is quiet. */
  public void fire(double openSeconds) {
    double low = LevelPair.GAUSS.low() * RAMP_SECONDS;
    double high = LevelPair.GAUSS.high() * RAMP_SECONDS;
    double dark = opening + openSeconds;
    edge(Channel.CENTRE_LOW, true, opening);
    edge(Channel.CENTRE_HIGH, true, opening + high - low);
    edge(Channel.CENTRE_HIGH, false, dark - (high - low));
    edge(Channel.CENTRE_LOW, false, dark);
    noLight(openSeconds);
  }

  /** Nothing opens. */
  void noLight(double seconds) {
    edges.sort(Comparator.comparingLong(Edge::ticks));
    // Where two clicks ring at once the sensor has one output: it is high while either is.
    withoutOverlap().forEach(edge -> session.handle(new SessionInput.EdgeAt(edge)));
    edges.clear();
    opening += seconds + QUIET_SECONDS;
    session.handle(new SessionInput.BeatAt(RATE.ticks(opening - QUIET_SECONDS / 10), 0));
  }

  private List<Edge> withoutOverlap() {
    List<Edge> seen = new ArrayList<>();
    int sounding = 0;
    for (Edge edge : edges) {
      if (edge.channel() != Channel.CLICK) {
        seen.add(edge);
        continue;
      }
      int before = sounding;
      sounding += edge.high() ? 1 : -1;
      if (Math.min(before, sounding) == 0) {
        seen.add(edge);
      }
    }
    return seen;
  }

  /** What was tried so far. */
  public List<ExtraTest> tried() {
    return ExtraTests.of(session.results(), session.readings(), session.runs());
  }

  /** The advance timing of the newest run. */
  public AdvanceTiming timing() {
    return tried().stream()
        .filter(AdvanceTiming.class::isInstance)
        .map(AdvanceTiming.class::cast)
        .reduce((one, other) -> other)
        .orElseThrow();
  }

  private void edge(Channel channel, boolean high, double seconds) {
    edges.add(new Edge(channel, high, RATE.ticks(seconds)));
  }
}
