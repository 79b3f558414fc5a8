package org.halflight.rig.practice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.shuttermodel.Finger;
import org.halflight.shuttermodel.FiringTurn;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.ReleaseTiming;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.time.TickRate;

/**
 * The camera on the practice rig: its dial, its release and its shutter. What it is told to do it
 * does one after the other, each when the one before is over.
 */
final class PracticeCamera {
  /** A shutter that stood still so long counts as rested. */
  static final double REST_SECONDS = 600;

  /** Quiet after each firing before the next may begin: by itself, and with a clock. */
  private static final double QUIET_SECONDS = 1;

  private static final double COCKING_SECONDS = 0.3;
  private static final double PRESS_SECONDS = 0.15;

  /** A stop is turned, a cover put on, a lever wound. */
  private static final double CHANGE_SECONDS = 0.05;

  /** From letting go, or from the second press at T, to the start of closing; and its scatter. */
  private static final double CLOSING_SECONDS = 0.008;

  private static final double CLOSING_SCATTER_SECONDS = 0.0005;

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final PracticeWorld world;
  private final long seed;
  private final List<PracticeFiring> firings = new ArrayList<>();
  private final PracticeLinkage linkage;
  private final Map<MarkedSpeed, Integer> sinceRestAtSpeed = new HashMap<>();
  private final PracticeContact contact;
  private LeafShutter shutter;
  private MarkedSpeed speed;
  private boolean open;
  private boolean pressed;
  private long stillSinceTicks;
  private double saidToRestSeconds;
  private int sinceRest;
  private long releases;
  private double lampShare = 1;
  private double stopShare = 1;
  private double lampAt = 1;
  private double room;
  private double screen;
  private boolean screenIsWhite;
  private boolean covered;
  private boolean cocked;
  private double uncockedLeak;
  private double cockedLeak;
  private boolean isReady = true;
  private long pressOverTicks;
  private InventedFlap flap = InventedFlap.NONE;

  PracticeCamera(PracticeWorld world, LeafShutter shutter, long seed) {
    this.world = world;
    this.seed = seed;
    linkage = new PracticeLinkage(world);
    contact = new PracticeContact(world, shutter.contact());
    setShutter(shutter);
  }

  /** Another shutter, rested, set to the last speed of its dial. */
  void setShutter(LeafShutter newShutter) {
    if (open) {
      hold(false);
    }
    shutter = newShutter;
    contact.is(newShutter.contact());
    speed = newShutter.dial().stream().reduce((first, second) -> second).orElseThrow();
    forgetRest();
  }

  void chooseSpeed(MarkedSpeed chosen) {
    shutter.at(chosen);
    speed = chosen;
  }

  MarkedSpeed speed() {
    return speed;
  }

  LeafShutter shutter() {
    return shutter;
  }

  List<PracticeFiring> firings() {
    return List.copyOf(firings);
  }

  /** Nothing happens for a while. */
  void rest(double seconds) {
    if (world.isPaced()) {
      // A clock on the wall cannot be moved: the shutter is taken to have rested.
      saidToRestSeconds += seconds;
    } else {
      world.occupy(world.start() + RATE.ticks(seconds));
    }
  }

  /**
   * From the next light on only a share of it comes, whatever the stop is turned to: the lamp was
   * moved.
   */
  void dim(double share) {
    lampShare = share;
  }

  /** The stop is turned: from now on another share of the light comes through. */
  void stop(double share) {
    change(() -> stopShare = share);
  }

  /** The lamp is covered, or its cover is taken off. */
  void cover(boolean isCovered) {
    change(() -> covered = isCovered);
  }

  /** How much of the usual full light comes from where the lamp stands. */
  double lamp() {
    return lampAt;
  }

  /** The lamp is moved: from now on another share of the usual full light comes. */
  void lamp(double share) {
    change(() -> lampAt = share);
  }

