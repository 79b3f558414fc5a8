package org.halflight.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.light.FlickerJudge;
import org.halflight.light.LampLight;
import org.halflight.light.LightBlock;
import org.halflight.light.LightFlutter;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/**
 * Setting the light, step by step: dark with the shutter closed, full light with it held open,
 * where the comparators really switch, thresholds on the levels that belong to all that, and read
 * back where they really stand.
 *
 * <p>A state machine that is told what the rig says and answers with the next command; it knows no
 * port and no clock. Not safe for use by several threads.
 */
public final class LightSetting {
  /** Blocks of one millisecond in each measurement of light: whole cycles of 100 and of 120 Hz. */
  public static final int BLOCKS = 250;

  /** Blocks of an outer sensor: likewise, and there is no lamp to be judged by them. */
  public static final int OUTER_BLOCKS = 50;

  /** Beats without a light block after which the rig has no more to say. */
  private static final int PATIENCE_BEATS = 8;

  /** Beats of at most 262 ms that the threshold filters get to settle; they need 0.1 s. */
  private static final int SETTLE_BEATS = 2;

  /** Beats for the longest sweep of a threshold and its answer: 6.5 s. */
  private static final int SWEEP_BEATS = 25;

  /** Opening a shutter by hand makes four edges a channel, with some bounce. */
  private static final int MOST_EDGES = 40;

  /**
   * A level that cannot be set stands no higher in the light than this, or it would miss a firing
   * that does not open fully. Our choice.
   */
  private static final double GREATEST_FIXED_SHARE = 0.5;

  /** Where the procedure stands. */
  public enum Step {
    /** The dark level is being measured; the shutter must stay closed. */
    DARK,
    /** Waits for the person to hold the shutter open. */
    OPEN_THE_SHUTTER,
    /** Full light is being measured; the shutter must stay open. */
    FULL,
    /** The comparators are looked at; the shutter must stay open. */
    TRIPS,
    /** Thresholds are being set and read back. */
    THRESHOLDS,
    /** Done; see {@link #levels()}. */
    DONE,
    /** Not possible with this light; see {@link #refusal()}. */
    REFUSED
  }

  /** Why the light cannot be used. */
  public sealed interface Refusal {
    /** Dark, full light or thresholds do not fit. */
    record Levels(LightLevels.Reason reason) implements Refusal {}

    /** The lamp is not steady. */
    record Lamp(LampLight finding) implements Refusal {}

    /** The thresholds were read back too far from the levels that belong to this light. */
    record ThresholdsOff(LevelPair levels) implements Refusal {}

    /** The light crossed the thresholds again and again while the shutter was held open. */
    record Chatters() implements Refusal {}

    /** A comparator switches too far from its threshold, or with too much hysteresis. */
    record TripsOff(Channel channel, ComparatorTrips found) implements Refusal {}

    /** A comparator did not switch though its threshold went through the light. */
    record NeverTrips(Channel channel) implements Refusal {}

    /** The light was no longer the one that was measured. */
    record LightMoved() implements Refusal {}

    /** The rig started anew meanwhile. */
    record Restarted() implements Refusal {}

    /** The rig sent no light, or refused a command. */
    record NoAnswer() implements Refusal {}
  }

  private final boolean oneLevel;
  private final boolean fixedLevel;
  private final List<Channel> sensors;
  private final Map<Channel, Double> darkCounts = new EnumMap<>(Channel.class);
  private final Map<Channel, SensorLight> outer = new EnumMap<>(Channel.class);
  private Channel sensor = Channel.CENTRE_LOW;
  private final List<LightBlock> blocks = new ArrayList<>();
  private Step step = Step.DARK;
  private double darkSum16;
  private double fullSum16;
  private int beatsWithoutNews;
  private int lightEdges;
  private final boolean looksAtComparators;
  private boolean thresholdsSet;
  private OptionalInt lowSum64 = OptionalInt.empty();
  private Optional<TripSweep> sweep = Optional.empty();
  private Optional<ThresholdCodes> codes = Optional.empty();
  private Optional<LightLevels> levels = Optional.empty();
  private Optional<Refusal> refusal = Optional.empty();
  private Optional<LampLight> lamp = Optional.empty();

