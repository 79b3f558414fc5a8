package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.link.PortCandidate;
import org.halflight.link.PortSurvey;
import org.halflight.link.PortSurvey.Kind;
import org.halflight.link.PortSurvey.Service;
import org.halflight.rig.NoRig.Reason;
import org.halflight.rig.PortOutcome.Finding;
import org.junit.jupiter.api.Test;

/** Facts in, reasons out; all facts are invented. */
class NoRigTest {
  private static final PortCandidate BOARD = new PortCandidate("/dev/ttyUSB0", "USB2.0-Ser", true);
  private static final PortCandidate OTHER = new PortCandidate("/dev/ttyUSB1", "USB2.0-Ser", true);
  private static final PortCandidate BUILT_IN = new PortCandidate("/dev/ttyS0", "ttyS0", false);
  private static final PortCandidate UNKNOWN_USB =
      new PortCandidate("/dev/ttyACM3", "a meter", false);

  @Test
  void withoutAnyPortItIsTheCableAndThenTheDriver() {
    assertThat(reasons(survey(Kind.LINUX))).containsExactly(Reason.CABLE);
    assertThat(reasons(survey(Kind.WINDOWS))).containsExactly(Reason.CABLE, Reason.MAYBE_DRIVER);
    assertThat(NoRig.causes(survey(Kind.WINDOWS), List.of()).get(1).sentence())
        .contains("Device Manager");
    assertThat(reasons(survey(Kind.MACOS))).containsExactly(Reason.CABLE, Reason.MAYBE_DRIVER);
    assertThat(NoRig.causes(survey(Kind.MACOS), List.of()).get(1).sentence()).contains("macOS");
  }

  @Test
  void aPortThatWasPluggedInIsNamedBeforeTheCableAndOneThatIsAlwaysThereAfterIt() {
    assertThat(reasons(survey(Kind.LINUX, UNKNOWN_USB)))
        .containsExactly(Reason.NOT_OPENED, Reason.CABLE);
    assertThat(reasons(survey(Kind.LINUX, BUILT_IN)))
        .containsExactly(Reason.CABLE, Reason.NOT_OPENED);
  }

  @Test
  void aChipWithoutAPortHasNoDriverOrWasTakenForABrailleDisplay() {
    PortSurvey bare =
        new PortSurvey(Kind.LINUX, List.of(), List.of("1a86:7523 USB2.0-Ser"), Set.of());
    assertThat(NoRig.causes(bare, List.of()).get(0).reason()).isEqualTo(Reason.NO_DRIVER);
    assertThat(NoRig.causes(bare, List.of()).get(0).sentence())
        .contains("1a86:7523 USB2.0-Ser")
        .contains("sudo modprobe");
    PortSurvey taken =
        new PortSurvey(
            Kind.LINUX, List.of(), List.of("1a86:7523 USB2.0-Ser"), Set.of(Service.BRLTTY));
    assertThat(NoRig.causes(taken, List.of()).get(0).sentence())
        .contains("the Braille service brltty has taken it");
  }

  @Test
  void aPortThatOneMayNotUseIsTheWholeReason() {
    assertThat(
            reasons(
                survey(Kind.LINUX, BOARD, OTHER),
                outcome(OTHER, Finding.SILENT),
                outcome(BOARD, Finding.NO_PERMISSION)))
        .containsExactly(Reason.NO_PERMISSION, Reason.SILENT);
  }

  @Test
  void theProgramThatHoldsAPortIsNamedWhereItIsKnown() {
    PortOutcome busy = outcome(BOARD, Finding.BUSY);
    PortSurvey known =
        new PortSurvey(
            Kind.LINUX,
            List.of(new PortSurvey.Seen(BOARD, Optional.of("a-monitor"))),
            List.of(),
            Set.of(Service.MODEM_MANAGER));
    assertThat(NoRig.causes(known, List.of(busy)))
        .containsExactly(
            new NoRig.Cause(
                Reason.HELD,
                "The program a-monitor has the port /dev/ttyUSB0 open, so the rig on it cannot be"
                    + " read. Close a-monitor."));
    PortSurvey unknown =
        new PortSurvey(
            Kind.LINUX,
            List.of(new PortSurvey.Seen(BOARD, Optional.empty())),
            List.of(),
            Set.of(Service.MODEM_MANAGER));
    assertThat(NoRig.causes(unknown, List.of(busy)).get(0).sentence())
        .contains("perhaps ModemManager")
        .contains("systemctl stop ModemManager");
    assertThat(NoRig.causes(survey(Kind.LINUX, BOARD), List.of(busy)).get(0).sentence())
        .isEqualTo("said of /dev/ttyUSB0");
  }

  @Test
  void aBoardThatAnswersNothingMayHaveOtherFirmwareOrBeAnotherDevice() {
    assertThat(
            reasons(
                survey(Kind.LINUX, BOARD, OTHER),
                outcome(BOARD, Finding.SILENT),
                outcome(OTHER, Finding.NO_RIG)))
        .containsExactly(Reason.OTHER_FIRMWARE, Reason.SILENT, Reason.CABLE);
    PortSurvey modems =
        new PortSurvey(
            Kind.LINUX,
            List.of(new PortSurvey.Seen(BOARD, Optional.empty())),
            List.of(),
            Set.of(Service.MODEM_MANAGER));
    assertThat(NoRig.causes(modems, List.of(outcome(BOARD, Finding.SILENT))))
        .extracting(NoRig.Cause::reason)
        .containsExactly(Reason.SILENT, Reason.SERVICE, Reason.CABLE);
  }

  @Test
  void firmwareOfAnotherProtocolIsToldByItsAge() {
    assertThat(reasons(survey(Kind.LINUX, BOARD), ofProtocol(0)))
        .containsExactly(Reason.OLDER_FIRMWARE);
    assertThat(reasons(survey(Kind.LINUX, BOARD), ofProtocol(2)))
        .containsExactly(Reason.NEWER_FIRMWARE);
  }

  private static PortOutcome ofProtocol(int protocol) {
    return new PortOutcome(
        BOARD,
        Finding.OTHER_PROTOCOL,
        "other",
        Optional.of(
            new RigMessage.Greeting(
                0, protocol, 16_000_000, "full", 0x7F, "R-1", 1, "power", "9.0.0", 1)));
  }

  private static PortOutcome outcome(PortCandidate port, Finding finding) {
    return new PortOutcome(port, finding, "said of " + port.path());
  }

  private static PortSurvey survey(Kind system, PortCandidate... ports) {
    return new PortSurvey(system, PortSurvey.bare(List.of(ports)).ports(), List.of(), Set.of());
  }

  private static List<Reason> reasons(PortSurvey survey, PortOutcome... outcomes) {
    return NoRig.causes(survey, List.of(outcomes)).stream().map(NoRig.Cause::reason).toList();
  }
}
