package org.halflight.rig.practice;

import java.util.EnumSet;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.halflight.rig.RigMessage;
import org.halflight.shuttermodel.LevelComparator;
import org.halflight.signal.Channel;

/** The levels of the board's inputs, and the comparators that make those of the light. */
final class BoardInputs {
  private final BoardLife life;
  private final LightMeter meter;
  private final Sender sender;
  private final Thresholds thresholds;
  private final Set<Channel> high = EnumSet.noneOf(Channel.class);
  private long edges;

  BoardInputs(BoardLife life, LightMeter meter, Sender sender) {
    this.life = life;
    this.meter = meter;
    this.sender = sender;
    thresholds = new Thresholds(life.world().traits().fixedLevel());
    life.world().inputs().stream().filter(this::exists).forEach(high::add);
    for (Channel channel : Channel.values()) {
      if (channel.isLight()
          && exists(channel)
          && isAbove(channel, meter.steadyMillivolts(channel, life.startTicks()), false)) {
        high.add(channel);
      }
    }
  }

  Thresholds thresholds() {
    return thresholds;
  }

  boolean isHigh(Channel channel) {
    return high.contains(channel);
  }

  /** Bit n is the level of the channel with code n. */
  int levels() {
    PracticeWiring wiring = life.world().wiring();
    int mask = wiring.shorted();
    for (Channel each : Channel.values()) {
      if (exists(each) && wiring.level(each, high.contains(each))) {
        mask |= wiring.pin(each).map(pin -> 1 << pin.code()).orElse(0);
      }
    }
    return mask;
  }

  private boolean exists(Channel channel) {
    return (PracticeBoard.channels(life.world().traits()) & 1 << channel.code()) != 0;
  }

  /** How many edges were told. */
  long edges() {
    return edges;
  }

  /** An input changed, stamped with ticks of the world. A change to the same level is none. */
  void edge(Channel channel, boolean toHigh, long ticks) {
    PracticeWiring wiring = life.world().wiring();
    if (!exists(channel) || (channel.isLight() && toHigh && wiring.isDark(channel))) {
      return;
    }
    if (toHigh ? high.add(channel) : high.remove(channel)) {
      wiring
          .pin(channel)
          .ifPresent(
              pin -> {
                edges++;
                boolean level = wiring.level(channel, toHigh);
                sender.send(at -> new RigMessage.EdgeSeen(at, pin, level, life.low32(ticks)));
              });
    }
  }

  /** Sets both thresholds, which then pass the light on their way. */
  void setThresholds(int lowCode, int highCode) {
    long now = life.now();
    thresholds.set(lowCode, highCode, now);
    for (Channel channel : Channel.values()) {
      if (channel.isLight()) {
        double light = meter.steadyMillivolts(channel, now);
        double open = life.world().light().openAt(now);
        LevelComparator comparator = meter.comparator(channel);
        DoubleStream.of(light - comparator.onMillivolts(0), light - comparator.offMillivolts(0))
            .distinct()
            .mapToObj(passed -> thresholds.passes(channel, passed))
            .flatMapToLong(OptionalLong::stream)
            .forEach(
                ticks -> {
                  life.world().reach(ticks);
                  life.later(ticks, () -> compare(channel, open, light));
                });
      }
    }
  }

  /** Compares all light with its thresholds, with the noise of a millisecond. */
  void compareAll() {
    for (Channel each : Channel.values()) {
      if (each.isLight()) {
        compare(each, meter.extremeMillivolts(each, life.now(), !high.contains(each)));
      }
    }
  }

  /** A threshold has passed the light, unless one of the two went elsewhere in the meantime. */
  private void compare(Channel channel, double openThen, double lightThen) {
    long now = life.now();
    boolean moved = life.world().light().openAt(now) != openThen;
    compare(channel, moved ? meter.steadyMillivolts(channel, now) : lightThen);
  }

  private void compare(Channel channel, double light) {
    boolean above = isAbove(channel, light, high.contains(channel));
    if (above != high.contains(channel)) {
      edge(channel, above, life.world().stamp(channel, life.now()));
    }
  }

  private boolean isAbove(Channel channel, double light, boolean wasAbove) {
    return meter
        .comparator(channel)
        .isOn(light, thresholds.millivolts(channel, life.now()), wasAbove);
  }
}