  /** From now on light of the room comes to the sensors past the camera. */
  void room(double share) {
    change(() -> room = share);
  }

  /** From now on a white screen brings light to the sensors past the camera. */
  void screenReaches(double share) {
    change(() -> screen = share);
  }

  /** The screen is white, or dark. */
  void screen(boolean isWhite) {
    change(() -> screenIsWhite = isWhite);
  }

  /** Light that comes to the sensors past camera and lamp. */
  private double past() {
    return room + (screenIsWhite ? screen : 0);
  }

  /** From now on shut blades let a share of full light through. */
  void leak(double uncocked, double whileCocked) {
    change(
        () -> {
          uncockedLeak = uncocked;
          cockedLeak = whileCocked;
        });
  }

  /** The light while nothing moves. */
  private double atRest() {
    return past() + (covered ? 0 : lightShare() * (open ? 1 : shutLeak()));
  }

  private double lightShare() {
    return lampShare * stopShare * lampAt;
  }

  private double shutLeak() {
    return cocked ? cockedLeak : uncockedLeak;
  }

  /** The light at rest goes over to what it is now. */
  private void change(Runnable what) {
    double before = atRest();
    what.run();
    if (before == atRest()) {
      return;
    }
    long ticks = world.start();
    world.shine(
        ticks, new LightPath(new double[] {0, CHANGE_SECONDS}, new double[] {before, atRest()}));
    world.occupy(ticks + RATE.ticks(2 * CHANGE_SECONDS));
  }

  /** Cocks the shutter without firing it; blades that do not overlap then let light through. */
  void cock(boolean lightComesThrough) {
    long ticks = world.start();
    if (open) {
      return;
    }
    if (!lightComesThrough) {
      wound();
      busyUntil(world.start());
      return;
    }
    double slowness = 1 + 0.1 * (releaseDraws().uniform() - 0.5);
    LightPath path = MishapLight.cockingStroke(slowness);
    light(ticks, path);
    busyUntil(ticks + RATE.ticks(path.endSeconds()));
    wound();
  }

  private void wound() {
    change(() -> cocked = true);
  }

  /** The film advance and its linkage. */
  PracticeLinkage linkage() {
    return linkage;
  }

  /** The body has a flap, or another one. */
  void flap(InventedFlap another) {
    flap = another;
  }

  /**
   * Tries the wind, and turns it where it is free: that cocks the shutter and locks the advance.
   *
   * @return whether it turned
   */
  boolean wind() {
    boolean turns = !linkage.isLocked();
    if (turns) {
      winds(world.start());
      busyUntil(world.start());
    }
    return turns;
  }

  private void winds(long ticks) {
    linkage.lock(ticks);
    isReady = true;
  }

  /** Makes the camera ready for a press: where the wind is locked, by a full one before. */
  void getReady() {
    if (linkage.isLocked() && !isReady) {
      press(new Finger(PracticeLinkage.USUAL_MILLIMETRES_A_SECOND, Finger.Way.EVEN, false));
    }
    wind();
  }

  /** Taps the camera once; what is cocked stays so. */
  void tap() {
    long ticks = world.start();
    linkage.tap(ticks);
    busyUntil(ticks + RATE.ticks(PRESS_SECONDS));
    pressOverTicks = world.start();
  }

  /** When the last press, with the quiet after it, is over. */
  long pressOverTicks() {
    return pressOverTicks;
  }

