package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.session.FiringCondition;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.WindState;
import org.halflight.signal.LightCurve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole session typed at the terminal, on the real firmware in its simulator: a quick look as
 * found, two speeds at once, stages of assembly, the linkage and a speed as left. Each command goes
 * on with the same file. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class WholeSessionOnTheBoardTest {
  private static final Pattern FIRE =
      Pattern.compile("^(?:SET )?(1/\\d+)(?:: cock and fire|, then wind)");
  private static final Pattern STEP =
      Pattern.compile("(Rest check|Pause and let go|Slow squeeze|Quick tap)(?:,| again|:)");
  private static final Map<String, LinkageStep> STEPS =
      Map.of(
          "Rest check", LinkageStep.REST,
          "Pause and let go", LinkageStep.STOP,
          "Slow squeeze", LinkageStep.SQUEEZE,
          "Quick tap", LinkageStep.TAP);
  private static final double RAMP = 0.001;

  @TempDir private Path folder;

  /** Times in seconds by marking; the slow one is found a third of a stop long. */
  private final Map<String, Double> times =
      new HashMap<>(Map.of("1/4", 0.315, "1/30", 1 / 32.0, "1/125", 1 / 128.0, "1/500", 1 / 512.0));

  private final Set<String> curves = new HashSet<>();
  private final List<String> said = new ArrayList<>();
  private BenchInABox box;
  private ScriptedButton button;
  private String session;

  /** How much longer the slow speed is than it was found. */
  private double drag = 1;

  private boolean isTapSaid;
  private boolean isTurning;

  @Test
  void quickLookTwoAtOnceStagesAndLinkageGoOnInOneFile() throws Exception {
    session = folder.resolve("whole.session").toString();
    try (BenchInABox board =
        BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED))) {
      box = board;
      button = new ScriptedButton(box, 0.006);
      box.curve("slow", curve(0.125));
      quickLook();
      twoAtOnce();
      stages();
      asLeft();
    }
    Session all = SessionReducer.replay(SessionFile.read(Path.of(session)).events()).session();
    assertThat(all.runs())
        .extracting(RunSetup::phase)
        .containsExactly(
            Phase.AS_FOUND, Phase.ADJUSTING, Phase.ADJUSTING, Phase.ADJUSTING, Phase.AS_LEFT);
    assertThat(all.results()).anyMatch(f -> f.conditions().has(FiringCondition.QUICK_TAP));
    assertThat(all.presses()).hasSize(LinkageStep.PRESSES);
    assertThat(all.adjusted()).hasSize(1);
    assertThat(all.results()).allSatisfy(f -> assertThat(f.firing().damage()).isEmpty());
  }

  private void quickLook() throws Exception {
    List<String> lines = run("--quick", "--speeds", "1/4,1/30,1/125,1/500");
    assertThat(lines)
        .containsSubsequence(
            "The light is not set. Do not fire to set it: B, held at the end, does.",
            "The run begins.",
            "Firing 3: quick tap.",
            "The run is done.");
    assertThat(String.join("\n", lines))
        .contains("the largest error so far")
        .containsPattern("1/4 .*\\+0\\.33 stop");
  }

  private void twoAtOnce() throws Exception {
    List<String> lines = run("--two", "1/4,1/125");
    assertThat(lines)
        .containsSubsequence(
            "Both are fired. Adjust, then note it (A).",
            "Marked: governor eased. The next firings show what it did.",
            "Both are fired. Adjust, then note it (A).");
    assertThat(String.join("\n", lines)).contains("closer");
  }

  private void stages() throws Exception {
    String text = String.join("\n", run("--stages", "--speeds", "1/4,1/125"));
    assertThat(text)
        .containsSubsequence(
            "Stage done.",
            "Stage 2: cover on, no cells, on the bench.",
            "Stage 1 goes on: cover off, no cells, on the bench.",
            "Stage 2: cover off, no cells, in the camera, ring tight.",
            "The camera and the ring together cost 0.4 stop at 1/4",
            "Look for a pinched case",
            "Stages of assembly:")
        .doesNotContain("the B test fails");
  }

  private void asLeft() throws Exception {
    List<String> lines =
        run("--phase", "as-left", "--speeds", "1/125", "--firings", "1", "--checks", "linkage");
    assertThat(lines)
        .containsSubsequence(
            "Press 1, rest check: NEITHER.",
            "Press 14, quick tap: BOTH.",
            "ONE CLICK. The wind turns after each picture.",
            "The run is done.");
  }

  private List<String> run(String... options) throws Exception {
    List<String> words = new ArrayList<>(List.of("run", session, "--port", box.port()));
    words.addAll(List.of(options));
    int before = said.size();
    TypedCommand.execute(box, folder, said, this::reads, words.toArray(String[]::new));
    return said.subList(before, said.size());
  }

  /** What the person does about each line: its words say whether to fire, to hold or to type. */
  private void reads(String line, TypedCommand.Keyboard keys) throws IOException {
    Matcher fire = FIRE.matcher(line);
    if (fire.find()) {
      if (line.startsWith("SET 1/500") && !isTapSaid) {
        // Of the firing before; what to fire is then said once more.
        isTapSaid = true;
        keys.type("5");
      } else {
        fire(fire.group(1));
      }
    } else if (line.startsWith("Set B") && line.contains("three seconds")) {
      box.say("hold +0.2 1\nhold +4 0");
    } else if (line.startsWith("Set B. Tap") && !isTurning) {
      box.say("hold +0.2 1\nhold +0.4 0");
    } else if (line.startsWith("Still at B")) {
      box.say("hold +0.2 1\nhold +2.4 0");
    } else if (line.contains("hold the shutter open")) {
      box.say("hold +0 1");
      keys.type("");
    } else if (line.startsWith("The light is set")) {
      box.say("hold +0 0");
    } else if (line.startsWith("Both are fired")) {
      adjust(keys);
    } else if (line.startsWith("Stage done")) {
      keys.type(drag > 1 ? "q" : "cover");
    } else if (line.startsWith("Stage 2: cover on")) {
      // No: the cover stays off, and the shutter goes into the camera.
      isTurning = true;
      drag = 1.32;
      keys.type("cover");
      keys.type("place tight");
    } else if (line.contains("in the camera, ring tight. Hold")) {
      isTurning = false;
    } else if (line.startsWith("1. Press the button on the body")) {
      keys.type("w");
      keys.type("");
    } else {
      linkage(line, keys);
    }
  }

  private void adjust(TypedCommand.Keyboard keys) throws IOException {
    if (times.get("1/4") > 0.26) {
      times.put("1/4", 0.25);
      keys.type("a governor eased");
    } else {
      keys.type("q");
    }
  }

  private void linkage(String line, TypedCommand.Keyboard keys) throws IOException {
    Matcher step = STEP.matcher(line);
    if (step.find()) {
      LinkageStep due = STEPS.get(step.group(1));
      button.getReady();
      button.press(due);
      BenchInABox.Limit limit = box.limit();
      while (!button.isPressOver(Long.MAX_VALUE) && !limit.isOver()) {
        Thread.onSpinWait();
      }
      keys.type(
          due == LinkageStep.REST || button.wind().orElseThrow() == WindState.LOCKED ? "o" : "w");
    }
  }

  private static LightCurve curve(double seconds) {
    return new LightCurve(
        new double[] {0, RAMP, seconds, seconds + RAMP}, new double[] {0, 1, 1, 0});
  }

  private void fire(String marking) throws IOException {
    double seconds = times.get(marking) * (marking.equals("1/4") ? drag : 1);
    String name = "c" + Math.round(seconds * 1e6);
    if (curves.add(name)) {
      box.curve(name, curve(seconds));
    }
    box.say("fire +0.1 " + name);
  }
}
