package org.halflight.rig.practice;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.Finger;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.ModelShutter;
import org.halflight.shuttermodel.SensorBar;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;

/**
 * A rig that is not there: speaks the bytes of the line protocol, with a model camera on it that
 * can be fired. Its rig serial number is {@code PRACTICE}, so that every figure from it can be
 * marked as practice.
 *
 * <p>It lives in virtual time. Unpaced, time goes on as its output is read, and only as far as
 * something was asked for: a firing and the quiet after it, the answer to a command, a rest. Paced,
 * it goes on with a clock that is handed in. The same seed and the same calls give the same bytes.
 *
 * <p>Safe for use by several threads. The controls of the bench ({@link #fire}, {@link #holdOpen}
 * and so on) never wait: what they ask for happens in virtual time, one thing after the other.
 */
public final class PracticeRig implements Link {
  private static final long UNPACED_WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(10);
  private static final long PACED_WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  /** A greeting tells starts in 32 bits; the last ones are room for cables that are plugged in. */
  private static final long STARTS_MOST = (1L << 32) - (1L << 16);

  /** What all links to the same bench share. */
  private record Bench(
      ReentrantLock lock,
      Condition changed,
      PracticeWorld world,
      PracticeCamera camera,
      PracticeDisc disc) {}

  private final Bench bench;

  /** The life of the board that this link belongs to. */
  private final PracticeBoard board;

  private boolean closed;
  private boolean waits = true;
  private byte[] taken = {};
  private int takenUsed;

  private PracticeRig(Bench bench) {
    this.bench = bench;
    this.board = Objects.requireNonNull(bench.world().board());
  }

  /**
   * A rig whose time goes on as it is read.
   *
   * @param shutter the first shutter on the bench
   * @param sensors the sensors and the lamp
   * @param seed of noise and looks
   */
  public static PracticeRig unpaced(ModelShutter shutter, SensorSet sensors, long seed) {
    return unpaced(shutter, sensors, seed, 0);
  }

  /**
   * A rig whose time goes on as it is read, of a board that has started before.
   *
   * @param startsBefore how often the board has started before, 0 or more; see {@link
   *     #startsBefore}
   */
  public static PracticeRig unpaced(
      ModelShutter shutter, SensorSet sensors, long seed, long startsBefore) {
    return unpaced(BoardTraits.Kind.FULL, shutter, sensors, seed, startsBefore);
  }

  /** The same for another kind of rig than the full one. */
  public static PracticeRig unpaced(
      BoardTraits.Kind kind,
      ModelShutter shutter,
      SensorSet sensors,
      long seed,
      long startsBefore) {
    return new PracticeRig(bench(new Pace.Unpaced(), kind, shutter, sensors, seed, startsBefore));
  }

  /**
   * A rig whose time goes on with a clock.
   *
   * @param shutter the first shutter on the bench
   * @param sensors the sensors and the lamp
   * @param seed of noise and looks
   * @param nanos a clock in nanoseconds that never runs back
   */
  public static PracticeRig paced(
      ModelShutter shutter, SensorSet sensors, long seed, LongSupplier nanos) {
    return paced(shutter, sensors, seed, nanos, 0);
  }

  /**
   * A rig whose time goes on with a clock, of a board that has started before.
   *
   * @param startsBefore how often the board has started before, 0 or more; see {@link
   *     #startsBefore}
   */
  public static PracticeRig paced(
      ModelShutter shutter, SensorSet sensors, long seed, LongSupplier nanos, long startsBefore) {
    return paced(BoardTraits.Kind.FULL, shutter, sensors, seed, nanos, startsBefore);
  }

  /** The same for another kind of rig than the full one. */
  public static PracticeRig paced(
      BoardTraits.Kind kind,
      ModelShutter shutter,
      SensorSet sensors,
      long seed,
      LongSupplier nanos,
      long startsBefore) {
    return new PracticeRig(
        bench(
            new Pace.Paced(nanos, nanos.getAsLong()), kind, shutter, sensors, seed, startsBefore));
  }

  /**
   * How often the board of a practice rig has started before, for a bench that is set up now: the
   * seconds since 1970. A real board counts its starts; this one has no memory, and by the date no
   * two sessions hold firings of the same start. A session whose firings are kept needs it.
   */
  public static long startsBefore(Instant now) {
    return Math.floorMod(now.getEpochSecond(), STARTS_MOST);
  }

