package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.halflight.link.FakeClock;
import org.halflight.link.FakePorts;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.Ports;
import org.halflight.rig.RigSelector;
import org.halflight.trouble.Trouble;
import org.halflight.upload.UploadStep;
import org.halflight.upload.UploadTrouble;
import org.halflight.upload.UploadTrouble.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Firmware onto a board that speaks the protocol as its application note has it. */
class FirmwareWorkTest {
  private static final String SHIPPED = ShippedFirmware.images().all().get(0).version();

  private final FakeClock clock = new FakeClock();
  private final ScriptedBoard board = new ScriptedBoard(clock);
  private final List<UploadStep> steps = new ArrayList<>();
  private double fraction;

  private FirmwareWork work(Ports ports, BooleanSupplier goOn) {
    return new FirmwareWork(ports, clock, goOn, ShippedFirmware.images());
  }

  private List<String> upload(String rig) {
    return upload(Optional.of(rig), false, () -> true);
  }

  private List<String> upload(Optional<String> rig, boolean rewired, BooleanSupplier goOn) {
    FirmwareWork work = work(board, goOn);
    return work.upload(work.target(RigSelector.any(), rig, rewired), this::at);
  }

  private void at(UploadStep step, double share) {
    assertThat(share).isBetween(step == UploadStep.SEARCHING ? 0 : fraction, 1.0);
    fraction = share;
    if (steps.isEmpty() || steps.get(steps.size() - 1) != step) {
      steps.add(step);
    }
  }

  private static void assertRefused(Runnable what, Reason reason, String sentencePart) {
    assertThatThrownBy(what::run)
        .isInstanceOfSatisfying(
            UploadTrouble.class, trouble -> assertThat(trouble.reason()).isEqualTo(reason))
        .hasMessageContaining(sentencePart);
  }

  @ParameterizedTest
  @ValueSource(strings = {"full", "small", "starter"})
  void putsTheImageOfARigOnAnEmptyBoard(String rig) {
    List<String> said = upload(rig);

    assertThat(board.holds(rig)).isTrue();
    assertThat(said.get(0)).contains("greets with firmware " + SHIPPED).contains(rig);
    assertThat(said.get(1)).contains("Calibrate");
    assertThat(steps)
        .containsExactly(
            UploadStep.SEARCHING, UploadStep.WRITING, UploadStep.VERIFYING, UploadStep.GREETING);
    assertThat(fraction).isEqualTo(1);
    assertThat(board.refused()).isZero();
  }

  @Test
  void leavesTheRestOfTheFlashAndTheEepromAlone() {
    byte[] before = board.eeprom();

    upload("full");

    byte[] flash = board.flash();
    int pages = (ScriptedBoard.image("full").length + 127) / 128;
    assertThat(board.pagesWritten()).isEqualTo(pages);
    byte[] behind = Arrays.copyOfRange(flash, pages * 128, flash.length);
    byte[] erased = new byte[behind.length];
    Arrays.fill(erased, (byte) 0xFF);
    assertThat(behind).isEqualTo(erased);
    assertThat(board.eeprom()).isEqualTo(before);
  }

  @ParameterizedTest
  @CsvSource({"115200, 1", "57600, 2"})
  void triesBothSpeeds(int baudRate, int restarts) {
    board.bootloaderAt(baudRate);

    upload("full");

    assertThat(board.holds("full")).isTrue();
    assertThat(board.restarts()).isEqualTo(restarts);
  }

  @Test
  void waitsForABootloaderThatBlinksFirst() {
    board.blinksFirst();

    upload("full");

    assertThat(board.restarts()).isEqualTo(1);
  }