  /** A light setting for a rig of two levels that looks at the comparators too. */
  public LightSetting() {
    this(true, false, false, false);
  }

  /**
   * @param looksAtComparators false for a rig that is known not to be able to
   * @param oneLevel whether the rig has one threshold
   * @param fixedLevel whether that cannot be set; otherwise it is set to both levels in turn
   * @param readsOuter whether the light of the outer sensors is read, too
   */
  public LightSetting(
      boolean looksAtComparators, boolean oneLevel, boolean fixedLevel, boolean readsOuter) {
    sensors =
        readsOuter
            ? List.of(Channel.OUTER_A, Channel.OUTER_B, Channel.CENTRE_LOW)
            : List.of(Channel.CENTRE_LOW);
    this.looksAtComparators = looksAtComparators && !fixedLevel;
    this.oneLevel = oneLevel && !fixedLevel;
    this.fixedLevel = fixedLevel;
  }

  /** Whether the rig has one level, and that cannot be set. */
  public boolean hasFixedLevel() {
    return fixedLevel;
  }

  /** Begins: the command to send first. The shutter is closed. */
  public RigCommand begin() {
    return measure(sensors.get(0));
  }

  /** The person holds the shutter open: the command to send next. */
  public RigCommand shutterIsOpen() {
    if (step != Step.OPEN_THE_SHUTTER) {
      throw new IllegalArgumentException("the open shutter is asked for after the dark level only");
    }
    step = Step.FULL;
    return measure(sensors.get(0));
  }

  /** Hears what the rig says; gives the command to send because of it, if any. */
  public Optional<RigCommand> onEvent(RigEvent event) {
    if (event instanceof RigMessage.LightBlock light) {
      return light(light);
    }
    if (event instanceof RigEvent.TimeAt) {
      return beat();
    }
    if (event instanceof RigEvent.EdgeAt edge && edge.edge().channel().isLight()) {
      lightEdges++;
    }
    if (event instanceof RigMessage.Thresholds read && step == Step.THRESHOLDS) {
      if (oneLevel && lowSum64.isEmpty()) {
        lowSum64 = OptionalInt.of(read.lowSum64());
        return set(RigCommand.SetThresholds.one(codes.orElseThrow().high()));
      }
      judgeThresholds(read);
    }
    if (event instanceof RigEvent.Restarted && isWaitingForTheRig()) {
      refuse(new Refusal.Restarted());
    }
    if (step == Step.TRIPS) {
      return trips(event);
    }
    if (event instanceof RigMessage.Answer answered
        && answered.result() != RigMessage.Result.DONE
        && isWaitingForTheRig()) {
      refuse(new Refusal.NoAnswer());
    }
    return Optional.empty();
  }

  /** The rig does not answer. */
  void unanswered() {
    if (isWaitingForTheRig()) {
      refuse(whyNoLight());
    }
  }

  /** Edges go before light blocks: so many of them keep the light from being told at all. */
  private Refusal whyNoLight() {
    return step == Step.FULL && lightEdges > MOST_EDGES
        ? new Refusal.Chatters()
        : new Refusal.NoAnswer();
  }

  /** Where the procedure stands. */
  public Step step() {
    return step;
  }

  /** Where the comparators really switch; empty when the rig could not tell. */
  public Optional<TripPoints> trips() {
    return swept()
        .filter(TripSweep.Outcome.Known.class::isInstance)
        .map(known -> ((TripSweep.Outcome.Known) known).trips());
  }

  /** Whether the rig said that it cannot look at its comparators, as older firmware does. */
  public boolean rigCannotSweep() {
    return swept().filter(TripSweep.Outcome.NotAble.class::isInstance).isPresent();
  }

  /** Whether what the rig found about its comparators did not come through. */
  public boolean tripsNotHeard() {
    return swept().filter(TripSweep.Outcome.NotHeard.class::isInstance).isPresent();
  }

  /** The codes that the thresholds were set to. */
  public Optional<ThresholdCodes> codes() {
    return codes;
  }

