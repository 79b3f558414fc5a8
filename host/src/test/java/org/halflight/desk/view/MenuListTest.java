package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the menu offers, and what is greyed. */
class MenuListTest {
  @TempDir private Path folder;

  @Test
  void everyActIsInTheMenuOnceWithItsKeyAndItsWords() {
    List<MenuList.Entry> all = all(now(Optional.empty(), true));
    Set<UserAction> acts = EnumSet.allOf(UserAction.class);
    acts.remove(UserAction.MENU);
    assertThat(all).extracting(MenuList.Entry::act).containsExactlyInAnyOrderElementsOf(acts);
    for (MenuList.Entry entry : all) {
      assertThat(entry.key()).isEqualTo(KeyHints.keyName(entry.act()));
      assertThat(entry.words()).isNotBlank();
      assertThat(Character.isLowerCase(entry.words().charAt(0))).as(entry.words()).isFalse();
    }
  }

  @Test
  void thePlacesAreInTheOrderOfTheirKeys() {
    assertThat(MenuList.of(now(Optional.empty(), true)).get(MenuList.Group.PLACES))
        .extracting(MenuList.Entry::words)
        .containsExactly(
            "Bench", "Light", "Camera", "Run", "Checks", "History", "Rig", "First light");
  }

  @Test
  void whatMeansNothingNowIsGreyed() {
    try (PracticeWork work = new PracticeWork(folder)) {
      BenchView before = work.model.view();
      assertThat(isEnabled(UserAction.REJECT, before, true)).isFalse();
      assertThat(isEnabled(UserAction.NEXT, before, true)).isFalse();
      assertThat(isEnabled(UserAction.MOVE, before, true)).isFalse();
      assertThat(isEnabled(UserAction.CONDITION_REST, before, true)).isFalse();
      assertThat(isEnabled(UserAction.WIND_TURNS, before, true)).isFalse();
      assertThat(isEnabled(UserAction.SWITCH_COVER, before, true)).isFalse();
      assertThat(isEnabled(UserAction.TO_RIG, before, false)).isTrue();
      work.begin(Phase.AS_FOUND, 3, "1/60");
      BenchView begun = work.model.view();
      assertThat(isEnabled(UserAction.NEXT, begun, true)).isTrue();
      assertThat(isEnabled(UserAction.NEXT, begun, false)).as("at another place").isFalse();
      assertThat(isEnabled(UserAction.CONDITION_REST, begun, true)).isTrue();
      assertThat(isEnabled(UserAction.REJECT, begun, true)).isFalse();
      assertThat(isEnabled(UserAction.MARK, begun, true)).isFalse();
      assertThat(isEnabled(UserAction.FIRE, begun, true)).isTrue();
      assertThat(isEnabled(UserAction.PRACTICE, begun, false)).isTrue();
    }
  }

  @Test
  void undoSaysWhatItWouldUndo() {
    MenuList.Now now =
        new MenuList.Now(
            Optional.empty(),
            false,
            Optional.of("shims: 2 \u2192 3"),
            Optional.empty(),
            true,
            false);
    Map<UserAction, MenuList.Entry> entries = new java.util.EnumMap<>(UserAction.class);
    all(now).forEach(entry -> entries.put(entry.act(), entry));
    assertThat(entries.get(UserAction.UNDO).words()).isEqualTo("Undo: shims: 2 \u2192 3");
    assertThat(entries.get(UserAction.UNDO).isEnabled()).isTrue();
    assertThat(entries.get(UserAction.REDO).words()).isEqualTo("Redo");
    assertThat(entries.get(UserAction.REDO).isEnabled()).isFalse();
    assertThat(entries.get(UserAction.TABLES).isOn()).contains(true);
    assertThat(entries.get(UserAction.SOUNDS).isOn()).contains(false);
    assertThat(entries.get(UserAction.TO_RIG).isOn()).isEmpty();
    assertThat(entries.get(UserAction.PRACTICE).isEnabled()).as("no bench yet").isFalse();
  }

  private static boolean isEnabled(UserAction act, BenchView view, boolean atBench) {
    return all(now(Optional.of(view), atBench)).stream()
        .filter(entry -> entry.act() == act)
        .findFirst()
        .orElseThrow()
        .isEnabled();
  }

  private static MenuList.Now now(Optional<BenchView> view, boolean atBench) {
    return new MenuList.Now(view, atBench, Optional.empty(), Optional.empty(), false, true);
  }

  private static List<MenuList.Entry> all(MenuList.Now now) {
    return MenuList.of(now).values().stream().flatMap(List::stream).toList();
  }
}
