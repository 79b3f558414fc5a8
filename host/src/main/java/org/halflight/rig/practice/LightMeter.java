package org.halflight.rig.practice;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LevelComparator;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** The ten-bit converter of the practice board. */
final class LightMeter {
  /** Readings of a sensor are 62.5 us apart. */
  static final int TICKS_PER_READING = 1000;

  static final int READINGS_PER_BLOCK = 16;
  static final int TICKS_PER_BLOCK = TICKS_PER_READING * READINGS_PER_BLOCK;

  private static final int THRESHOLD_READINGS = 64;
  private static final double LOOKED_MICROSECONDS = 1000;
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Noise of the threshold inputs and the converter itself: a third of a step, invented. */
  private static final double CONVERTER_NOISE_MILLIVOLTS = 1.6;

  /**
   * One millisecond of light.
   *
   * @param sum of its 16 readings
   * @param least of them
   * @param most of them
   */
  record Block(int sum, int least, int most) {}

  private SensorSet sensors;
  private final LightTimeline light;
  private final PracticeWiring wiring;
  private final SeededDraws draws;

  LightMeter(SensorSet sensors, LightTimeline light, PracticeWiring wiring, SeededDraws draws) {
    this.sensors = sensors;
    this.light = light;
    this.wiring = wiring;
    this.draws = draws;
  }

  /** Another lamp shines from now on. */
  void lamp(Lamp lamp) {
    sensors(sensors.under(lamp));
  }

  /** Other sensors see from now on. */
  void sensors(SensorSet others) {
    sensors = others;
  }

  /** The block that starts at a time of the world. */
  Block block(Channel channel, long startTicks) {
    FrontEnd sensor = sensors.of(channel);
    int sum = 0;
    int least = Integer.MAX_VALUE;
    int most = 0;
    for (int i = 0; i < READINGS_PER_BLOCK; i++) {
      long ticks = startTicks + (long) i * TICKS_PER_READING;
      double millivolts =
          sensor.millivoltsAt(openAt(channel, ticks), TickRate.BOARD_16_MHZ.seconds(ticks))
              + sensor.noiseMillivolts() * draws.normal();
      int reading = reading(millivolts);
      sum += reading;
      least = Math.min(least, reading);
      most = Math.max(most, reading);
    }
    return new Block(sum, least, most);
  }

  private double openAt(Channel channel, long ticks) {
    return wiring.isDark(channel) ? 0 : light.openAt(ticks);
  }

  /** The voltage of a sensor in steady light, without noise. */
  double steadyMillivolts(Channel channel, long ticks) {
    return sensors
        .of(channel)
        .millivoltsAt(openAt(channel, ticks), TickRate.BOARD_16_MHZ.seconds(ticks));
  }

  /**
   * The same with noise, as a comparator sees it that looks for a millisecond: the least or the
   * most of all that its front end's noise brings in that time.
   */
  double extremeMillivolts(Channel channel, long ticks, boolean most) {
    FrontEnd sensor = sensors.of(channel);
    double looks = LOOKED_MICROSECONDS / (2 * Math.max(1, sensor.lagMicroseconds()));
    double reach = NORMAL.inverseCumulativeProbability(Math.pow(draws.uniform(), 1 / looks));
    double noise = sensor.noiseMillivolts() * reach;
    return steadyMillivolts(channel, ticks) + (most ? noise : -noise);
  }

  /** What compares a light channel with its threshold. */
  LevelComparator comparator(Channel channel) {
    return sensors.comparators().of(channel);
  }

  /** The sum of 64 readings of a steady threshold. */
  int thresholdSum(double millivolts) {
    int sum = 0;
    for (int i = 0; i < THRESHOLD_READINGS; i++) {
      sum += reading(millivolts + CONVERTER_NOISE_MILLIVOLTS * draws.normal());
    }
    return sum;
  }

  private static int reading(double millivolts) {
    int steps = (int) Math.floor(millivolts * 1024 / FrontEnd.SUPPLY_MILLIVOLTS);
    return Math.max(0, Math.min(1023, steps));
  }
}
