package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.job.Camera;
import org.halflight.job.CameraId;
import org.halflight.job.ShutterKind;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FormsTest {
  @Test
  void aRunIsReadAsItIsWritten() {
    RunForm form =
        new RunForm(
            "mine",
            Phase.AS_FOUND,
            "leaf",
            "1/60, 1/30 ; 1/60, 1/125",
            true,
            5,
            OptionalDouble.of(3600),
            Map.of(RunConditions.CELLS, "off"),
            List.of(UntimedTest.B),
            true,
            false,
            CriteriaForm.USUAL);
    RunSetup setup = form.read().setup().orElseThrow();
    assertThat(setup.order())
        .extracting(MarkedSpeed::label)
        .containsExactly("1/60", "1/30", "1/125");
    assertThat(setup.dial()).isEqualTo("leaf");
    assertThat(setup.reference()).isEqualTo(Reference.EXACT);
    assertThat(setup.untimedTests()).containsExactly(UntimedTest.B);
    assertThat(setup.customs().topSpeedBeforeCocking()).isTrue();
    assertThat(setup.conditions().restSeconds()).hasValue(3600);
    assertThat(setup.conditions().noted()).containsEntry("cells", "off");
  }

  @Test
  void speedsThatAreNotOnTheDialMakeADialOfTheirOwn() {
    RunForm form = RunForm.usual("", Phase.AS_FOUND, Dial.builtIn().get(0));
    RunSetup odd =
        new RunForm(
                "",
                form.phase(),
                form.dial(),
                "1/50, 1/100",
                false,
                5,
                OptionalDouble.empty(),
                Map.of(),
                List.of(),
                false,
                false,
                CriteriaForm.USUAL)
            .read()
            .setup()
            .orElseThrow();
    assertThat(odd.dial()).isEqualTo(Dial.CUSTOM);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1, 101})
  void aNumberOfFiringsThatIsNoneBeginsNothing(int firings) {
    RunForm.Result result =
        new RunForm(
                "",
                Phase.AS_FOUND,
                "leaf",
                "1/60",
                true,
                firings,
                OptionalDouble.empty(),
                Map.of(),
                List.of(),
                false,
                false,
                CriteriaForm.USUAL)
            .read();
    assertThat(result.setup()).isEmpty();
    assertThat(result.trouble()).contains("from 1 to 100");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1/60, fast", "", " , ", "1/0"})
  void whatIsNotUnderstoodIsSaidAndNothingBegins(String speeds) {
    RunForm.Result result =
        new RunForm(
                "",
                Phase.AS_FOUND,
                "leaf",
                speeds,
                true,
                5,
                OptionalDouble.empty(),
                Map.of(),
                List.of(),
                false,
                false,
                CriteriaForm.USUAL)
            .read();
    assertThat(result.setup()).isEmpty();
    assertThat(result.trouble()).contains("1/60");
  }

  @Test
  void afterAsFoundComesAsLeftOnceItIsDone() {
    RunSetup found =
        RunForm.usual("mine", Phase.AS_FOUND, Dial.builtIn().get(0)).read().setup().orElseThrow();
    assertThat(RunForm.after(found, "mine", true).phase()).isEqualTo(Phase.AS_LEFT);
    assertThat(RunForm.after(found, "mine", false).phase()).isEqualTo(Phase.AS_FOUND);
    assertThat(RunForm.after(found, "mine", false).read().setup()).contains(found);
  }

  @Test
  void aCameraComesBackFromItsForm() {
    Camera camera =
        new CameraForm(
                " Owner, No. 1 ",
                "42",
                ShutterKind.LEAF,
                "1, 1/2, 1/5, B",
                "f/2.8",
                "36 x 24 mm",
                "wind with the back open")
            .read(CameraId.NEW)
            .camera()
            .orElseThrow();
    assertThat(camera.label()).isEqualTo("Owner, No. 1");
    assertThat(camera.widestFNumber()).hasValue(2.8);
    assertThat(camera.frame().orElseThrow().widthMillimetres()).isEqualTo(36);
    assertThat(camera.dial().reference()).isEqualTo(Reference.LITERAL);
    assertThat(CameraForm.of(camera).read(CameraId.NEW).camera()).contains(camera);
  }

  @ParameterizedTest
  @CsvSource({
    "'', 2.8, 36 x 24, label",
    "mine, wide, 36 x 24, maximum aperture",
    "mine, 2.8, large, frame",
    "mine, 0, 36 x 24, maximum aperture"
  })
  void whatIsWrongWithACameraIsSaid(String label, String stop, String frame, String about) {
    CameraForm.Result result =
        new CameraForm(label, "", ShutterKind.LEAF, "1/60", stop, frame, "").read(CameraId.NEW);
    assertThat(result.camera()).isEmpty();
    assertThat(result.trouble()).contains(about).contains("keep it again");
  }
}
