package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.workflow.CameraForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormsTest {
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
            .read(Id.ofNew())
            .camera()
            .orElseThrow();
    assertThat(camera.label()).isEqualTo("Owner, No. 1");
    assertThat(camera.widestFNumber()).hasValue(2.8);
    assertThat(camera.frame().orElseThrow().widthMillimetres()).isEqualTo(36);
    assertThat(camera.dial().reference()).isEqualTo(Reference.LITERAL);
    assertThat(CameraForm.of(camera).read(Id.ofNew()).camera()).contains(camera);
  }

  @Test
  void decimalCommasAreTaken() {
    Camera camera =
        new CameraForm("mine", "", ShutterKind.LEAF, "1/60", "f/5,6", "57,5 x 56,0", "")
            .read(Id.ofNew())
            .camera()
            .orElseThrow();
    assertThat(camera.widestFNumber()).hasValue(5.6);
    assertThat(camera.frame().orElseThrow().widthMillimetres()).isEqualTo(57.5);
    assertThat(new DiscForm("0,1", "7,8").read()).isEqualTo(new DiscForm("0.1", "7.8").read());
    assertThat(new DiscForm("", "1.234,5").read()).isEmpty();
    assertThat(new DiscForm("", "1,200").read()).as("a comma for thousands").isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "'', 2.8, 36 x 24, label",
    "mine, wide, 36 x 24, maximum aperture",
    "mine, 2.8, large, frame",
    "mine, 0, 36 x 24, maximum aperture",
    "mine, '1.234,5', 36 x 24, maximum aperture"
  })
  void whatIsWrongWithACameraIsSaid(String label, String stop, String frame, String about) {
    CameraForm.Result result =
        new CameraForm(label, "", ShutterKind.LEAF, "1/60", stop, frame, "").read(Id.ofNew());
    assertThat(result.camera()).isEmpty();
    assertThat(result.trouble()).contains(about).contains("keep it again");
  }
}
