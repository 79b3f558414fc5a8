package org.halflight.validation.invented;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Map;
import org.halflight.fixtures.PublishedTable;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The invented shutters are right, and they are their own. */
class InventedLightTest {
  private static final ArchRule ON_ITS_OWN =
      noClasses()
          .should()
          .dependOnClassesThat(
              JavaClass.Predicates.resideInAPackage("org.halflight..")
                  .and(
                      com.tngtech.archunit.base.DescribedPredicate.not(
                          JavaClass.Predicates.resideInAPackage(
                              "org.halflight.validation.invented"))))
          .because("what judges the method must not share its mistakes");

  private static JavaClasses invented() {
    return new ClassFileImporter()
        .importUrl(InventedLightTest.class.getProtectionDomain().getCodeSource().getLocation())
        .that(JavaClass.Predicates.resideInAPackage("org.halflight.validation.invented"))
        .that(
            com.tngtech.archunit.base.DescribedPredicate.describe(
                "are no tests", each -> !each.getName().contains("Test")));
  }

  @Test
  void noClassOfTheProgramIsInIt() {
    assertThat(invented().size()).isGreaterThan(10);
    ON_ITS_OWN.check(invented());
  }

  @Test
  void theRuleSeesWhoBreaksIt() {
    JavaClasses studies =
        new ClassFileImporter()
            .importUrl(InventedLightTest.class.getProtectionDomain().getCodeSource().getLocation())
            .that(JavaClass.Predicates.resideInAPackage("org.halflight.validation"));
    assertThat(ON_ITS_OWN.evaluate(studies).hasViolation()).isTrue();
  }

  /** The curves of the published table have exact answers. */
  @Test
  void effectiveTimesMeetTheTable() {
    for (Map<String, String> row : PublishedTable.rows("synthetic_lightcurves.csv")) {
      String shape = row.get("ramp_shape");
      boolean fast = shape.startsWith("fast-start");
      Motion opening = shape.equals("linear") ? Motion.EVEN : new Motion(2, fast);
      // Seen backwards from the dark, the closing is like the opening.
      Motion closing = shape.equals("linear") ? Motion.EVEN : new Motion(2, !fast);
      Light light =
          Light.plain(
              Hole.EVEN_AREA,
              opening,
              closing,
              ms(row, "rise_ms"),
              ms(row, "fully_open_ms"),
              ms(row, "fall_ms"),
              0);
      assertThat(light.trueSeconds()).isCloseTo(ms(row, "effective_ms"), within(0.6e-7));
      List<Light.Passing> half = light.passings(0.5, 0.5);
      assertThat(half.get(1).seconds() - half.get(0).seconds())
          .isCloseTo(ms(row, "half_width_ms"), within(0.6e-7));
      assertThat(light.shutSeconds()).isCloseTo(ms(row, "total_ms"), within(0.6e-7));
    }
  }

  private static double ms(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column)) / 1e3;
  }

  /** All the light, bumps too, is what a plain sum over the time comes to. */
  @ParameterizedTest
  @EnumSource(Blades.class)
  void trueTimeIsTheSumOfTheLight(Blades blades, @Seed(4) long seed) {
    Light light =
        blades.drawn(1.5e-3, 0, new Draws(seed)).open(1e-3).with(new Light.Bump(6e-3, 2e-3, 0.7));
    int pieces = 400_000;
    double piece = light.endSeconds() / pieces;
    double sum = 0;
    for (int i = 0; i < pieces; i++) {
      sum += light.seen((i + 0.5) * piece) * piece;
    }
    assertThat(light.trueSeconds()).isCloseTo(sum, within(2e-9));
  }

  /** Where the light is seen to pass a level it has that level. */
  @ParameterizedTest
  @EnumSource(Blades.class)
  void passingsLieWhereTheLightIs(Blades blades, @Seed(4) long seed) {
    Light light = blades.drawn(1.5e-3, 0.2, new Draws(seed)).open(1e-3);
    for (double level : new double[] {0.1, 0.21, 0.5, 0.79, 0.97}) {
      for (Light.Passing passing : light.passings(level, level)) {
        assertThat(light.seen(passing.seconds())).isCloseTo(level, within(1e-6));
      }
    }
  }

  /**
   * A round hole whose radius grows evenly before light that falls by a part to the edge reads long
   * by {@code (2a/15)/(2-a)} of opening plus closing time.
   */
  @Test
  void unevenLightReadsLongByTheFormula() {
    for (double fall : new double[] {0.1, 0.2, 0.5}) {
      Light light = Light.plain(Hole.ROUND, Motion.EVEN, Motion.EVEN, 1e-3, 1e-3, 1e-3, fall);
      int pieces = 200_000;
      double sum = 0;
      for (int i = 0; i < pieces; i++) {
        sum += light.seen((i + 0.5) * 3e-3 / pieces) * 3e-3 / pieces;
      }
      assertThat(sum - light.trueSeconds())
          .isCloseTo(2e-3 * (2 * fall / 15) / (2 - fall), within(1e-9));
    }
  }

  @Test
  void aStarOpensFromNothingToAllWithItsPointsFirst() {
    assertThat(Hole.STAR.area(0)).isZero();
    assertThat(Hole.STAR.area(1)).isCloseTo(1, within(1e-9));
    // Its points touch the edge at 0.45 of the way: the area of ten triangles between
    // a point and a notch, by the circle's.
    double triangles = 10 * 0.5 * 0.45 * Math.sin(Math.PI / 5) / Math.PI;
    assertThat(Hole.STAR.area(0.45)).isCloseTo(triangles, within(1e-5));
    for (double place = 0; place < 1; place += 0.01) {
      assertThat(Hole.STAR.area(place + 0.01)).isGreaterThan(Hole.STAR.area(place));
      assertThat(Hole.STAR.seen(place, 0.2)).isGreaterThanOrEqualTo(Hole.STAR.area(place));
    }
  }

  @ParameterizedTest
  @EnumSource(Scatter.class)
  void scatterHasTheCentreThatItSays(Scatter scatter, @Seed(11) long seed) {
    Draws draws = new Draws(seed);
    int n = 200_000;
    double sum = 0;
    int below = 0;
    for (int i = 0; i < n; i++) {
      double drawn = scatter.draw(draws);
      sum += drawn;
      below += drawn < scatter.median() ? 1 : 0;
    }
    // Five standard errors; of t with 3 degrees of freedom the mean is the least sure.
    assertThat(sum / n).isCloseTo(0, within(0.02));
    assertThat(below / (double) n).isCloseTo(0.5, within(0.006));
  }

  /** CRC-16/IBM-3740 of the nine digits, of the CRC catalogue. */
  @Test
  void linesAreSummedAsTheCatalogueHasIt() {
    assertThat(SessionText.crc16("123456789")).isEqualTo(0x29B1);
  }
}
