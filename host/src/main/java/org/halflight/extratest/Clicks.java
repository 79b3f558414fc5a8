package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Clicks in the edges of one channel, their ringing separated out.
 *
 * <p>A piezo rings at its own frequency, and its comparator makes a burst of edges of it: pulses
 * that get narrower while the ringing decays, with gaps that grow. So only the first edge after
 * quiet is the onset of a click. An edge is ringing while the quiet before it is shorter than
 * {@link #QUIET_SECONDS}, and in any case within {@link #RINGING_SECONDS} of the onset: what starts
 * again there may be a second click or may be ringing that came back over the threshold, and no
 * edge tells which. A sensor that holds its output for a while makes one pulse of a click: as long
 * as it is high it sounds, and there is no quiet.
 *
 * @param all in order of time
 */
public record Clicks(List<Click> all) {
  /**
   * Quiet from which an edge is no ringing, in seconds: one period of 1 kHz, lower than small
   * piezos ring. Our choice.
   */
  public static final double QUIET_SECONDS = 0.001;

  /**
   * Shorter quiet within ringing is not noted, in seconds: a rig whose line is full leaves edges
   * out that are nearer to each other. See docs/protocol.md.
   */
  public static final double PAUSE_SECONDS = 0.0005;

  /** Longer than this no single click rings, in seconds. Our choice. */
  public static final double RINGING_SECONDS = 0.004;

  public Clicks {
    all = List.copyOf(all);
  }

  /**
   * The clicks of a channel of a firing. Either level of a contact begins one; the click sensor has
   * to rise.
   */
  public static Clicks of(Firing firing, Channel channel, TickRate rate) {
    long quiet = rate.ticks(QUIET_SECONDS);
    long ringing = rate.ticks(RINGING_SECONDS);
    long pause = rate.ticks(PAUSE_SECONDS);
    List<Click> clicks = new ArrayList<>();
    List<Edge> edges = firing.of(channel);
    int at = 0;
    while (at < edges.size()) {
      long onset = edges.get(at).ticks();
      long last = onset;
      int first = at;
      boolean startsAgain = false;
      List<Click.Pause> pauses = new ArrayList<>();
      for (at++; at < edges.size(); at++) {
        long ticks = edges.get(at).ticks();
        boolean sounds = channel == Channel.CLICK && !edges.get(at).high();
        long silent = sounds ? 0 : ticks - last;
        if (silent >= quiet && ticks - onset >= ringing) {
          break;
        }
        startsAgain |= silent >= quiet;
        if (silent >= pause) {
          pauses.add(new Click.Pause(last, ticks));
        }
        last = ticks;
      }
      clicks.add(new Click(onset, last, at - first, startsAgain || last - onset > ringing, pauses));
    }
    return new Clicks(clicks);
  }

  /** Those with an onset between two times, both included. */
  public List<Click> between(long fromTicks, long toTicks) {
    return all.stream()
        .filter(click -> click.onsetTicks() >= fromTicks && click.onsetTicks() <= toTicks)
        .toList();
  }
}