  private static Bench bench(
      Pace pace,
      BoardTraits.Kind kind,
      ModelShutter shutter,
      SensorSet sensors,
      long seed,
      long startsBefore) {
    if (startsBefore < 0 || startsBefore >= STARTS_MOST) {
      throw new IllegalArgumentException("not how often a board has started: " + startsBefore);
    }
    ReentrantLock lock = new ReentrantLock();
    PracticeWorld world = new PracticeWorld(pace, kind, sensors, seed, startsBefore);
    return new Bench(
        lock,
        lock.newCondition(),
        world,
        new PracticeCamera(world, shutter, seed),
        new PracticeDisc(world));
  }

  @Override
  public String name() {
    return "practice";
  }

  @Override
  public int read(byte[] buffer) {
    bench.lock().lock();
    try {
      if (takenUsed == taken.length && !awaitNextLine()) {
        return 0;
      }
      int count = Math.min(buffer.length, taken.length - takenUsed);
      System.arraycopy(taken, takenUsed, buffer, 0, count);
      takenUsed += count;
      return count;
    } finally {
      bench.lock().unlock();
    }
  }

  private boolean awaitNextLine() {
    long left = !waits ? 0 : bench.world().isPaced() ? PACED_WAIT_NANOS : UNPACED_WAIT_NANOS;
    while (true) {
      requireAlive();
      byte[] line = bench.world().nextLine();
      requireAlive();
      if (line != null) {
        taken = line;
        takenUsed = 0;
        return true;
      }
      if (left <= 0) {
        return false;
      }
      long slice = Math.min(left, bench.world().nanosToNext());
      try {
        left += bench.changed().awaitNanos(slice) - slice;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return false;
      }
    }
  }

  /**
   * A read brings what is there and waits for nothing from now on: for a reader whose clock goes on
   * only between one read and the next.
   */
  public void readsAtOnce() {
    onBench(() -> waits = false);
  }

  @Override
  public void write(byte[] bytes) {
    onBench(
        () -> {
          requireAlive();
          board.receive(bytes.clone());
        });
  }

  @Override
  public void close() {
    onBench(() -> closed = true);
  }

  /** The marked speed that the dial is set to. */
  public MarkedSpeed speed() {
    return held(() -> bench.camera().speed());
  }

  /** The shutter on the bench. */
  public ModelShutter shutter() {
    return held(() -> bench.camera().shutter());
  }

  /** Turns the dial to a marked speed of the shutter. */
  public void chooseSpeed(MarkedSpeed speed) {
    onBench(() -> bench.camera().chooseSpeed(speed));
  }

  /** Puts another shutter on the bench, rested, its dial at the last of its marked speeds. */
  public void setShutter(ModelShutter shutter) {
    onBench(() -> bench.camera().setShutter(shutter));
  }

  /** Turns something on the shutter; it stays as rested as it is, and its dial where it is. */
  public void adjustShutter(ModelShutter turned) {
    onBench(() -> bench.camera().adjust(turned));
  }

  /**
   * Cocks and fires, once everything before is over.
   *
   * @return the truth about this firing; empty when the blades stand open, so that the release
   *     moves nothing
   */
  public Optional<PracticeFiring> fire() {
    return fire(PracticeMishap.NONE);
  }

  /** {@link #fire()}, with something that goes wrong. */
  public Optional<PracticeFiring> fire(PracticeMishap mishap) {
    return fromBench(() -> bench.camera().fire(mishap));
  }

  /** Adjusts the linkage between film advance and release button. */
  public void adjustLinkage(ButtonLinkage linkage) {
    onBench(() -> bench.camera().linkage().is(linkage));
  }

  /** Fits a contact at the wind knob, or takes it off. */
  public void fitKnobContact(boolean fitted) {
    onBench(() -> bench.camera().linkage().fitKnobContact(fitted));
  }

  /** Presses the release button as the camera is, once everything before is over. */
  public void press(Finger finger) {
    onBench(() -> bench.camera().press(finger));
  }

  /**
   * Tries the wind, and turns it where it is free: that cocks the shutter and locks the advance.
   *
   * @return whether it turned
   */
  public boolean wind() {
    return fromBench(() -> bench.camera().wind());
  }

  /** Makes the camera ready for a press: pressed to the end first where the wind is locked. */
  public void getReady() {
    onBench(() -> bench.camera().getReady());
  }

  /**
   * Whether the last press, with the quiet after it, is over for a host that has read so far.
   *
   * @param seenTicks ticks of the board's counter
   */
  public boolean isPressOver(long seenTicks) {
    return held(() -> bench.world().isSeen(bench.camera().pressOverTicks(), seenTicks));
  }

  /** Taps the camera once. */
  public void tap() {
    onBench(() -> bench.camera().tap());
  }