  private Optional<TripSweep.Outcome> swept() {
    return sweep.flatMap(TripSweep::outcome);
  }

  /** Part of the measurement under way that is done, 0 to 1. */
  public double progress() {
    if (step == Step.TRIPS) {
      return sweep.orElseThrow().progress();
    }
    return blocks.isEmpty() || sensor != Channel.CENTRE_LOW
        ? 0
        : Math.min(1, (blocks.get(blocks.size() - 1).index() + 1.0) / BLOCKS);
  }

  /** The light as it was set, when done. */
  public Optional<LightLevels> levels() {
    return levels;
  }

  /** Light of the outer sensors, of those that were read. */
  public Map<Channel, SensorLight> outer() {
    return outer;
  }

  /** Why it was not, when refused. */
  public Optional<Refusal> refusal() {
    return refusal;
  }

  /** What the full light said about the lamp. */
  public Optional<LampLight> lamp() {
    return lamp;
  }

  private boolean isWaitingForTheRig() {
    return step == Step.DARK || step == Step.FULL || step == Step.TRIPS || step == Step.THRESHOLDS;
  }

  private RigCommand measure(Channel next) {
    sensor = next;
    blocks.clear();
    beatsWithoutNews = 0;
    lightEdges = 0;
    return new RigCommand.MeasureLight(sensor, wantedBlocks());
  }

  private int wantedBlocks() {
    return sensor == Channel.CENTRE_LOW ? BLOCKS : OUTER_BLOCKS;
  }

  private Optional<RigCommand> light(RigMessage.LightBlock block) {
    boolean measuring = step == Step.DARK || step == Step.FULL;
    if (!measuring || block.channel() != sensor) {
      return Optional.empty();
    }
    beatsWithoutNews = 0;
    blocks.add(new LightBlock(block.index(), block.sum16(), block.least(), block.most()));
    return block.index() + 1 >= wantedBlocks() ? measured() : Optional.empty();
  }

  private Optional<RigCommand> beat() {
    if (!isWaitingForTheRig()) {
      return Optional.empty();
    }
    beatsWithoutNews++;
    if (step == Step.TRIPS) {
      if (beatsWithoutNews >= SWEEP_BEATS) {
        refuse(new Refusal.NoAnswer());
      }
      return Optional.empty();
    }
    if (step == Step.THRESHOLDS) {
      if (!thresholdsSet && beatsWithoutNews > SETTLE_BEATS) {
        thresholdsSet = true;
        beatsWithoutNews = 0;
        return Optional.of(new RigCommand.AskThresholds());
      }
    } else if (beatsWithoutNews >= PATIENCE_BEATS && !blocks.isEmpty()) {
      return measured();
    }
    if (beatsWithoutNews >= PATIENCE_BEATS && sensor != Channel.CENTRE_LOW) {
      return Optional.of(measureNext());
    }
    if (beatsWithoutNews >= PATIENCE_BEATS) {
      refuse(whyNoLight());
    }
    return Optional.empty();
  }

  private RigCommand measureNext() {
    return measure(sensors.get(sensors.indexOf(sensor) + 1));
  }

  private Optional<RigCommand> measured() {
    double mean = blocks.stream().mapToInt(LightBlock::sum16).average().orElseThrow();
    beatsWithoutNews = 0;
    if (sensor != Channel.CENTRE_LOW) {
      measuredOuter(mean / LightBlock.READINGS);
      return Optional.of(measureNext());
    }
    if (step == Step.DARK) {
      darkSum16 = mean;
      step = Step.OPEN_THE_SHUTTER;
      return Optional.empty();
    }
    fullSum16 = mean;
    return judgeLight();
  }

  private void measuredOuter(double counts) {
    if (step == Step.DARK) {
      darkCounts.put(sensor, counts);
    } else if (darkCounts.containsKey(sensor)) {
      outer.put(sensor, new SensorLight(darkCounts.get(sensor), counts));
    }
  }

