package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.session.Adjuster;
import org.halflight.session.CameraCustoms;
import org.halflight.session.OwnTravel;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is asked of a curtain shutter before it is fired. */
class CurtainFormTest {
  private static RunSetup read(ShutterKind kind, Map<RunOption<?>, String> options) {
    return new RunForm(
            new ShutterUnderTest("mine", kind, "curtain", Reference.EXACT, CameraCustoms.NONE),
            Phase.AS_FOUND,
            "1/60, 1/1000",
            3,
            OptionalDouble.empty(),
            List.of(),
            options)
        .read();
  }

  @Test
  void whatWasSaidIsWhereTheSensorsAre() {
    RunSetup setup =
        read(
            ShutterKind.CURTAIN_LONG_SIDE,
            Map.of(
                RunOption.FRAME, "24 x 36 mm",
                RunOption.OUTER_SENSORS, "16,0",
                RunOption.SENSOR_SLIT, "0.4 mm",
                RunOption.CURTAIN_GAP, "5",
                RunOption.LAMP_DISTANCE, "300",
                RunOption.LAMP_SIZE, "12"));
    assertThat(setup.curtainGeometry()).contains(new CurtainGeometry(36, 16, 0.4, 5, 300, 12));
    assertThat(setup.conditions().noted())
        .as("in one way of writing")
        .containsEntry("frame", "24 x 36")
        .containsEntry("outer-sensors", "16")
        .containsEntry("sensor-slit", "0.4");
    CurtainGeometry geometry = setup.curtainGeometry().orElseThrow();
    // 5 mm in 300 mm: lengths at the curtain are 1.7 % shorter.
    assertThat(geometry.atCurtain(300)).isEqualTo(295);
  }

  @Test
  void whatWasNotSaidIsUsualAndCorrectsNothing() {
    CurtainGeometry geometry =
        read(ShutterKind.CURTAIN_SHORT_SIDE, Map.of(RunOption.FRAME, "36x24"))
            .curtainGeometry()
            .orElseThrow();
    assertThat(geometry).isEqualTo(CurtainGeometry.usual(24));
    assertThat(geometry.outerMillimetres()).isEqualTo(0.45 * 24);
    assertThat(geometry.isDepthSaid()).isFalse();
    assertThat(geometry.atCurtain(300)).isEqualTo(300);
    assertThat(geometry.shrinkage()).isEqualTo(5.0 / 300);
    Map<RunOption<?>, String> gapAlone =
        Map.of(RunOption.FRAME, "36x24", RunOption.CURTAIN_GAP, "4");
    assertThat(read(ShutterKind.CURTAIN_SHORT_SIDE, gapAlone).curtainGeometry())
        .hasValueSatisfying(each -> assertThat(each.isDepthSaid()).isFalse());
  }

  @Test
  void parallelLightDoesNotSpread() {
    CurtainGeometry geometry =
        read(
                ShutterKind.CURTAIN_LONG_SIDE,
                Map.of(
                    RunOption.FRAME, "36x24",
                    RunOption.CURTAIN_GAP, "5",
                    RunOption.LAMP_DISTANCE, "parallel"))
            .curtainGeometry()
            .orElseThrow();
    assertThat(geometry.shrinkage()).isZero();
    assertThat(geometry.atCurtain(36)).isEqualTo(36);
  }

  @ParameterizedTest
  @EnumSource(names = "CURTAIN_.*", mode = EnumSource.Mode.MATCH_NONE)
  void whatDoesNotRunFromEdgeToEdgeHasNoGeometry(ShutterKind kind) {
    assertThat(read(kind, Map.of(RunOption.FRAME, "36x24")).curtainGeometry()).isEmpty();
  }

  @Test
  void withoutAFrameThereIsOnlyTheCentre() {
    assertThat(read(ShutterKind.CURTAIN_LONG_SIDE, Map.of()).curtainGeometry()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "own-travel, 17 ms, A time alone cannot be compared",
    "own-travel, 17 ms over, Write both: 17 ms over 36 mm",
    "outer-sensors, 18.1, outside the frame",
    "lamp-distance, 49, The lamp is too near: 49 mm from the sensors. Move it to 50 mm",
    "frame, 36, Write width and height",
    "sensor-slit, wide, not the width of a slit",
    "adjusters, screw, Choose from first-tension"
  })
  void whatMakesNoSenseIsRefusedInOneLine(String name, String typed, String says) {
    RunOption<?> option =
        RunOption.OF_CURTAINS.stream().filter(o -> o.name().equals(name)).findFirst().orElseThrow();
    Map<RunOption<?>, String> options = new HashMap<>(Map.of(RunOption.FRAME, "36x24"));
    options.put(option, typed);
    assertThatThrownBy(() -> read(ShutterKind.CURTAIN_LONG_SIDE, options))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining(says)
        .message()
        .doesNotContain("\n");
  }

  @Test
  void theCamerasOwnFiguresComeWithTheRun() {
    RunSetup setup =
        read(
            ShutterKind.CURTAIN_LONG_SIDE,
            Map.of(
                RunOption.OWN_TRAVEL, "12,9/32,4",
                RunOption.X_SPEED, "1/60",
                RunOption.ADJUSTERS, "slit, first-tension"));
    assertThat(setup.criteria().get(RunOption.OWN_TRAVEL)).contains(new OwnTravel(12.9, 32.4));
    assertThat(setup.criteria().get(RunOption.X_SPEED).map(Object::toString)).contains("1/60");
    assertThat(setup.criteria().get(RunOption.ADJUSTERS))
        .containsExactly(Adjuster.FIRST_TENSION, Adjuster.SLIT);
    assertThat(read(ShutterKind.CURTAIN_LONG_SIDE, Map.of()).criteria().get(RunOption.ADJUSTERS))
        .isEqualTo(Adjuster.ALL);
    assertThat(Adjuster.findAll("none")).contains(Set.of());
  }
}