  /** Wires the rig otherwise. */
  public void wire(WiringFault fault) {
    onBench(() -> bench.world().wire(fault));
  }

  /** How much later than now begins what is asked for next. */
  public long nanosAhead() {
    return held(() -> bench.world().nanosAhead());
  }

  /** Leaves so many seconds, 0 or more, before what is asked for next. */
  public void pause(double seconds) {
    onBench(() -> bench.camera().pause(seconds));
  }

  /**
   * A finger comes on a sensor, once everything before is over, and goes away again.
   *
   * @param sensor an outer one
   * @param seconds how long it stays
   */
  public void coverSensor(Channel sensor, double seconds) {
    onBench(() -> bench.camera().coverSensor(sensor, seconds));
  }

  /**
   * Edges of a steady frequency on an input that sees no light, as from a generator, once
   * everything before is over.
   *
   * @param channel flash contact or click sensor
   * @param hertz rising edges a second, by the clock of the board
   * @param edges how many rising ones
   */
  public void edgeTrain(Channel channel, double hertz, int edges) {
    if (channel.isLight() || !(hertz > 0 && hertz <= 1000) || edges < 1) {
      throw new IllegalArgumentException("no edge train: " + channel + ", " + hertz + " Hz");
    }
    onBench(() -> bench.camera().edgeTrain(channel, 1 / hertz, edges));
  }

  /**
   * Puts a slotted disc before the light and switches its motor on, once everything before is over.
   * It turns until {@link #stopDisc}; nothing is fired meanwhile.
   */
  public void turnDisc(TurningDisc disc) {
    onBench(() -> bench.disc().turn(disc));
  }

  /** Switches the motor off; the disc stands still, its dark before the light, after this turn. */
  public void stopDisc() {
    onBench(() -> bench.disc().stop());
  }

  /**
   * Sets the self-timer, presses the release and lets it go, once everything before is over.
   *
   * @return the truth about this firing; empty when the blades stand open
   */
  public Optional<PracticeFiring> fireBySelfTimer() {
    return fromBench(() -> bench.camera().fireBySelfTimer());
  }

  /** T: presses the release and lets it go; the first press opens the shutter, the next closes. */
  public void pressAtT() {
    onBench(() -> bench.camera().pressAtT());
  }

  /** B: opens the shutter and keeps it open, or closes it, also one that hangs open. */
  public void holdOpen(boolean open) {
    onBench(() -> bench.camera().hold(open));
  }

  /**
   * Cocks the shutter without firing it.
   *
   * @param lightComesThrough whether the blades let light through meanwhile
   */
  public void cock(boolean lightComesThrough) {
    onBench(() -> bench.camera().cock(lightComesThrough));
  }

  /**
   * From the next light on only a share of it comes through, as when the lamp was moved: whatever
   * the stop is turned to.
   *
   * @param share of the full light of the sensors, above 0 and at most 1
   */
  public void dim(double share) {
    if (!(share > 0 && share <= 1)) {
      throw new IllegalArgumentException("a share of the light is above 0 up to 1, not " + share);
    }
    onBench(() -> bench.camera().dim(share));
  }

  /**
   * Turns the stop: from now on another share of the light comes through, also while the shutter is
   * held open.
   *
   * @param share of the full light of the sensors, above 0 and at most 1
   */
  public void stop(double share) {
    if (!(share > 0 && share <= 1)) {
      throw new IllegalArgumentException("a share of the light is above 0 up to 1, not " + share);
    }
    onBench(() -> bench.camera().stop(share));
  }

  /** How much of the usual full light comes from where the lamp stands. */
  public double lamp() {
    return held(() -> bench.camera().lamp());
  }

  /**
   * Moves the lamp: from now on another share of the usual full light comes, also while the shutter
   * is held open.
   *
   * @param share above 0; from about 1.25 on the sensors are at the end of their scale
   */
  public void lamp(double share) {
    if (!(share > 0) || !Double.isFinite(share)) {
      throw new IllegalArgumentException("a share of the light is above 0, not " + share);
    }
    onBench(() -> bench.camera().lamp(share));
  }

  /** Puts the sensors elsewhere behind the gate, or lights them from elsewhere. */
  public void place(SensorBar bar, SensorSet sensors) {
    onBench(
        () -> {
          bench.camera().bar(bar);
          bench.world().sensors(sensors);
        });
  }

  /** Changes the lamp. */
  public void lamp(Lamp lamp) {
    onBench(() -> bench.world().lamp(lamp));
  }