  private Optional<RigCommand> judgeLight() {
    ThresholdCodes.Outcome light = ThresholdCodes.forLightSums(darkSum16, fullSum16);
    if (light instanceof ThresholdCodes.Refused refused) {
      refuse(new Refusal.Levels(refused.reason()));
      return Optional.empty();
    }
    LampLight finding = FlickerJudge.judge(blocks, darkSum16);
    lamp = Optional.of(finding);
    if (!(finding instanceof LampLight.Steady)) {
      refuse(new Refusal.Lamp(finding));
      return Optional.empty();
    }
    if (looksAtComparators) {
      step = Step.TRIPS;
      LightFlutter flutter = LightFlutter.of(blocks.stream().mapToInt(LightBlock::sum16).toArray());
      sweep = Optional.of(new TripSweep(fullSum16 / 16, flutter, oneLevel));
      return sweep.map(TripSweep::command);
    }
    return place();
  }

  private Optional<RigCommand> trips(RigEvent event) {
    if (event instanceof RigMessage.TripPoint) {
      beatsWithoutNews = 0;
    }
    TripSweep under = sweep.orElseThrow();
    Optional<RigCommand> next = under.onEvent(event);
    if (under.outcome().isEmpty()) {
      if (next.isPresent()) {
        beatsWithoutNews = 0;
      }
      return next;
    }
    if (under.outcome().get() instanceof TripSweep.Outcome.Wrong wrong) {
      refuse(wrong.refusal());
      return Optional.empty();
    }
    return place();
  }

  private TripPoints knownTrips() {
    return trips().orElse(TripPoints.EXACT);
  }

  /** Sets the thresholds so that the comparators switch where they should. */
  private Optional<RigCommand> place() {
    if (fixedLevel) {
      step = Step.THRESHOLDS;
      thresholdsSet = true;
      beatsWithoutNews = 0;
      return Optional.of(new RigCommand.AskThresholds());
    }
    ThresholdCodes.Outcome placed =
        ThresholdCodes.forLight(darkSum16 / 16, fullSum16 / 16, knownTrips());
    step = Step.THRESHOLDS;
    ThresholdCodes found = ((ThresholdCodes.Found) placed).codes();
    codes = Optional.of(found);
    return set(
        oneLevel
            ? RigCommand.SetThresholds.one(found.low())
            : new RigCommand.SetThresholds(found.low(), found.high()));
  }

  /** The command, and from here on the thresholds are to settle. */
  private Optional<RigCommand> set(RigCommand.SetThresholds thresholds) {
    thresholdsSet = false;
    beatsWithoutNews = 0;
    return Optional.of(thresholds);
  }

  private void judgeThresholds(RigMessage.Thresholds read) {
    if (fixedLevel) {
      judgeFixedLevel(read.lowSum64() / 64.0);
      return;
    }
    LightLevels set =
        LightLevels.ofSums(
            darkSum16, fullSum16, lowSum64.orElse(read.lowSum64()), read.highSum64());
    if (set.levels() instanceof LightLevels.Refused refused) {
      refuse(new Refusal.Levels(refused.reason()));
      return;
    }
    LevelPair pair = ((LightLevels.Known) set.levels()).levels();
    boolean allowed = knownTrips().correction(set).filter(LevelCorrection::isAllowed).isPresent();
    if (!allowed) {
      refuse(new Refusal.ThresholdsOff(pair));
      return;
    }
    levels = Optional.of(set);
    step = Step.DONE;
  }

  private void judgeFixedLevel(double counts) {
    LightLevels set = LightLevels.withFixedLevel(darkSum16 / 16, fullSum16 / 16, counts);
    double share = set.shareOfFull(counts);
    if (share <= 0 || share > GREATEST_FIXED_SHARE) {
      refuse(
          new Refusal.Levels(
              share <= 0
                  ? LightLevels.Reason.THRESHOLD_NOT_ABOVE_DARK
                  : LightLevels.Reason.LIGHT_TOO_LOW));
      return;
    }
    levels = Optional.of(set);
    step = Step.DONE;
  }

  private void refuse(Refusal why) {
    refusal = Optional.of(why);
    step = Step.REFUSED;
  }
}
