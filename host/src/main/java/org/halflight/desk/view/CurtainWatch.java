package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.chart.TrialsPicture;
import org.halflight.session.CurtainStep;
import org.halflight.session.OwnTravel;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainLimits;
import org.halflight.verdict.CurtainRunFigures;

/**
 * The figure that a step of adjusting is watched by.
 *
 * @param figure which
 * @param band where it is to be; empty where nobody knows
 */
record CurtainWatch(CurtainFigure figure, Optional<TrialsPicture.Band> band) {
  /** Of a step at a speed, by what was fired last. */
  static CurtainWatch of(
      CurtainStep step, RunSetup setup, MarkedSpeed speed, CurtainRunFigures fired) {
    CurtainFigure figure = figure(step);
    return new CurtainWatch(figure, band(figure, setup, speed, fired));
  }

  private static CurtainFigure figure(CurtainStep step) {
    return switch (step) {
      case CLEAN, FIRST_TENSION -> CurtainFigure.FIRST_TRAVEL;
      case SECOND_TENSION, AGAIN, NEXT_DAY -> CurtainFigure.SLOPE;
      case SLIT -> CurtainFigure.EXCESS;
      case BRAKE -> CurtainFigure.END_BOUNCE;
      case CONTACT -> CurtainFigure.CONTACT;
      case ESCAPEMENT -> CurtainFigure.CENTRE;
    };
  }

  private static Optional<TrialsPicture.Band> band(
      CurtainFigure figure, RunSetup setup, MarkedSpeed speed, CurtainRunFigures fired) {
    return switch (figure) {
      case FIRST_TRAVEL ->
          setup.criteria().get(RunOption.OWN_TRAVEL).map(own -> travel(own, fired));
      case SLOPE -> Optional.of(either(CurtainLimits.slopeStops(speed.seconds(setup.reference()))));
      case EXCESS -> Optional.of(either(CurtainLimits.OFFSET_SECONDS));
      case END_BOUNCE -> Optional.of(new TrialsPicture.Band(0, CurtainLimits.BOUNCE_STOPS));
      case CONTACT -> window(speed, fired);
      case CENTRE ->
          Optional.of(
              new TrialsPicture.Band(
                  -setup.tolerance(speed).fastStops(), setup.tolerance(speed).slowStops()));
      default -> Optional.empty();
    };
  }

  private static TrialsPicture.Band either(double limit) {
    return new TrialsPicture.Band(-limit, limit);
  }

  /** The own travel is over its own way; the figure shown is edge to edge, by the mean speed. */
  private static TrialsPicture.Band travel(OwnTravel own, CurtainRunFigures fired) {
    double frame = fired.shots().get(0).travel().geometry().frameMillimetres();
    double seconds = own.milliseconds() / 1e3 * frame / own.spanMillimetres();
    return new TrialsPicture.Band(
        seconds * (1 - CurtainLimits.TRAVEL_SHARE), seconds * (1 + CurtainLimits.TRAVEL_SHARE));
  }

  private static Optional<TrialsPicture.Band> window(MarkedSpeed speed, CurtainRunFigures fired) {
    OptionalDouble window =
        fired.at(speed).map(its -> its.mean(CurtainFigure.WINDOW)).orElse(OptionalDouble.empty());
    double last = window.orElse(0) - CurtainLimits.FLASH_SECONDS;
    return last > 0 ? Optional.of(new TrialsPicture.Band(0, last)) : Optional.empty();
  }

  /** How far a value is beyond the band; 0 within. */
  double beyond(double value) {
    return band.map(its -> Math.max(0, Math.max(its.low() - value, value - its.high())))
        .orElse(0.0);
  }

  /** How far it is from the middle of the band. */
  double off(double value) {
    return band.map(its -> Math.abs(value - (its.low() + its.high()) / 2)).orElse(0.0);
  }
}