  /** Presses the release button as it is; nothing is wound before. */
  void press(Finger finger) {
    long pressTicks = world.start();
    SeededDraws draws = releaseDraws();
    Finger.Press pressed =
        finger.press(linkage.linkage(), linkage.isLocked(), isReady && !open, draws);
    press(pressTicks);
    letGo(pressTicks + RATE.ticks(pressed.letGoSeconds()));
    long endTicks = pressTicks + RATE.ticks(pressed.endSeconds());
    long lightTicks =
        pressed.tripsSeconds().isEmpty()
            ? 0
            : pressTicks
                + RATE.ticks(
                    pressed.tripsSeconds().getAsDouble()
                        + PracticeLinkage.TRIP_TO_LIGHT_SECONDS
                        + flap.liftSeconds());
    boolean isSlow = finger.millimetresPerSecond() < PracticeLinkage.USUAL_MILLIMETRES_A_SECOND;
    linkage.press(pressed, pressTicks, lightTicks, isSlow, draws);
    if (lightTicks > 0) {
      endTicks =
          Math.max(endTicks, opensAndCloses(PracticeMishap.NONE, pressTicks, lightTicks, draws));
    }
    busyUntil(endTicks);
    pressOverTicks = world.start();
  }

  /** Presses the release; empty when the blades stand open already, so that nothing moves. */
  Optional<PracticeFiring> fire(PracticeMishap mishap) {
    return fire(mishap, false);
  }

  /** Sets the self-timer and presses the release; empty likewise. */
  Optional<PracticeFiring> fireBySelfTimer() {
    return fire(PracticeMishap.NONE, true);
  }

  private Optional<PracticeFiring> fire(PracticeMishap mishap, boolean bySelfTimer) {
    long pressTicks = world.start();
    press(pressTicks);
    if (open) {
      letGo(pressTicks + RATE.ticks(PRESS_SECONDS));
      busyUntil(pressTicks + RATE.ticks(PRESS_SECONDS));
      return Optional.empty();
    }
    winds(pressTicks);
    SeededDraws draws = releaseDraws();
    long lightTicks =
        bySelfTimer
            ? pressTicks + RATE.ticks(shutter.selfTimer().runs(draws))
            : lightAfter(pressTicks, draws) + RATE.ticks(flap.liftSeconds());
    long letGoTicks = pressTicks + RATE.ticks(PRESS_SECONDS);
    letGo(letGoTicks);
    linkage.release(lightTicks, draws);
    busyUntil(Math.max(letGoTicks, opensAndCloses(mishap, pressTicks, lightTicks, draws)));
    return Optional.of(firings.get(firings.size() - 1));
  }

  /** The blades move, as it is this release's turn; gives when they have come to rest. */
  private long opensAndCloses(
      PracticeMishap mishap, long pressTicks, long lightTicks, SeededDraws draws) {
    noteRest(pressTicks);
    sinceRest++;
    int atThisSpeed = sinceRestAtSpeed.merge(speed, 1, Integer::sum);
    FiringTurn turn = new FiringTurn(firings.size() + 1L, sinceRest, atThisSpeed);
    ModelFiring model = MishapLight.of(mishap, shutter.firing(speed, turn));
    isReady = false;
    long endTicks = lightTicks;
    if (model instanceof ModelFiring.Timed timed) {
      LightPath path = LightPath.of(timed.curve());
      flap.leak().ifPresent(leak -> light(lightTicks - RATE.ticks(flap.leakAheadSeconds()), leak));
      light(lightTicks, path);
      contact.touches(lightTicks, timed.openSeconds(), draws);
      contact.parts(lightTicks + RATE.ticks(timed.closingSeconds()));
      endTicks += RATE.ticks(path.endSeconds());
    } else if (model instanceof ModelFiring.StuckOpen) {
      endTicks = open(lightTicks, draws);
    }
    firings.add(
        new PracticeFiring(
            speed,
            turn,
            model,
            pressTicks - world.boardStartTicks(),
            lightTicks - world.boardStartTicks()));
    return endTicks;
  }

  /** Edges of a steady frequency, as from a generator that hangs on an input. */
  void edgeTrain(Channel channel, double periodSeconds, int edges) {
    long start = world.start();
    for (int i = 0; i < edges; i++) {
      world.input(channel, true, start + RATE.ticks(i * periodSeconds));
      world.input(channel, false, start + RATE.ticks((i + 0.5) * periodSeconds));
    }
    busyUntil(start + RATE.ticks(edges * periodSeconds));
  }

