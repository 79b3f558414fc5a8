package org.halflight.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/** When the release was pressed, and how long the light took from there. */
final class ReleaseTiming {
  /**
   * Light without a press of its own that comes within this time after a press without light
   * belongs to it, in seconds: self-timers run for up to about fifteen. Common practice, no source.
   */
  static final double LATEST_LIGHT_SECONDS = 30;

  private ReleaseTiming() {}

  /** Whether the release was pressed, and not only let go. */
  static boolean isPressed(Firing firing) {
    return firing.of(Channel.RELEASE).stream().anyMatch(Edge::high);
  }

  /** Whether the centre sensor saw light. */
  static boolean hasLight(Firing firing) {
    return firstLight(firing).isPresent();
  }

  /** From the last press before first light to first light, in seconds. */
  static OptionalDouble delaySeconds(Firing firing, TickRate rate) {
    return delaySeconds(firing, OptionalLong.empty(), rate);
  }

  /**
   * The same to another light than the first at the centre.
   *
   * @param lightTicks empty for the first at the centre
   */
  static OptionalDouble delaySeconds(Firing firing, OptionalLong lightTicks, TickRate rate) {
    OptionalLong light = lightTicks.isPresent() ? lightTicks : firstLight(firing);
    if (light.isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalLong press =
        firing.of(Channel.RELEASE).stream()
            .filter(edge -> edge.high() && edge.ticks() <= light.getAsLong())
            .mapToLong(Edge::ticks)
            .max();
    return press.isPresent()
        ? OptionalDouble.of(rate.seconds(light.getAsLong() - press.getAsLong()))
        : OptionalDouble.empty();
  }

  /** Whether light that came by itself is that of an earlier press. */
  static boolean belongs(Firing light, Firing press, TickRate rate) {
    OptionalLong first = firstLight(light);
    if (first.isEmpty() || delaySeconds(light, rate).isPresent()) {
      return false;
    }
    long pressed =
        press.of(Channel.RELEASE).stream()
            .filter(Edge::high)
            .mapToLong(Edge::ticks)
            .max()
            .orElseThrow();
    double seconds = rate.seconds(first.getAsLong() - pressed);
    return seconds >= 0 && seconds <= LATEST_LIGHT_SECONDS;
  }

  /** Whether the light of a press may still come at a time. */
  static boolean mayCome(Firing press, long ticks, TickRate rate) {
    return rate.seconds(ticks - press.lastTicks()) <= LATEST_LIGHT_SECONDS;
  }

  /** Press and light as the one release that they are. */
  static Firing join(Firing press, Firing light) {
    List<Edge> edges = new ArrayList<>(press.edges());
    edges.addAll(light.edges());
    return joined(edges, EnumSet.noneOf(Firing.Damage.class), press, light);
  }

  /** A firing that a break cut in two, put together; nobody knows what the break took. */
  static Firing joinBroken(Firing firing, Firing rest) {
    List<Edge> edges = new ArrayList<>(firing.edges());
    rest.edges().stream().filter(edge -> !firing.edges().contains(edge)).forEach(edges::add);
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return joined(edges, EnumSet.of(Firing.Damage.LINK_LOST), firing, rest);
  }

  private static Firing joined(
      List<Edge> edges, Set<Firing.Damage> damage, Firing first, Firing second) {
    damage.addAll(first.damage());
    damage.addAll(second.damage());
    return new Firing(edges, List.copyOf(damage), first.knob()).withKnob(second.knob());
  }

  private static OptionalLong firstLight(Firing firing) {
    return firing.of(Channel.CENTRE_LOW).stream()
        .filter(Edge::high)
        .mapToLong(Edge::ticks)
        .findFirst();
  }
}
