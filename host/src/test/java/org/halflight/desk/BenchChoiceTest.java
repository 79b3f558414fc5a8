package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Predicate;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.PortsView;
import org.halflight.fixtures.Turns;
import org.halflight.link.LinkState;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.signal.BoardTraits;
import org.halflight.speeds.Dial;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rigs come and go at any port, without a window. All figures are of an invented shutter. */
class BenchChoiceTest {
  private static final int VIEWS_MOST = 5_000;

  private final BlockingQueue<BenchView> views = new LinkedBlockingQueue<>();
  private final PlugPorts ports = new PlugPorts();

  @TempDir private Path folder;
  private Archive archive;
  private BenchChoice choice;

  @BeforeEach
  void open() {
    archive = new Archive(surroundings(), said -> {});
    choice = new BenchChoice(surroundings(), () -> views::add, cue -> {}, archive, begun -> {});
  }

  @AfterEach
  void close() {
    choice.close();
    archive.close();
  }

  @Test
  void aRigThatIsPluggedInIsUsedAtOnceWhereNothingWasMeasured() throws Exception {
    begin();
    assertThat(await(v -> v.link().isUp()).link().isPractice()).isTrue();

    ports.plug("/dev/rig1", PlugPorts.rig("R-0001"));

    BenchView rig = await(v -> v.link().isUp() && v.link().serial().equals("R-0001"));
    assertThat(rig.said().orElseThrow().text())
        .startsWith("The rig R-0001 was plugged in and is used now");
    assertThat(sessions()).hasSize(2);
  }

  @Test
  void aRigIsOfferedWhereSomethingWasMeasuredAndTheRunGoesOnWhenTheyComeBack() throws Exception {
    begin();
    await(v -> v.link().isUp());
    choice
        .now()
        .orElseThrow()
        .ask(
            hands ->
                hands.beginRun(
                    RunForm.usual("mine", Phase.AS_FOUND, Dial.builtIn().get(0)).read()));
    await(v -> v.setup().isPresent());
    does(BenchActions::fire);
    await(v -> v.results().size() == 1);
    PracticePorts bench = PlugPorts.rig("R-0001");
    ports.plug("/dev/rig1", bench);
    BenchView offer = await(v -> v.link().ports().offer());
    assertThat(offer.link().isPractice()).isTrue();
    await(v -> says(v, "Press Y to use it"));

    does(BenchActions::changeBench);
    await(v -> says(v, "A run is under way. Its firings (1) are kept"));
    does(BenchActions::changeBench);

    BenchView rig = await(v -> v.link().isUp() && v.link().serial().equals("R-0001"));
    assertThat(rig.results()).isEmpty();
    assertThat(rig.setup()).isEmpty();
    bench.onBench(its -> its.fire(PracticeMishap.NONE));
    await(v -> v.results().size() == 1 && !v.link().isPractice());

    // Pulled out, and plugged in elsewhere: the same rig goes on with the same session.
    ports.pull("/dev/rig1");
    await(v -> v.link().state() == LinkState.LOST);
    ports.plug("/dev/rig7", bench);
    assertThat(await(v -> v.link().state() == LinkState.BACK).results()).hasSize(1);

    does(BenchActions::changeBench);
    BenchView practice = await(v -> v.link().isPractice() && v.link().isUp());
    assertThat(practice.results()).hasSize(1);
    assertThat(practice.setup()).isPresent();
    assertThat(practice.run()).isEqualTo(1);
    assertThat(sessions()).hasSize(2);
  }

  @Test
  void practiceGoesOnWithAnotherKindOfRigInTheSameSession() throws Exception {
    begin();
    await(v -> v.link().isUp());

    does(hands -> hands.camera().orElseThrow().useRig(BoardTraits.Kind.STARTER));
    await(v -> v.link().state() == LinkState.BACK);
    does(BenchActions::fire);

    FiringResult fired = await(v -> v.results().size() == 1).results().get(0);
    assertThat(fired.oneLevel().orElseThrow().isFixed()).isTrue();
    assertThat(sessions()).hasSize(1);
  }

  @Test
  void ofTwoRigsOneIsChosenAndItsPortIsKeptUntilItIsGone() throws Exception {
    ports.plug("/dev/rig1", PlugPorts.rig("R-0001"));
    ports.plug("/dev/rig2", PlugPorts.rig("R-0002"));
    begin();
    assertThat(await(v -> !v.link().ports().main().isEmpty()).link().ports().main())
        .isEqualTo(
            "2 rigs are connected: rig R-0001 on /dev/rig1, rig R-0002 on /dev/rig2. Choose one by"
                + " its serial number, or leave only one plugged in.");

    does(hands -> hands.ports().choose(Optional.of("/dev/rig2")));

    BenchView one = await(v -> v.link().isUp() && !v.link().serial().isEmpty());
    assertThat(one.link().serial()).isEqualTo("R-0002");
    does(hands -> hands.ports().list());
    await(v -> v.link().ports().lines().stream().anyMatch(PortsView.Line::chosen));
    assertThat(new RememberedPort(folder).path()).contains("/dev/rig2");

    ports.pull("/dev/rig2");
    await(v -> says(v, "The port /dev/rig2 that you chose is not there"));
    assertThat(new RememberedPort(folder).path()).isEmpty();
  }

  @Test
  void allPortsAreLookedAtWhenAskedAndAChosenPortThatIsGoneIsToldAtTheStart() throws Exception {
    new RememberedPort(folder).keep(Optional.of("/dev/rig9"));
    ports.plug("/dev/odd1", PlugPorts.rig("R-0001"), false);
    begin();
    await(v -> says(v, "The port /dev/rig9 that you chose is not there"));
    does(hands -> hands.ports().list());
    PortsView list = await(v -> !v.link().ports().lines().isEmpty()).link().ports();
    assertThat(list.lines().get(0).words())
        .isEqualTo("/dev/odd1, USB board: does not look like a board, not opened");
    assertThat(list.others().get(0)).contains("none was opened: /dev/odd1");
    assertThat(new RememberedPort(folder).path()).isEmpty();

    does(hands -> hands.ports().lookAtAll());

    await(v -> v.link().isUp() && v.link().serial().equals("R-0001"));
  }

  private static boolean says(BenchView view, String words) {
    return view.said().filter(said -> said.text().contains(words)).isPresent();
  }

  private void begin() {
    choice.start(choice.begin());
  }

  private void does(java.util.function.Consumer<BenchActions> doing) {
    choice.now().orElseThrow().does(doing);
  }

  private BenchView await(Predicate<BenchView> expected) throws InterruptedException {
    BenchView view = null;
    for (int seen = 0; seen < VIEWS_MOST; seen++) {
      view = Turns.next(views);
      if (expected.test(view)) {
        return view;
      }
    }
    throw new AssertionError("waited in vain; last " + view);
  }

  private List<Path> sessions() throws Exception {
    try (var files = Files.list(folder.resolve("sessions"))) {
      return files.filter(file -> file.toString().endsWith(".session")).toList();
    }
  }

  private DeskSurroundings surroundings() {
    return new DeskSurroundings(
        folder, () -> ports, System::nanoTime, Clock.systemUTC(), "test", 20);
  }
}