  /** Light of the room comes to the sensors past the camera: a share of full light, 0 or more. */
  public void room(double share) {
    onBench(() -> bench.camera().room(share));
  }

  /** A white screen brings light to the sensors past the camera, likewise. */
  public void screenReaches(double share) {
    onBench(() -> bench.camera().screenReaches(share));
  }

  /** The screen turns white, or dark again. */
  public void screen(boolean isWhite) {
    onBench(() -> bench.camera().screen(isWhite));
  }

  /** Covers the lamp, or takes the cover off. */
  public void cover(boolean covered) {
    onBench(() -> bench.camera().cover(covered));
  }

  /** The body of the camera has another flap, or none. */
  public void flap(InventedFlap flap) {
    onBench(() -> bench.camera().flap(flap));
  }

  /**
   * From now on the shut blades let light through.
   *
   * @param uncocked share of full light while the shutter is not cocked, 0 up to 1
   * @param cocked while it is cocked
   */
  public void leak(double uncocked, double cocked) {
    if (!(uncocked >= 0 && uncocked < 1) || !(cocked >= 0 && cocked < 1)) {
      throw new IllegalArgumentException(
          "shut blades let a share of the light through: " + uncocked + ", " + cocked);
    }
    onBench(() -> bench.camera().leak(uncocked, cocked));
  }

  /**
   * Leaves the camera alone. Ten minutes or more count as a rest, after which the first firing
   * lags. Paced, the shutter is only taken to have rested, as the clock is not ours.
   *
   * @param seconds 0 or more
   */
  public void rest(double seconds) {
    if (!(seconds >= 0) || !Double.isFinite(seconds)) {
      throw new IllegalArgumentException("a rest takes 0 seconds or more, not " + seconds);
    }
    onBench(() -> bench.camera().rest(seconds));
  }

  /**
   * Pulls the cable at once: the board loses its power, and this link is lost for good. Lines that
   * were not read are gone. The camera stays as it is.
   */
  public void pullCable() {
    onBench(() -> bench.world().stopBoard());
  }

  /**
   * Pulls the cable later.
   *
   * @param seconds of virtual time from the start of what is asked for next, 0 or more; so 0.1 and
   *     then a firing pulls it 0.1 s after the release was pressed
   */
  public void pullCableIn(double seconds) {
    if (!(seconds >= 0) || !Double.isFinite(seconds)) {
      throw new IllegalArgumentException("not a time from now on: " + seconds);
    }
    onBench(() -> bench.world().stopBoardIn(seconds));
  }

  /**
   * Another kind of rig takes the place of this one, with the same camera and lamp. Its cable is
   * pulled: the other one greets when it is plugged in.
   */
  public void rewire(BoardTraits.Kind kind, SensorSet sensors) {
    onBench(
        () -> {
          bench.world().stopBoard();
          bench.world().rewire(kind, sensors);
        });
  }

  /**
   * Plugs the cable in: the board starts anew, one boot later.
   *
   * @return the new link to the same bench; this one stays lost
   */
  public PracticeRig plugIn() {
    return fromBench(
        () -> {
          bench.world().startBoard();
          return new PracticeRig(bench);
        });
  }

  /**
   * When the counter of this link's board stands at some ticks, by the clock that was handed in.
   *
   * @throws IllegalStateException on a rig without a clock
   */
  public long nanosAt(long boardTicks) {
    return held(() -> bench.world().nanosAt(board.startTicks() + boardTicks));
  }

  /** Does several things on the bench, or writes, while virtual time stands still. */
  public void together(Runnable steps) {
    onBench(steps);
  }

  /** The truth about all firings so far; nothing that measures may look at it. */
  public List<PracticeFiring> firings() {
    return held(() -> bench.camera().firings());
  }

  private void onBench(Runnable steps) {
    fromBench(
        () -> {
          steps.run();
          return true;
        });
  }

  private <T> T fromBench(Supplier<T> steps) {
    return held(
        () -> {
          catchUp();
          T result = steps.get();
          bench.changed().signalAll();
          return result;
        });
  }

  private <T> T held(Supplier<T> steps) {
    bench.lock().lock();
    try {
      return steps.get();
    } finally {
      bench.lock().unlock();
    }
  }

  /** Not within {@link #together}, where time stands still. */
  private void catchUp() {
    if (bench.lock().getHoldCount() == 1) {
      bench.world().catchUp();
    }
  }

  private void requireAlive() {
    if (closed) {
      throw new LinkLostException(Words.say("rig.practice.away"));
    }
    if (bench.world().board() != board) {
      throw new LinkLostException(Words.say("rig.practice.pulled"));
    }
  }
}
