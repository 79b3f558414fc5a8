package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.halflight.session.Assembly;
import org.halflight.session.Assembly.Cells;
import org.halflight.session.Assembly.Part;
import org.halflight.session.Assembly.Place;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.Stage;
import org.halflight.verdict.Stage.Bulb;
import org.halflight.verdict.Stage.Fired;
import org.halflight.verdict.Stage.Seen;
import org.halflight.verdict.StageChange;
import org.halflight.verdict.StageChange.Failing;
import org.halflight.verdict.StageChange.Shown;
import org.halflight.verdict.StageChange.Suspect;
import org.junit.jupiter.api.Test;

class AssemblyStagesTest {
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1/2");
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");
  private static final Bulb RIGHT = new Bulb(Seen.RIGHT, Seen.RIGHT, Seen.NOT_KNOWN);
  private static final Assembly COVERED = new Assembly(true, Cells.NONE, Place.BENCH);
  private static final Assembly REAR = new Assembly(true, Cells.REAR, Place.BENCH);
  private static final Assembly BOTH = new Assembly(true, Cells.BOTH, Place.BENCH);
  private static final Assembly LOOSE = new Assembly(true, Cells.BOTH, Place.LOOSE);
  private static final Assembly TIGHT = new Assembly(true, Cells.BOTH, Place.TIGHT);
  private static final List<Assembly> REPAIR =
      List.of(Assembly.BARE, COVERED, REAR, BOTH, LOOSE, TIGHT);

  private static Stage stage(Assembly assembly, double slow, double top) {
    return new Stage(
        assembly,
        true,
        Optional.of(RIGHT),
        Fired.of(SLOW, List.of(slow - 0.02, slow, slow + 0.02), 0),
        Fired.of(TOP, List.of(top), 0));
  }

  private static StageChange last(Stage... stages) {
    List<StageChange> changes = AssemblyStages.of(List.of(stages)).changes();
    return changes.get(changes.size() - 1);
  }

  @Test
  void aPinchedCaseIsNamedWithItsCost() {
    List<Stage> stages = new ArrayList<>();
    REPAIR.forEach(each -> stages.add(stage(each, each.equals(TIGHT) ? 0.5 : 0.1, 0)));
    List<StageChange> changes = AssemblyStages.of(stages).changes();
    StageChange ring = changes.get(4);
    assertThat(ring.changed()).containsExactly(Part.RING);
    assertThat(ring.suspects()).containsExactly(Suspect.PINCHED_CASE);
    assertThat(StageWords.sentences(ring).get(0))
        .isEqualTo("The ring costs 0.4 stop at 1/2 (\u00b10.1).");
    assertThat(changes.subList(0, 4)).noneMatch(StageChange::isFound);
    assertThat(StageWords.sentences(changes.get(0)).get(0)).startsWith("No change seen at 1/2");
  }

  @Test
  void partsOfAShutterWithCurtainsHaveTheirOwnNames() {
    Assembly loose = new Assembly(true, Cells.NONE, Place.LOOSE, true);
    Assembly tight = new Assembly(true, Cells.NONE, Place.TIGHT, true);
    StageChange change = last(stage(loose, 0, 0), stage(tight, 0.4, 0));
    assertThat(StageWords.sentences(change))
        .contains("Tightening the screws costs 0.4 stop at 1/2 (\u00b10.2).")
        .anyMatch(said -> said.startsWith("Look for a strained frame"));
    assertThat(StageWords.of(tight)).isEqualTo("cover on, in the body, screws tight");
    assertThat(StageWords.next(tight)).doesNotContain("cells");
    assertThat(tight.switches()).doesNotContain(Assembly.Switch.CELLS);
  }

  @Test
  void twoThingsAtOnceAreBothSaid() {
    StageChange change = last(stage(BOTH, 0, 0), stage(TIGHT, 0.6, 0));
    assertThat(change.changed()).containsExactly(Part.CAMERA, Part.RING);
    assertThat(StageWords.sentences(change).get(0))
        .startsWith("The camera and the ring together cost 0.6 stop at 1/2");
    StageChange mixed =
        last(stage(COVERED, 0.6, 0), stage(new Assembly(false, Cells.REAR, Place.BENCH), 0, 0));
    assertThat(mixed.suspects()).containsExactly(Suspect.TOUCHING_CELL, Suspect.WRONG_COVER);
    assertThat(StageWords.changed(mixed)).isEqualTo("with the rear cell, without the cover");
  }

