package org.halflight.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.halflight.fixtures.PublishedTable;
import org.halflight.fixtures.Seed;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.halflight.stats.Student;
import org.junit.jupiter.api.Test;

class UncertaintyBudgetTest {
  /** With a mean of so many seconds, one second is one stop. */
  private static final double STOP_IS_SECOND = 1 / Math.log(2);

  private static BudgetRow row(InputUncertainty doubt) {
    return BudgetRow.of(UncertaintySource.CLOCK, doubt, 1, STOP_IS_SECOND);
  }

  private static UncertaintyBudget budget(BudgetRow... rows) {
    return new UncertaintyBudget(STOP_IS_SECOND, List.of(rows));
  }

  /** JCGM 100:2008, H.1: u_c 31.66 nm with 16.7 degrees of freedom, U99 93 nm. */
  /** Firings that agree to a tick leave degrees of freedom beyond all tables. */
  @Test
  void hardlyAnyScatterGivesTheFactorOfNone() {
    RampTravel travel = new RampTravel(2e-3, 1e-7, 0);
    UncertaintyBudget without = UncertaintyBudget.of(1, travel, RigKnowledge.UNCALIBRATED, 0, 3);
    double none = without.coverageFactor(0.95);
    // One rectangle rules, the resonator's; the bias of the light over the lens is added beside it.
    double bias = without.readsLongSeconds() / 2 / without.combinedSeconds();
    assertThat(none + bias).isCloseTo(0.95 * Math.sqrt(3), within(2e-3));
    for (double scatter : new double[] {1e-9, 1e-8, 1e-7, 1e-6, 1e-5}) {
      UncertaintyBudget budget =
          UncertaintyBudget.of(1, travel, RigKnowledge.UNCALIBRATED, scatter, 3);
      assertThat(budget.coverageFactor(0.95)).as("%s stop", scatter).isCloseTo(none, within(1e-3));
      assertThat(budget.guardBelowStops(0.05)).isGreaterThan(1.6 * budget.combinedStops());
      assertThat(budget.chanceBelow(0)).isCloseTo(0.5, within(1e-9));
    }
  }

  @Test
  void theEndGaugeOfTheGuide() {
    List<BudgetRow> rows =
        PublishedTable.rows("gum_h1_end_gauge.csv").stream()
            .map(
                r ->
                    row(
                        new InputUncertainty(
                            Distribution.NORMAL,
                            Double.parseDouble(r.get("u_nm")),
                            Double.parseDouble(r.get("nu")),
                            Basis.FIRINGS)))
            .toList();
    UncertaintyBudget gauge = new UncertaintyBudget(STOP_IS_SECOND, rows);
    // The components are printed to a tenth of a nanometre: 0.006 of the sum.
    assertThat(gauge.combinedSeconds()).isCloseTo(31.66, within(0.01));
    // Combined from the components at once: the guide rounds the middle ones on the way.
    assertThat(gauge.degrees()).isCloseTo(16.75, within(0.02));
    assertThat(gauge.combinedStops()).isCloseTo(gauge.combinedSeconds(), within(1e-12));
    // The guide cuts 16.7 to 16: t99 is 2.92, U99 93 nm.
    assertThat(gauge.coverageFactor(0.99)).isCloseTo(2.92, within(0.005));
    assertThat(gauge.expandedSeconds(0.99)).isCloseTo(93, within(0.6));
  }

  /** JCGM 100:2008, table G.2 (computed anew, as the file says). */
  @Test
  void studentsFactorsOfTheGuide() {
    for (Map<String, String> line : PublishedTable.rows("gum_table_g2.csv")) {
      double degrees =
          line.get("nu").equals("inf")
              ? Double.POSITIVE_INFINITY
              : Double.parseDouble(line.get("nu"));
      UncertaintyBudget one =
          budget(row(new InputUncertainty(Distribution.NORMAL, 1, degrees, Basis.FIRINGS)));
      for (String level : List.of("68.27", "90", "95", "95.45", "99", "99.73")) {
        // The levels of one, two and three sigma are printed rounded.
        double exact =
            switch (level) {
              case "68.27" -> 0.682689492137;
              case "95.45" -> 0.954499736104;
              case "99.73" -> 0.997300203937;
              default -> Double.parseDouble(level) / 100;
            };
        assertThat(one.coverageFactor(exact))
            .as("nu %s, %s %%", line.get("nu"), level)
            .isCloseTo(Double.parseDouble(line.get("p" + level)), within(0.0051));
      }
    }
  }