  /** What is asked for next comes so much later. */
  void pause(double seconds) {
    world.occupy(world.start() + RATE.ticks(seconds));
  }

  /** A finger on an outer sensor. */
  void coverSensor(Channel sensor, double seconds) {
    long start = world.start();
    long end = start + RATE.ticks(seconds);
    world.cover(sensor, true, start);
    world.cover(sensor, false, end);
    world.occupy(end);
  }

  /** B: opens and stays open, or closes whatever stands open, a hung shutter too. */
  void hold(boolean opened) {
    if (opened == open) {
      return;
    }
    long ticks = world.start();
    if (opened) {
      press(ticks);
      opens(ticks);
    } else {
      if (pressed) {
        letGo(ticks);
      }
      closes(ticks);
    }
  }

  /** T: one press opens, the next closes. */
  void pressAtT() {
    long ticks = world.start();
    press(ticks);
    letGo(ticks + RATE.ticks(PRESS_SECONDS));
    if (open) {
      closes(ticks);
    } else {
      opens(ticks);
    }
  }

  private void opens(long pressTicks) {
    SeededDraws draws = releaseDraws();
    long lightTicks = lightAfter(pressTicks, draws);
    winds(pressTicks);
    linkage.release(lightTicks, draws);
    isReady = false;
    busyUntil(open(lightTicks, draws));
  }

  private void closes(long askedTicks) {
    double seconds = CLOSING_SECONDS + CLOSING_SCATTER_SECONDS * releaseDraws().normal();
    long closingTicks = askedTicks + RATE.ticks(Math.max(CLOSING_SECONDS / 2, seconds));
    contact.parts(closingTicks);
    LightPath path = shutter.closing();
    light(closingTicks, path);
    open = false;
    busyUntil(closingTicks + RATE.ticks(path.endSeconds()));
  }

  private long open(long lightTicks, SeededDraws draws) {
    LightPath path = shutter.opening();
    light(lightTicks, path);
    open = true;
    long openTicks = lightTicks + RATE.ticks(path.endSeconds());
    return Math.max(openTicks, contact.touches(lightTicks, path.endSeconds(), draws));
  }

  private void light(long startTicks, LightPath undimmed) {
    cocked = false;
    LightPath path = MishapLight.dimmed(undimmed, covered ? 0 : lightShare());
    world.shine(
        startTicks,
        MishapLight.brighter(
            MishapLight.atLeast(path, covered ? 0 : lightShare() * shutLeak()), past()));
  }

  private void press(long ticks) {
    world.input(Channel.RELEASE, true, ticks);
    pressed = true;
  }

  private void letGo(long ticks) {
    world.input(Channel.RELEASE, false, ticks);
    pressed = false;
  }

  private long lightAfter(long pressTicks, SeededDraws draws) {
    ReleaseTiming timing = shutter.timing();
    double millis = timing.pressToLightMillis() + timing.scatterMillis() * draws.normal();
    return pressTicks + RATE.ticks(Math.max(timing.pressToLightMillis() / 2, millis) * 1e-3);
  }

  private SeededDraws releaseDraws() {
    releases++;
    return new SeededDraws(SeededDraws.seedOf(seed, releases));
  }

  private void busyUntil(long ticks) {
    stillSinceTicks = ticks;
    world.occupy(ticks + RATE.ticks(world.isPaced() ? COCKING_SECONDS : QUIET_SECONDS));
  }

  private void noteRest(long ticks) {
    double still = RATE.seconds(ticks - stillSinceTicks) + saidToRestSeconds;
    saidToRestSeconds = 0;
    if (still >= REST_SECONDS) {
      forgetRest();
    }
  }

  private void forgetRest() {
    sinceRest = 0;
    sinceRestAtSpeed.clear();
  }
}
