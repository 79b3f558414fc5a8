package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigCheckRun;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.ControlLimits;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.PrintedDisc;
import org.halflight.calibration.RigCheck;
import org.halflight.calibration.SeenPulse;
import org.halflight.chart.DiscChart;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureText;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.extratest.InventedAdvance;
import org.halflight.job.CheckItem;
import org.halflight.job.Id;
import org.halflight.link.LinkState;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.CameraHistory;
import org.halflight.record.WorkshopRecord;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.PseudoLanguage;
import org.halflight.words.Unmarked;
import org.halflight.workflow.Answer;
import org.halflight.workflow.CameraForm;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * In a language that marks every letter of the bundle, what the window is to show and every picture
 * have no unmarked letter, but for what is listed here with its reason. All figures are invented.
 */
class PseudoViewTest {
  /** What need not come from the bundle, and why. */
  private static final Map<String, String> EXCEPTIONS =
      Map.of(
          "\\bf(?=/\\d)", "the sign of an f-number",
          "\\b(?:M|MF|S|FP)\\b", "a class of flash bulbs, or M of the sync lever",
          "(?<=[\\d)\u2212+] )(?:s|ms|mV|ppm|Hz|\u00b5s)\\b", "a symbol of a unit after its number",
          "\\bPRACTICE\\b|(?<=\\()full(?= )|(?<= )practice-1(?=\\))",
              "what the practice rig says of itself",
          "(?m)^(?:s|ms|min|h)$", "a symbol of a unit beside its figure",
          "(?m)(?:^|(?<= ))(?:[A-Z]|F\\d+|Ctrl\\+\\w+)$", "a key",
          "\\binvented\\b", "the camera that the test named");

  private static final List<String> WALKED =
      List.of("org.halflight.desk.view", "org.halflight.chart", "org.halflight.workflow");

  private static final Optional<MarkedSpeed> SIXTIETH = Optional.of(MarkedSpeed.parse("1/60"));

  private static final RigProfile PROFILE =
      InventedProfiles.bare(
          new ProfiledRig("1", "1", "1"), LocalDate.of(2026, 3, 9), new LightRange(20, 700, 900));

  @TempDir Path folder;

  private PseudoLanguage language;

  @BeforeEach
  void speak() {
    language = PseudoLanguage.spoken();
  }

  @AfterEach
  void speakPlainly() {
    language.close();
  }

  @Test
  void aWholePieceOfWork() {
    try (PracticeWork work = new PracticeWork(folder)) {
      look(work);
      work.fire();
      look(work);
      work.light.set();
      work.until(() -> work.view().light().isAsking());
      look(work);
      work.rig.holdOpen(true);
      work.rig.rest(0.5);
      work.light.answer(Answer.DONE);
      work.until(() -> work.view().light().set().isPresent());
      look(work);
      work.rig.holdOpen(false);

      work.begin(Phase.AS_FOUND, 3, "1/60", "1/125");
      look(work);
      for (PracticeMishap mishap : List.of(PracticeMishap.NONE, PracticeMishap.DOUBLE)) {
        int before = work.view().results().size();
        work.fireOnly(SIXTIETH, mishap);
        work.until(() -> work.view().results().size() > before);
        look(work);
      }
      while (!work.view().runDone()) {
        work.fire();
        look(work);
      }
      work.link(LinkState.LOST);
      look(work);
      work.link(LinkState.BACK);

      work.begin(Phase.ADJUSTING, 3, "1/60");
      work.fire();
      look(work);
      work.handle(new SessionInput.Adjusted("1"));
      work.fire();
      look(work);

      work.begin(
          Phase.AS_LEFT, 2, AcceptanceCriteria.USUAL.with(RunOption.UNTIL_DECIDED, true), "1/60");
      for (int i = 0; i < 4; i++) {
        work.fire();
        look(work);
      }
    }
  }