  /** JCGM 101:2008, 9.2: four normal and four rectangular inputs of u = 1. */
  @Test
  void fourInputsOfTheSupplement() {
    for (Map<String, String> line : PublishedTable.rows("jcgm101_additive.csv")) {
      InputUncertainty input =
          line.get("case").equals("normal")
              ? InputUncertainty.normal(1, Basis.ALLOWANCE)
              : InputUncertainty.within(Math.sqrt(3), Basis.ALLOWANCE);
      UncertaintyBudget four =
          new UncertaintyBudget(STOP_IS_SECOND, Collections.nCopies(4, row(input)));
      assertThat(four.combinedSeconds()).isCloseTo(2, within(1e-12));
      assertThat(four.expandedSeconds(0.95))
          .as(line.get("case"))
          .isCloseTo(Double.parseDouble(line.get("half95")), within(0.005));
    }
  }

  @Test
  void rectanglesByHand() {
    InputUncertainty one = InputUncertainty.within(1, Basis.ALLOWANCE);
    // Of a rectangle 95 % lie within 0.95 of its bound; two alike make a triangle of twice the
    // width, of which 2.5 % lie beyond 2 (1 - sqrt 0.05).
    assertThat(budget(row(one)).expandedSeconds(0.95)).isCloseTo(0.95, within(1e-3));
    assertThat(budget(row(one), row(one)).expandedSeconds(0.95))
        .isCloseTo(2 * (1 - Math.sqrt(0.05)), within(1e-3));
  }

  /** JCGM 106:2012; the figures of its examples are from memory, as the file says. */
  @Test
  void chancesOfConformity() {
    for (Map<String, String> line : PublishedTable.rows("jcgm106_conformance.csv")) {
      UncertaintyBudget of =
          budget(row(InputUncertainty.normal(Double.parseDouble(line.get("u")), Basis.ALLOWANCE)));
      double y = Double.parseDouble(line.get("y"));
      double conforms =
          line.get("side").equals("upper")
              ? of.chanceBelow(Double.parseDouble(line.get("T_U")) - y)
              : 1 - of.chanceBelow(Double.parseDouble(line.get("T_L")) - y);
      assertThat(conforms)
          .as(line.get("case"))
          .isCloseTo(Double.parseDouble(line.get("p_c_printed")), within(0.005));
    }
  }

  /** Quantiles of |N(b/s, 1)|; by bisection on a table of the normal distribution elsewhere. */
  @Test
  void aBiasWidensByTheQuantileOfTheShiftedSize() {
    double[][] known = {{0, 1.960}, {0.5, 2.181}, {1, 2.646}, {2, 3.645}, {3, 4.645}};
    BudgetRow scatter = row(InputUncertainty.normal(1, Basis.CALIBRATION));
    for (double[] each : known) {
      UncertaintyBudget of = budget(scatter, row(InputUncertainty.bias(each[0], Basis.ALLOWANCE)));
      assertThat(of.expandedSeconds(0.95)).as("b/s %s", each[0]).isCloseTo(each[1], within(1e-3));
      assertThat(of.middleStops()).isZero();
      assertThat(of.combinedSeconds()).isEqualTo(1);
      // To one side it adds as it is.
      assertThat(of.guardBelowStops(0.05)).isCloseTo(each[0] + 1.645, within(1e-3));
    }
  }

  /** Of t with 4 degrees: 2.776 to both sides, 2.132 to one (any table). */
  @Test
  void withFewDegreesOfFreedomStudentsIsShifted() {
    BudgetRow scatter = row(new InputUncertainty(Distribution.NORMAL, 1, 4, Basis.FIRINGS));
    assertThat(
            budget(scatter, row(InputUncertainty.bias(0, Basis.ALLOWANCE))).expandedSeconds(0.95))
        .isCloseTo(2.776, within(1e-3));
    assertThat(
            budget(scatter, row(InputUncertainty.bias(20, Basis.ALLOWANCE))).expandedSeconds(0.95))
        .isCloseTo(22.132, within(1e-3));
    double half =
        budget(scatter, row(InputUncertainty.bias(1, Basis.ALLOWANCE))).expandedSeconds(0.95);
    assertThat(Student.below(half - 1, 4) - Student.below(-half - 1, 4))
        .isCloseTo(0.95, within(1e-5));
  }