  @Test
  void isNotMisledByWhatTheRigSentBefore() {
    board.noisyAtStart(1);

    upload("full");

    assertThat(board.holds("full")).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"1E950F", "1E9514"})
  void takesBothChips(String signature) {
    board.chip(signature);

    upload("full");

    assertThat(board.holds("full")).isTrue();
  }

  @Test
  void refusesAnotherChipAndWritesNothing() {
    board.chip("1E9406");

    assertRefused(() -> upload("full"), Reason.OTHER_CHIP, "signature 1E 94 06");
    assertThat(board.pagesWritten()).isZero();
  }

  @Test
  void knowsTheRigThatIsThere() {
    board.with("small");

    List<String> said = upload(Optional.empty(), false, () -> true);

    assertThat(board.holds("small")).isTrue();
    assertThat(said.get(0)).contains("rig R-0001");
    assertThat(said.get(1)).contains("its profile stays valid");
  }

  @Test
  void namesWhatIsThereAndWhatItGets() {
    board.with("small").greetsWith("1.0.0");

    FirmwareWork.Target target =
        work(board, () -> true).target(RigSelector.any(), Optional.empty(), false);

    assertThat(target.sentence())
        .contains("R-0001", "firmware 1.0.0", "firmware " + SHIPPED, "serial number stays");
    assertThat(FirmwareWork.ageSentence(ShippedFirmware.images(), target.before().get().greeting()))
        .hasValueSatisfying(said -> assertThat(said).contains("1.0.0", "Update it"));
  }

  @Test
  void namesFirmwareThatIsTooNew() {
    board.with("small").greetsWith("99.0.0");

    FirmwareWork.Target target =
        work(board, () -> true).target(RigSelector.any(), Optional.empty(), false);

    assertThat(FirmwareWork.ageSentence(ShippedFirmware.images(), target.before().get().greeting()))
        .hasValueSatisfying(said -> assertThat(said).contains("99.0.0", "Update the program"));
  }

  @Test
  void makesAnotherRigOfItOnlyWhenItWasRewired() {
    board.with("small");

    assertRefused(() -> upload("full"), Reason.OTHER_RIG, "says that it is a small rig");
    assertThat(board.pagesWritten()).isZero();

    upload(Optional.of("full"), true, () -> true);
    assertThat(board.holds("full")).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "full, 0xA200, false",
    "full, 0x9100, false",
    "full, 0x8000, true",
    "full, 0x0000, true",
    "small, 0x0000, false",
    "starter, 0x0000, false"
  })
  void namesFirmwareForAnotherRigThanTheOneItFindsWired(String rig, int reads, boolean said) {
    board.highThresholdReads(reads);

    assertThat(upload(rig).stream().anyMatch(s -> s.contains("not at A4"))).isEqualTo(said);
  }

  @Test
  void asksWhichRigAnEmptyBoardIs() {
    assertRefused(
        () -> upload(Optional.empty(), false, () -> true),
        Reason.WHICH_RIG,
        "full, small, starter");
  }

  @Test
  void knowsNoOtherRig() {
    assertThatThrownBy(() -> upload("huge"))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("huge")
        .hasMessageContaining("full, small, starter");
  }

  @Test
  void saysThatThereIsNoBoard() {
    FirmwareWork work = work(new FakePorts(), () -> true);

    assertThatThrownBy(() -> work.target(RigSelector.any(), Optional.of("full"), false))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("No board is connected");
  }

  @Test
  void saysThatThePortIsBusy() {
    FakePorts ports =
        new FakePorts()
            .plugRefusing(
                "a",
                new LinkRefusedException(
                    LinkRefusedException.Reason.BUSY, "Another program has the port a open."));
    FirmwareWork work = work(ports, () -> true);

    assertThatThrownBy(() -> work.target(RigSelector.any(), Optional.of("full"), false))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("Another program has the port a open.");
  }

  @Test
  void saysWhatToDoWhereNoBootloaderAnswers() {
    board.withoutBootloader();

    assertRefused(() -> upload("full"), Reason.NO_BOOTLOADER, "reset button");
    assertThat(board.restarts()).isEqualTo(4);
  }

  @Test
  void beginsAgainWhenTheBootloaderFallsSilentOnce() {
    board.silentAfter(40);

    upload("full");

    assertThat(board.holds("full")).isTrue();
    assertThat(board.restarts()).isEqualTo(2);
  }

  @Test
  void uploadingAgainCompletesWhatAPulledCableLeft() {
    board.with("small").cablePulledAfter(60);

    assertRefused(
        () -> upload(Optional.of("full"), true, () -> true), Reason.UNPLUGGED, "upload again");
    assertThat(board.holds("full") || board.holds("small")).isFalse();

    board.plugIn();
    // Half a firmware greets as no rig, so it has to be named.
    upload("full");
    assertThat(board.holds("full")).isTrue();
  }

  @Test
  void saysThatMemoryReadsOtherThanWritten() {
    board.wornAt(0x123);

    assertRefused(() -> upload("full"), Reason.DIFFERS, "worn out");
    assertThat(board.restarts()).isEqualTo(3);
  }

  @Test
  void saysThatTheNewFirmwareDoesNotGreet() {
    board.greetsWith("0.9.0");

    assertRefused(() -> upload("full"), Reason.NO_GREETING, "written and verified");
  }

  @Test
  void stopsWhenThePersonDoes() {
    assertRefused(
        () -> upload(Optional.of("full"), false, () -> board.pagesWritten() < 10),
        Reason.STOPPED,
        "upload again");
    assertThat(board.pagesWritten()).isEqualTo(10);
  }
}
