package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionForm;
import org.halflight.bench.WrittenBench;
import org.halflight.rig.RigMessage;
import org.halflight.session.Assembly;
import org.halflight.session.DialSetting;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.speeds.Dial;
import org.halflight.speeds.Reference;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InterruptedRunTest {
  @TempDir private Path folder;

  @Test
  void aLaterDateInANameHidesNothing() throws IOException {
    Path interrupted = write("2026-03-09-101500-000.session", false);
    write("2031-01-01-000000-000.session", true);
    Files.writeString(folder.resolve("2032-01-01-000000-000.session"), "something else\n");
    Files.writeString(folder.resolve("2033-01-01-000000-000.session"), "halflight-session 9\n");
    Files.writeString(folder.resolve("2034-01-01-000000-000.session"), "");
    Files.createDirectory(folder.resolve("2035-01-01-000000-000.session"));
    assertThat(found()).isEqualTo(interrupted);
  }

  @Test
  void noOldFileKeepsALaterOneOut() throws IOException {
    Path interrupted = write("a.session", false);
    for (String at : new String[] {"+999999999-12-31T23:59:59.999999999-18:00", "never", "%", ""}) {
      Files.writeString(
          folder.resolve("z" + at.length() + ".session"),
          "halflight-session 1\nM 0 begins version=1 at="
              + at
              + "\nM 5 run camera=x phase=as-left dial=leaf speeds=1/60 reference=exact"
              + " firings=2147483647 rest-seconds=1e308 stop-tolerance=NaN\nM -9 next\n");
    }
    Files.setLastModifiedTime(interrupted, FileTime.fromMillis(4_000_000_000_000L));
    assertThat(found()).isEqualTo(interrupted);
    Files.setLastModifiedTime(interrupted, FileTime.fromMillis(1_000));
    assertThat(InterruptedRun.find(folder, Source.RIG)).isPresent();
  }

  @Test
  void whatTheRigSentBehindTheEndInterruptsNothing() throws IOException {
    Path path = folder.resolve("a.session");
    try (WrittenBench bench = new WrittenBench(path)) {
      bench.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 2)));
      bench.handle(new SessionInput.Ends());
      bench.say(new RigMessage.Beat(1, 64_000_000, 0, 320));
    }
    assertThat(InterruptedRun.find(folder, Source.RIG)).isEmpty();
    // It went on after all, and was stopped then.
    String heading = SessionForm.newest().heading();
    assertThat(Files.readString(path)).startsWith(heading);
    BenchEvent begins = new BenchEvent.Mark(0, Marks.BEGINS, Map.of(), 99);
    Files.writeString(path, SessionForm.newest().line(begins) + "\n", StandardOpenOption.APPEND);
    assertThat(found()).isEqualTo(path);
  }

  @Test
  void ofSeveralTheOneThatWasWrittenToLastComesFirst() throws IOException {
    Path one = write("b.session", false);
    Path other = write("a.session", false);
    Files.setLastModifiedTime(one, FileTime.fromMillis(1_000));
    assertThat(found()).isEqualTo(other);
    Files.setLastModifiedTime(other, FileTime.fromMillis(500));
    assertThat(found()).isEqualTo(one);
    write("c-practice.session", false);
    assertThat(found()).isEqualTo(one);
    assertThat(InterruptedRun.find(folder, Source.PRACTICE)).isPresent();
  }

  @Test
  void aLinkageAQuickLookAndAStageGoOnWhereTheyWere() throws IOException {
    Path linkage = folder.resolve("linkage.session");
    RunSetup ofLinkage =
        new RunSetup("", Phase.AS_LEFT, "leaf", List.of(), Reference.EXACT, 1, UntimedTest.LINKAGE);
    try (WrittenBench bench = new WrittenBench(linkage)) {
      bench.handle(new SessionInput.RunBegins(ofLinkage));
      bench.handle(new SessionInput.PressJudged(LinkageStep.REST, WindState.LOCKED));
      assertThat(found()).isEqualTo(linkage);
      bench.startAgain();
      assertThat(bench.session().presses()).hasSize(1);
      assertThat(bench.session().untimedTest()).contains(UntimedTest.LINKAGE);
      bench.handle(new SessionInput.Ends());
    }
    assertThat(InterruptedRun.find(folder, Source.RIG)).isEmpty();

    Path quick = folder.resolve("quick.session");
    try (WrittenBench bench = new WrittenBench(quick)) {
      bench.handle(new SessionInput.RunBegins(read(Phase.AS_FOUND, RunOption.QUICK)));
      bench.fire(1 / 2.0);
      assertThat(found()).isEqualTo(quick);
      DialSetting due = bench.session().setting().orElseThrow();
      bench.startAgain();
      assertThat(bench.session().setting()).contains(due);
      bench.handle(new SessionInput.Ends());
    }

    Path stages = folder.resolve("stages.session");
    RunSetup stage = read(Phase.ADJUSTING, RunOption.STAGES);
    try (WrittenBench bench = new WrittenBench(stages)) {
      bench.handle(new SessionInput.RunBegins(stage));
      for (double seconds : new double[] {0.2, 2, 1, 1, 1, 1 / 500.0}) {
        bench.fire(seconds);
      }
      assertThat(bench.session().isRunDone()).isTrue();
      assertThat(found()).as("the next stage is compared with this one").isEqualTo(stages);
      bench.startAgain();
      bench.handle(
          new SessionInput.RunBegins(
              stage.with(new Assembly(true, stage.assembly().cells(), stage.assembly().place()))));
      assertThat(bench.session().runs()).hasSize(2);
    }
  }

  private static RunSetup read(Phase phase, RunOption<?> option) {
    return RunForm.usual("", phase, Dial.find("leaf").orElseThrow())
        .with(Map.of(option, option.words().get(0)))
        .read();
  }

  private Path found() {
    return InterruptedRun.find(folder, Source.RIG).orElseThrow().file();
  }

  private Path write(String name, boolean ended) {
    Path path = folder.resolve(name);
    try (WrittenBench bench = new WrittenBench(path)) {
      bench.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 2)));
      bench.fire(1 / 30.0);
      if (ended) {
        bench.handle(new SessionInput.Ends());
      }
    }
    return path;
  }
}