  /** Whatever the estimate of the scatter came to, with the bias at its bound. */
  @Test
  void theShiftedIntervalHoldsWithAnEstimatedScatter(@Seed(95) long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int degrees : new int[] {2, 4, 9}) {
      for (double bias : new double[] {0.25, 1, 3}) {
        int held = 0;
        int draws = 3000;
        for (int i = 0; i < draws; i++) {
          double squares = 0;
          for (int k = 0; k < degrees; k++) {
            squares += Math.pow(random.nextGaussian(), 2);
          }
          double estimate = Math.sqrt(squares / degrees);
          UncertaintyBudget of =
              budget(
                  row(new InputUncertainty(Distribution.NORMAL, estimate, degrees, Basis.FIRINGS)),
                  row(InputUncertainty.bias(bias, Basis.ALLOWANCE)));
          held += Math.abs(random.nextGaussian() + bias) <= of.expandedSeconds(0.95) ? 1 : 0;
        }
        // Three and a half standard deviations of such a share are 1.4 %.
        assertThat(held / (double) draws).as("%s, %s", degrees, bias).isBetween(0.936, 0.985);
      }
    }
  }

  /** Rectangles and a bias: the truth at either end of the bias lies within as often as stated. */
  @Test
  void aBiasBesideRectangles() {
    UncertaintyBudget of =
        budget(
            row(InputUncertainty.within(1, Basis.ALLOWANCE)),
            row(InputUncertainty.bias(0.5, Basis.ALLOWANCE)));
    // At the bound, what scatters lies between -1 and 1 alike: 95 % of it below 0.9.
    double half = of.expandedSeconds(0.95);
    assertThat((Math.min(1, half - 0.5) + 1) / 2).isBetween(0.9499, 0.965);
    assertThat(of.expandedSeconds(0.95)).isBetween(1.39, 1.45);
  }

  @Test
  void whatReadsLongShiftsTheIntervalDownAndWidensOneGuardBand() {
    UncertaintyBudget of =
        budget(
            row(InputUncertainty.normal(1, Basis.CALIBRATION)),
            row(InputUncertainty.bias(0.5, Basis.ALLOWANCE)),
            row(InputUncertainty.readsLong(1, Basis.ALLOWANCE)));
    // The truth lies up to 0.5 above and 1.5 below what is read: about -0.5, a bias of 1.
    assertThat(of.middleStops()).isCloseTo(-0.5, within(1e-12));
    assertThat(of.expandedStops(0.95)).isCloseTo(2.646, within(1e-3));
    assertThat(of.guardAboveStops(0.05)).isCloseTo(0.5 + 1.645, within(1e-3));
    assertThat(of.guardBelowStops(0.05)).isCloseTo(1.5 + 1.645, within(1e-3));
    // Where the truth is least likely: 0.5 above, or 1.5 below.
    assertThat(of.chanceBetween(-3, 1)).isCloseTo(0.6915 - 0.0002, within(1e-3));
    assertThat(of.chanceBetween(-1.5, 9)).isCloseTo(0.5, within(1e-3));
    assertThat(of.rows().stream().mapToDouble(of::share).sum()).isCloseTo(1, within(1e-12));
  }

  @Test
  void moreFiringsDoNotLessenTheErrorOfTheRule() {
    RampTravel travel = new RampTravel(2e-3, 0.2e-3, 34e-6);
    UncertaintyBudget five = UncertaintyBudget.of(2e-3, travel, RigKnowledge.UNCALIBRATED, 0.1, 5);
    UncertaintyBudget many = five.withFirings(5, 100);
    assertThat(many.readsShortSeconds()).isEqualTo(34e-6);
    assertThat(many.readsLongSeconds()).isEqualTo(five.readsLongSeconds());
    assertThat(many.expandedSeconds(0.95)).isGreaterThan(34e-6);
  }

  @Test
  void theGuardBandIsStudentsOneSidedQuantile() {
    // t of 4 degrees at 95 % is 2.132 (any table).
    assertThat(
            budget(row(new InputUncertainty(Distribution.NORMAL, 0.1, 4, Basis.FIRINGS)))
                .guardBelowStops(0.05))
        .isCloseTo(0.2132, within(5e-5));
  }

  @Test
  void anUncalibratedRigAtTheTopSpeed() {
    UncertaintyBudget fast =
        UncertaintyBudget.of(
            2e-3, new RampTravel(2e-3, 0.2e-3, 24e-6), RigKnowledge.UNCALIBRATED, 0.02, 5);
    // By hand: 2 ms of ramps times 1.5 % over root 3 is 17.3 us, 0.0125 stop of 2 ms.
    assertThat(fast.rows().get(0).standardSeconds()).isCloseTo(17.3e-6, within(0.05e-6));
    assertThat(fast.rows().get(0).standardStops()).isCloseTo(0.0125, within(5e-5));
    // One percent of full light is 10 us, over root 3.
    assertThat(fast.rows().get(1).standardSeconds()).isCloseTo(5.77e-6, within(0.01e-6));
    assertThat(fast.expandedSeconds(0.95) / 2e-3).isBetween(0.02, 0.06);
    assertThat(fast.allowancesRule()).isTrue();
    UncertaintyBudget slow =
        UncertaintyBudget.of(
            1, new RampTravel(2e-3, 0.2e-3, 24e-6), RigKnowledge.UNCALIBRATED, 0.02, 5);
    // Ramps no longer count; what is left is the resonator: 5000 ppm over root 3 is 0.0042 stop.
    assertThat(slow.commonStops()).isCloseTo(0.00417, within(5e-5));
  }

  @Test
  void moreFiringsLessenTheirPartAndNoOther() {
    UncertaintyBudget five =
        UncertaintyBudget.of(
            2e-3, new RampTravel(2e-3, 0.2e-3, 24e-6), RigKnowledge.UNCALIBRATED, 0.1, 5);
    UncertaintyBudget eighty = five.withFirings(5, 80);
    assertThat(eighty.commonStops()).isCloseTo(five.commonStops(), within(1e-12));
    assertThat(eighty.rows().get(8).standardStops())
        .isCloseTo(five.rows().get(8).standardStops() / 4, within(1e-12));
    assertThat(eighty.rows().get(8).doubt().degrees()).isEqualTo(79);
  }

  @Test
  void aCalibrationNarrowsWhatItMeasured() {
    ComparatorTrips trip = new ComparatorTrips(2, -2, 0.5);
    EdgeDelays delays = new EdgeDelays(0, 30e-9, 0, 40e-9);
    RigProfile profile =
        new RigProfile(
            new ProfiledRig("R1", "full", "1.0"),
            LocalDate.of(2026, 3, 1),
            new LightRange(10, 510, 900),
            Optional.empty(),
            Map.of(Channel.CENTRE_LOW, trip, Channel.CENTRE_HIGH, trip),
            Optional.of(new ClockRate(400, 3, 20, ClockRate.Source.HOST_CLOCK)),
            Optional.empty(),
            Map.of(Channel.CENTRE_LOW, delays, Channel.CENTRE_HIGH, delays),
            Map.of(),
            OptionalDouble.empty());
    RigKnowledge known = RigKnowledge.of(profile, OptionalDouble.empty());
    // And 0.37 counts for this session's own readings of dark, full light and threshold.
    assertThat(known.levels().standard()).isCloseTo(Math.hypot(0.5, 0.3742) / 500, within(1e-7));
    // Each width 50 ns, the mean of both 35 ns.
    assertThat(known.delaySeconds().standard()).isCloseTo(35.4e-9, within(0.1e-9));
    // All of the hysteresis of 4 counts is left in, and its distance is known to 1 count.
    assertThat(known.hysteresis().standard()).isCloseTo(Math.hypot(4, 1) / 500, within(1e-7));
    // A lamp of half the span: a count is twice the share.
    RigKnowledge dim = RigKnowledge.of(profile, OptionalDouble.of(250));
    assertThat(dim.levels().standard()).isCloseTo(2 * known.levels().standard(), within(1e-9));
    assertThat(dim.hysteresis().standard())
        .isCloseTo(2 * known.hysteresis().standard(), within(1e-9));
    // 3 ppm and a rectangle of 50 ppm for the temperature.
    assertThat(known.clock().standard()).isCloseTo(29.0e-6, within(0.1e-6));
    assertThat(known.clock().degrees()).isEqualTo(20);
    assertThat(known.lamp()).isEqualTo(RigKnowledge.UNCALIBRATED.lamp());
    assertThat(known.isCalibrated()).isTrue();
    List<Double> narrower = new ArrayList<>();
    for (RigKnowledge rig : List.of(RigKnowledge.UNCALIBRATED, known)) {
      narrower.add(
          UncertaintyBudget.of(2e-3, new RampTravel(2e-3, 0.2e-3, 24e-6), rig, 0.02, 5)
              .combinedStops());
    }
    assertThat(narrower.get(1)).isLessThan(narrower.get(0));
  }

  /** At one second the resonator of a rig that nobody calibrated is nearly all there is. */
  @Test
  void aLiveClockTakesTheResonatorsAllowanceOut() {
    RigKnowledge live =
        RigKnowledge.UNCALIBRATED.withLiveClock(
            new ClockRate(3450, 29, Double.POSITIVE_INFINITY, ClockRate.Source.HOST_CLOCK));
    // By hand: 29 ppm and a rectangle of 10 ppm for two minutes, 5.8 ppm.
    assertThat(live.clock().standard()).isCloseTo(29.57e-6, within(0.01e-6));
    assertThat(live.clock().basis()).isEqualTo(Basis.SESSION);
    assertThat(live.isCalibrated()).isFalse();
    assertThat(live.levels()).isEqualTo(RigKnowledge.UNCALIBRATED.levels());
    RampTravel travel = new RampTravel(2e-3, 0.2e-3, 24e-6);
    double before =
        UncertaintyBudget.of(1, travel, RigKnowledge.UNCALIBRATED, 0, 5).combinedSeconds();
    double after = UncertaintyBudget.of(1, travel, live, 0, 5).combinedSeconds();
    // 2887 ppm against 30 ppm and some 25 us of everything else.
    assertThat(before).isCloseTo(2887e-6, within(2e-6));
    assertThat(after).isLessThan(45e-6);
  }
}
