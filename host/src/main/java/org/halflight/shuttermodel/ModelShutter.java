package org.halflight.shuttermodel;

import java.util.Set;
import org.halflight.speeds.MarkedSpeed;

/** A model of a shutter, as the practice camera works it. */
public sealed interface ModelShutter permits LeafShutter, CurtainShutter {
  /** What the program calls this shutter. */
  String name();

  /** The marked speeds, in the order of the dial. */
  Set<MarkedSpeed> dial();

  /** What happens at a marked speed of its dial when it is this firing's turn. */
  ModelFiring firing(MarkedSpeed speed, FiringTurn turn);

  /** The release. */
  ReleaseTiming timing();

  /** The flash contact. */
  ModelContact contact();

  /** The self-timer. */
  ModelSelfTimer selfTimer();

  /** Opening fully, as for B and T, from time zero on, as the sensors of a bar see it. */
  LightPaths opening(SensorBar bar);

  /** Closing from fully open, from time zero on. */
  LightPaths closing(SensorBar bar);
}
