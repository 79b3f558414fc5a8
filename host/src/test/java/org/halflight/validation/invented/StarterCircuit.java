package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The light path of the starter rig as a difference equation: a photocurrent into a resistor and a
 * capacitor, and a converter that takes some charge at each reading. It is held against a
 * simulation of the circuit ({@code fixtures/rig/starter}). Figures of parts are typical ones from
 * memory.
 */
public final class StarterCircuit {
  /**
   * The parts.
   *
   * @param ohms of the resistor
   * @param farads of the capacitor
   * @param leakAmps dark current of the diode and leakage of the pins
   * @param lost the part of the converter's charge that runs off to half the supply between two
   *     readings: 0 keeps it, 1 begins anew
   * @param supplyVolts of the board
   */
  public record Parts(
      double ohms, double farads, double leakAmps, double lost, double supplyVolts) {
    /** The same on another supply. */
    public Parts on(double volts) {
      return new Parts(ohms, farads, leakAmps, lost, volts);
    }
  }

  /** The pin passing a level. */
  public record Passing(boolean up, double seconds) {}

  /** What the converter holds, and how long it is on the pin for a reading. */
  public static final double HOLD_FARADS = 14e-12;

  private static final double ON_THE_PIN_SECONDS = 2e-6;

  /** Two pins and their wires. */
  private static final double PIN_FARADS = 15e-12;

  private static final double DIODE_FARADS = 72e-12;
  private static final double DIODE_VOLTS = 0.6;
  private static final double DIODE_POWER = 0.45;

  /** Where the diode begins to lead the other way, and its light no longer raises the pin. */
  private static final double ABOVE_SUPPLY_VOLTS = 0.27;

  private static final double STEP_SECONDS = 2e-6;

  private final Parts parts;
  private final double levelVolts;
  private final double halfHysteresisVolts;
  private final DoubleUnaryOperator amps;
  private final List<Passing> passings = new ArrayList<>();
  private double seconds;
  private double pinVolts;
  private double heldVolts;
  private boolean above;

  /**
   * A circuit in the dark for ever.
   *
   * @param levelVolts the comparator's level, its offset in it
   * @param hysteresisVolts how much higher it is on the way up than on the way down
   * @param amps the photocurrent by the time in seconds
   * @param fromSeconds where the time begins
   */
  public StarterCircuit(
      Parts parts,
      double levelVolts,
      double hysteresisVolts,
      DoubleUnaryOperator amps,
      double fromSeconds) {
    this.parts = parts;
    this.levelVolts = levelVolts;
    this.halfHysteresisVolts = hysteresisVolts / 2;
    this.amps = amps;
    this.seconds = fromSeconds;
    this.pinVolts = (amps.applyAsDouble(fromSeconds) + parts.leakAmps()) * parts.ohms();
    this.heldVolts = pinVolts;
    this.above = pinVolts > levelVolts;
  }

  double pinVolts() {
    return pinVolts;
  }

  List<Passing> passings() {
    return passings;
  }

  /** One reading that begins now; the time goes on to when it is held. */
  double read() {
    heldVolts += parts.lost() * (parts.supplyVolts() / 2 - heldVolts);
    double farads = farads();
    moved((farads * pinVolts + HOLD_FARADS * heldVolts) / (farads + HOLD_FARADS), seconds, seconds);
    step(ON_THE_PIN_SECONDS, farads + HOLD_FARADS);
    heldVolts = pinVolts;
    return heldVolts;
  }

  /** Time goes on to some moment. */
  void goOnTo(double until) {
    double farads = farads();
    int steps = (int) Math.max(1, Math.ceil((until - seconds) / STEP_SECONDS - 1e-6));
    double each = (until - seconds) / steps;
    for (int i = 0; i < steps && each > 0; i++) {
      step(each, farads);
    }
  }

  /** A straight line of light through a resistor and a capacitor has a closed form. */
  private void step(double length, double farads) {
    double before = amps.applyAsDouble(seconds) + parts.leakAmps();
    double after = amps.applyAsDouble(seconds + length) + parts.leakAmps();
    double lag = parts.ohms() * farads;
    double rise = (after - before) / length;
    double steady = parts.ohms() * (before - rise * lag);
    double volts =
        steady + parts.ohms() * rise * length + (pinVolts - steady) * Math.exp(-length / lag);
    double from = seconds;
    seconds += length;
    moved(Math.min(volts, parts.supplyVolts() + ABOVE_SUPPLY_VOLTS), from, seconds);
  }

  private void moved(double volts, double from, double to) {
    double trip = levelVolts + (above ? -halfHysteresisVolts : halfHysteresisVolts);
    if (above ? volts < trip : volts > trip) {
      above = !above;
      passings.add(new Passing(above, from + (to - from) * (trip - pinVolts) / (volts - pinVolts)));
    }
    pinVolts = volts;
  }

  private double farads() {
    double reverse = Math.max(0, parts.supplyVolts() - pinVolts);
    return parts.farads()
        + PIN_FARADS
        + DIODE_FARADS / Math.pow(1 + reverse / DIODE_VOLTS, DIODE_POWER);
  }
}