  @Test
  void checksBesideTheSpeeds() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.handle(new SessionInput.LightSet(new LightLevels(20, 820, 220, 620), TripPoints.EXACT));
      work.begin(Phase.AS_LEFT, 1, "1/60");
      work.fire();
      for (UntimedTest check : UntimedTest.values()) {
        work.handle(new SessionInput.UntimedTestChosen(check));
        look(work);
      }
      hold(work, UntimedTest.B);
      hold(work, UntimedTest.T);
      work.handle(new SessionInput.UntimedTestChosen(UntimedTest.SELF_TIMER));
      for (int i = 0; i < 2; i++) {
        int before = work.view().results().size();
        work.until(() -> work.rig.fireBySelfTimer().isPresent());
        work.until(() -> work.view().results().size() > before);
        look(work);
      }
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 30);
      read(work, What.SHUT_UNCOCKED, "", 20);
      read(work, What.STOP, "2.8", 820);
      read(work, What.STOP, "4", 490);
      read(work, What.STOP, "5.6", 160);
      look(work);
      assertThat(ExtraTestsText.of(work.view()).entries())
          .as("each with a picture")
          .filteredOn(entry -> entry.picture().isPresent())
          .hasSizeGreaterThanOrEqualTo(3);
    }
    assertMarked(
        ExtraTestPictures.of(
            InventedAdvance.trials(Phase.ADJUSTING, 0.0121, -0.0011, -0.0052, 0.0009).timing(),
            ""));
  }

  private void hold(PracticeWork work, UntimedTest check) {
    int before = work.view().results().size();
    work.handle(new SessionInput.UntimedTestChosen(check));
    work.rig.holdOpen(true);
    work.rig.rest(1);
    look(work);
    work.rig.holdOpen(false);
    work.until(() -> work.view().results().size() > before);
    look(work);
  }

  private static void read(PracticeWork work, What what, String at, double counts) {
    work.handle(new SessionInput.LightRead(LightReading.of(what, at, false, counts, 0.3, 1000, 1)));
  }

  @Test
  void theRigAndItsCharts() {
    RigModel model = new RigModel();
    assertMarked(of(model));
    model.checkBegins(0);
    assertMarked(of(model));
    double[] shifted = new double[RigCheckRun.PULSES];
    Arrays.fill(shifted, 5e-6);
    model.checked(RigCheck.of(new ControlLimits(0, 1e-6), shifted), "1");
    assertMarked(of(model));
    model.calibrationBegins(0, 120);
    for (RigCalibration.Stage stage : RigCalibration.Stage.values()) {
      model.stage(stage, 0);
      assertMarked(of(model));
    }
    List<SeenPulse> pulses = pulses();
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(pulses, 775)).fit();
    model.calibrated(
        new RigCalibration.Calibrated(
            PROFILE, pulses, fit, OptionalDouble.empty(), Optional.empty()));
    assertThat(of(model).fit()).isPresent();
    assertMarked(of(model));
  }

  private static RigView of(RigModel model) {
    return model.view(Optional.empty(), new Session(), List.of());
  }

  /** Ten of each width and level, of a front end that lags by 4 us. */
  private static List<SeenPulse> pulses() {
    List<SeenPulse> pulses = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      for (double seconds : new double[] {100e-6, 500e-6, 2e-3, 20e-3}) {
        for (double level : new double[] {0.15, 0.25, 0.4, 0.6, 0.7, 0.85}) {
          pulses.add(
              new SeenPulse(
                  level < 0.5 ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
                  level,
                  seconds,
                  -4e-6 * Math.log(1 - level) + i * 1e-8,
                  -4e-6 * Math.log(level) + i * 1e-8));
        }
      }
    }
    return pulses;
  }

  @Test
  void theChartOfADisc() {
    List<DiscReading.Slot> slots =
        List.of(
            new DiscReading.Slot(10, 1e-3, 1.01e-3, 1e-3, List.of()),
            new DiscReading.Slot(20, 2e-3, 2.01e-3, 1e-3, List.of()));
    DiscReading reading =
        new DiscReading(
            new PrintedDisc(PrintedDisc.SLOT_DEGREES, 0.01, 63),
            slots,
            0.05,
            1e-6,
            9,
            true,
            1,
            0.1,
            0.01,
            5,
            OptionalDouble.empty(),
            0,
            1e-6,
            0,
            1e-6);
    for (DiscComparison.Verdict verdict : DiscComparison.Verdict.values()) {
      assertMarked(
          new DiscChart(
              new DiscComparison(
                  reading,
                  true,
                  slots.stream().map(slot -> new DiscComparison.Row(slot, 1e-5, 2e-5)).toList(),
                  verdict),
              ""));
    }
  }

  @Test
  void theHistoryOfACamera() {
    Path file = folder.resolve("work.session");
    try (PracticeWork work = new PracticeWork(folder)) {
      for (Phase phase : List.of(Phase.AS_FOUND, Phase.AS_LEFT)) {
        work.begin(phase, 3, "1/60");
        while (!work.view().runDone()) {
          work.fire();
        }
      }
    }
    Clock clock = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);
    try (WorkshopRecord record = WorkshopRecord.open(folder.resolve("record.sqlite"), clock)) {
      record.importSession(file);
      CameraHistory history = record.history(record.search("").get(0).camera().id()).orElseThrow();
      assertMarked(
          List.of(
              HistoryText.drifts(history, ZoneOffset.UTC),
              HistoryText.tried(history, ZoneOffset.UTC),
              HistoryText.map(history, ZoneOffset.UTC)));
    }
  }

  @Test
  void keysListsAndForms() {
    for (UserAction act : UserAction.values()) {
      assertMarked(KeyHints.words(act));
    }
    for (CheckItem item : CheckItem.values()) {
      assertMarked(ChecklistText.EMPTY.said(item));
      assertMarked(ChecklistText.EMPTY.cell(item, false) + '\n');
    }
    for (CameraForm form :
        List.of(
            new CameraForm("", "", ShutterKind.LEAF, "1/60", "2.8", "36 x 24", ""),
            new CameraForm("1", "", ShutterKind.LEAF, "1/60", "0", "36 x 24", ""),
            new CameraForm("1", "", ShutterKind.LEAF, "1/60", "2.8", "0", ""),
            new CameraForm("1", "", ShutterKind.LEAF, "0", "2.8", "36 x 24", ""))) {
      assertMarked(form.read(Id.ofNew()).trouble());
    }
  }

  private void look(PracticeWork work) {
    BenchView view = work.view();
    assertMarked(
        List.of(
            view,
            NextText.of(view),
            NextText.of(view).spoken(),
            NumeralsText.of(view),
            NumeralsText.of(view).spoken(),
            MessageText.of(view),
            AdviceText.of(view, RunWords.NOTHING),
            RunWords.of(view),
            KeyHints.of(view),
            LinkText.of(view.link()),
            RunHints.of(view),
            DetailsText.of(view, SIXTIETH),
            ExtraTestsText.of(view),
            BenchPictures.all(view, SIXTIETH),
            BenchPictures.all(view, Optional.empty())));
  }

  private static void assertMarked(Object shown) {
    StringBuilder text = new StringBuilder();
    read(shown, text);
    assertThat(Unmarked.in(text.toString(), EXCEPTIONS)).as(text.toString()).isEmpty();
  }

  /** Every text of what is shown, each in a line. */
  private static void read(Object shown, StringBuilder text) {
    if (shown instanceof String line) {
      text.append(line).append('\n');
    } else if (shown instanceof Optional<?> perhaps) {
      perhaps.ifPresent(each -> read(each, text));
    } else if (shown instanceof Iterable<?> several) {
      several.forEach(each -> read(each, text));
    } else if (shown instanceof Picture picture) {
      text.append(PictureText.of(picture)).append('\n');
    } else if (shown instanceof ExtraTestsText.Entry entry) {
      // Its key is not shown.
      read(
          List.of(entry.headline(), entry.run(), entry.sentences(), entry.picture(), entry.twin()),
          text);
    } else if (shown instanceof Record && WALKED.contains(shown.getClass().getPackageName())) {
      for (RecordComponent each : shown.getClass().getRecordComponents()) {
        try {
          each.getAccessor().setAccessible(true);
          read(each.getAccessor().invoke(shown), text);
        } catch (ReflectiveOperationException e) {
          throw new LinkageError(e.getMessage(), e);
        }
      }
    }
  }
}
