package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.light.LampLight;
import org.halflight.profile.ComparatorTrips;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/** The light and what is wrong with it, in sentences. */
public final class LightSentences {
  /** The steps of a sweep are 1.2 mV, and its readings are no better than that. */
  private static final double SAID_MILLIVOLTS_LEAST = 2;

  /** One code of a threshold. */
  private static final double READ_BACK_MILLIVOLTS_MOST = 20;

  private LightSentences() {}

  /**
   * How the light was set.
   *
   * @param fixedLevel whether the rig has one level, and that cannot be set
   */
  public static String done(LightLevels levels, boolean fixedLevel) {
    LevelPair pair = ((LightLevels.Known) levels.levels()).levels();
    return Words.say(
        fixedLevel ? "light.done.fixed" : "light.done",
        Numbers.percent(levels.fullCounts() / BoardTraits.FULL_SCALE_COUNTS),
        Numbers.percent(levels.darkCounts() / levels.fullCounts()),
        Numbers.percent(pair.low()),
        Numbers.percent(pair.high()));
  }

  /** How the light was set, and what was found about the two levels meanwhile. */
  public static String done(LightSetting setting) {
    List<String> sentences = new ArrayList<>();
    sentences.add(done(setting.levels().orElseThrow(), setting.hasFixedLevel()));
    setting
        .trips()
        .ifPresent(
            trips -> {
              sentences.add(trip(Channel.CENTRE_LOW, trips.low()));
              sentences.add(trip(Channel.CENTRE_HIGH, trips.high()));
            });
    if (setting.rigCannotSweep()) {
      sentences.add(Words.say("light.trip.cannot"));
    }
    if (setting.tripsNotHeard()) {
      sentences.add(Words.say("light.trip.notHeard"));
    }
    LightLevels set = setting.levels().get();
    setting
        .codes()
        .ifPresent(
            codes -> {
              readBack(Channel.CENTRE_LOW, codes.lowCounts(), set.lowCounts(), sentences);
              readBack(Channel.CENTRE_HIGH, codes.highCounts(), set.highCounts(), sentences);
            });
    return String.join(" ", sentences);
  }

  private static String trip(Channel channel, ComparatorTrips found) {
    double millivolts = found.offsetCounts() * BoardTraits.MILLIVOLTS_PER_COUNT;
    if (Math.abs(millivolts) < SAID_MILLIVOLTS_LEAST) {
      return Words.say("light.trip.right", level(channel));
    }
    return Words.say(
        millivolts > 0 ? "light.trip.above" : "light.trip.below",
        level(channel),
        whole(Math.abs(millivolts)));
  }

  private static void readBack(
      Channel channel, double wantedCounts, double readCounts, List<String> sentences) {
    // A reading is the voltage cut down to whole counts, so it stands for half a count more.
    double off = (readCounts + 0.5 - wantedCounts) * BoardTraits.MILLIVOLTS_PER_COUNT;
    if (Math.abs(off) > READ_BACK_MILLIVOLTS_MOST) {
      sentences.add(Words.say("light.readBack", level(channel), whole(Math.abs(off))));
    }
  }

  private static String level(Channel channel) {
    return Words.say(channel == Channel.CENTRE_LOW ? "light.level.low" : "light.level.high");
  }

  private static String whole(double millivolts) {
    return String.valueOf(Math.round(millivolts));
  }

  /** Why it was not, and what to do. */
  public static String refused(LightSetting.Refusal refusal) {
    return Words.say("light.again", why(refusal));
  }

  private static String why(LightSetting.Refusal refusal) {
    if (refusal instanceof LightSetting.Refusal.Levels levels) {
      return Words.of("light.refused", levels.reason());
    }
    if (refusal instanceof LightSetting.Refusal.Lamp lamp) {
      return lamp(lamp.finding());
    }
    if (refusal instanceof LightSetting.Refusal.ThresholdsOff off) {
      return Words.say(
          "light.refused.thresholds-off",
          Numbers.percent(off.levels().low()),
          Numbers.percent(off.levels().high()));
    }
    if (refusal instanceof LightSetting.Refusal.TripsOff off) {
      return tripsOff(off);
    }
    if (refusal instanceof LightSetting.Refusal.NeverTrips never) {
      return Words.say("light.refused.never-trips", level(never.channel()));
    }
    if (refusal instanceof LightSetting.Refusal.LightMoved) {
      return Words.say("light.refused.moved");
    }
    if (refusal instanceof LightSetting.Refusal.Chatters) {
      return Words.say("light.refused.chatters");
    }
    return Words.say(
        refusal instanceof LightSetting.Refusal.Restarted
            ? "light.refused.restarted"
            : "light.refused.noAnswer");
  }

  private static String tripsOff(LightSetting.Refusal.TripsOff off) {
    boolean offset = Math.abs(off.found().offsetCounts()) > TripSweep.OFFSET_COUNTS_MOST;
    return offset
        ? Words.say(
            "light.refused.trip-offset",
            level(off.channel()),
            whole(Math.abs(off.found().offsetCounts()) * BoardTraits.MILLIVOLTS_PER_COUNT),
            whole(TripSweep.OFFSET_COUNTS_MOST * BoardTraits.MILLIVOLTS_PER_COUNT))
        : Words.say(
            "light.refused.trip-hysteresis",
            level(off.channel()),
            whole(off.found().hysteresisCounts() * BoardTraits.MILLIVOLTS_PER_COUNT),
            whole(TripSweep.HYSTERESIS_COUNTS_MOST * BoardTraits.MILLIVOLTS_PER_COUNT));
  }

  private static String lamp(LampLight finding) {
    if (finding instanceof LampLight.MainsFlicker flicker) {
      return Words.say("light.refused.mains", flicker.hertz(), oneDecimal(flicker.depthPercent()));
    }
    if (finding instanceof LampLight.FastRipple ripple) {
      return Words.say("light.refused.ripple", oneDecimal(ripple.depthPercent()));
    }
    if (finding instanceof LampLight.Unsteady unsteady) {
      return Words.say(
          "light.refused.unsteady",
          oneDecimal(Math.abs(unsteady.driftPercent())),
          oneDecimal(unsteady.restPercent()));
    }
    return Words.of("light.refused", ((LampLight.Unknown) finding).reason());
  }

  private static String oneDecimal(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
