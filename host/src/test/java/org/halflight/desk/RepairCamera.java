package org.halflight.desk;

import java.util.function.Supplier;
import org.halflight.desk.view.BenchView;
import org.halflight.link.Ports;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedFit;

/** The camera that is repaired, before the sensor of a rig, and the hands that work it. */
interface RepairCamera extends AutoCloseable {
  /** One who looks at the window, for as long as something can still come. */
  DeskHand hand();

  Supplier<Ports> ports();

  /** The time of the rig, in nanoseconds. */
  long nanos();

  /** Its speeds as they are typed; empty for the usual ones. */
  String speeds();

  /** Those that are fired as left, and once more when it comes back. */
  String twoSpeeds();

  /** A slow and a middle one whose parts touch each other. */
  String pair();

  /** The shutter is held open for the light, or let go. */
  void hold(boolean open);

  /** Cocks and fires it at the speed that the window shows. */
  void fire(BenchView shown);

  /** At B: opens it by the release, or lets go. */
  void bulb(boolean open);

  /** The film is wound, and the button pressed as the step asks for; then the wind is tried. */
  WindState press(LinkageStep step);

  /** How its parts fit from now on. */
  void fits(InventedFit fit);

  /** Its slow-speed train is cleaned. */
  void clean();

  /** Its linkage is adjusted. */
  void link(ButtonLinkage linkage);

  @Override
  void close() throws java.io.IOException;
}