  @Test
  void withOtherCellsTheTopSpeedSaysNothingOfTheShutter() {
    StageChange change = last(stage(COVERED, 0, 0), stage(REAR, 0, 0.7));
    assertThat(change.opticsDiffer()).isTrue();
    assertThat(change.suspects()).isEmpty();
    assertThat(String.join(" ", StageWords.sentences(change))).contains("the optics differ");
  }

  @Test
  void withOtherCellsAndTheOldLightNothingIsCompared() {
    Stage rear = stage(REAR, 0.8, 0.8);
    Stage unset = new Stage(rear.assembly(), false, rear.bulb(), rear.slow(), rear.top());
    StageChange change = last(stage(COVERED, 0, 0), unset);
    assertThat(change.slow().shown()).isEqualTo(Shown.NOT_KNOWN);
    assertThat(change.isFound()).isFalse();
  }

  @Test
  void firingsThatFailAndBThatSticksAreFoundWithoutATime() {
    Stage hangs =
        new Stage(
            TIGHT,
            true,
            Optional.of(RIGHT),
            Fired.of(SLOW, List.of(), 3),
            Fired.of(TOP, List.of(0.0), 0));
    assertThat(last(stage(LOOSE, 0, 0), hangs).firings()).isEqualTo(Failing.BEGINS);
    assertThat(last(stage(LOOSE, 0, 0), hangs).suspects()).containsExactly(Suspect.PINCHED_CASE);
    assertThat(last(hangs, stage(LOOSE, 0, 0)).firings()).isEqualTo(Failing.ENDS);
    Stage once =
        new Stage(
            TIGHT,
            true,
            Optional.of(RIGHT),
            Fired.of(SLOW, List.of(0.0, 0.0), 1),
            Fired.of(TOP, List.of(0.0), 0));
    assertThat(last(stage(LOOSE, 0, 0), once).isFound()).isFalse();
    Stage stage = stage(TIGHT, 0, 0);
    Stage sticks =
        new Stage(
            TIGHT,
            true,
            Optional.of(new Bulb(Seen.RIGHT, Seen.RIGHT, Seen.WRONG)),
            stage.slow(),
            stage.top());
    StageChange bulb = last(stage(LOOSE, 0, 0), sticks);
    assertThat(bulb.bulb()).isEqualTo(Failing.BEGINS);
    assertThat(StageWords.finding(bulb)).isEqualTo("With the ring: the B test fails now.");
  }

  @Test
  void aShutterThatIsKnownToFailIsNotFoundAnewWhenItFailsOrNotByLuck() {
    Stage slow = stage(TIGHT, 0.6, 0);
    Stage hangs =
        new Stage(
            BOTH,
            true,
            Optional.of(RIGHT),
            Fired.of(SLOW, List.of(0.6), 2),
            Fired.of(TOP, List.of(0.0), 0));
    List<StageChange> changes =
        AssemblyStages.of(List.of(stage(LOOSE, 0, 0), slow, hangs, slow)).changes();
    assertThat(changes.get(0).isFound()).isTrue();
    assertThat(changes.get(1).firings()).isEqualTo(Failing.NO);
    assertThat(changes.get(2).firings()).isEqualTo(Failing.NO);
  }

  @Test
  void unchangedShuttersAreSeldomCalledChanged() {
    Random random = new Random(17);
    int wrong = 0;
    int found = 0;
    for (int repair = 0; repair < 300; repair++) {
      double sd = 0.02 + 0.06 * random.nextDouble();
      List<Stage> sound = new ArrayList<>();
      List<Stage> pinched = new ArrayList<>();
      for (Assembly each : REPAIR) {
        double off = sd / 2 * random.nextGaussian();
        List<Double> slow = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
          slow.add(off + sd * random.nextGaussian());
        }
        List<Double> top = List.of(off + 0.07 * random.nextGaussian());
        sound.add(
            new Stage(
                each, true, Optional.of(RIGHT), Fired.of(SLOW, slow, 0), Fired.of(TOP, top, 0)));
        double cost = each.equals(TIGHT) ? 0.5 : 0;
        pinched.add(
            new Stage(
                each,
                true,
                Optional.of(RIGHT),
                Fired.of(SLOW, slow.stream().map(e -> e + cost).toList(), 0),
                Fired.of(TOP, top, 0)));
      }
      wrong += AssemblyStages.of(sound).changes().stream().anyMatch(StageChange::isFound) ? 1 : 0;
      found += AssemblyStages.of(pinched).changes().get(4).isFound() ? 1 : 0;
    }
    assertThat(wrong).isLessThanOrEqualTo(15);
    assertThat(found).isGreaterThanOrEqualTo(270);
  }
}
