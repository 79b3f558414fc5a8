package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.halflight.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KeyMapTest {
  @ParameterizedTest
  @CsvSource({
    "SPACE, ACCEPT",
    "BACKSPACE, REJECT",
    "CTRL+Z, UNDO",
    "CTRL+SHIFT+Z, REDO",
    "CTRL+Y, REDO",
    "N, NEXT",
    "P, PREVIOUS",
    "M, MOVE",
    "C, CLOSED_BY_HAND",
    "1, CONDITION_REST",
    "3, CONDITION_ATTITUDE",
    "9, CONDITION_LAST_TOO",
    "F, FIRE"
  })
  void keysOfTheBench(String key, UserAction act) {
    assertThat(KeyMap.act(key, true, false, true)).contains(act);
  }

  @Test
  void whoTypesIsLeftAlone() {
    for (String key : new String[] {"SPACE", "BACKSPACE", "N", "P", "F", "ENTER"}) {
      assertThat(KeyMap.act(key, true, true, true)).as(key).isEmpty();
      assertThat(KeyMap.act(key, false, false, true)).as(key + " elsewhere").isEmpty();
    }
    assertThat(KeyMap.act("CTRL+Z", false, true, true)).isEmpty();
    assertThat(KeyMap.act("CTRL+Z", false, false, true)).contains(UserAction.UNDO);
    assertThat(KeyMap.act("F2", false, true, true)).contains(UserAction.TO_BENCH);
  }

  @ParameterizedTest
  @CsvSource({
    "F1, KEYS",
    "F2, TO_BENCH",
    "F3, TO_LIGHT",
    "F4, TO_CAMERA",
    "F5, TO_RUN",
    "F6, TO_TRIED",
    "F7, TO_CAMERAS",
    "F8, TO_RIG",
    "F9, PRACTICE",
    "F10, MENU",
    "F11, THEME",
    "F12, SOUNDS"
  })
  void keysOfThePlacesStandInTheOrderOfTheTopBar(String key, UserAction act) {
    assertThat(KeyMap.act(key, false, true, false)).contains(act);
  }

  @Test
  void noKeyFiresARealCamera() {
    assertThat(KeyMap.act("F", true, false, false)).isEmpty();
    assertThat(KeyMap.act("J", true, false, false)).isEmpty();
  }

  @Test
  void onlyLookingAlongGoesOnWhileAKeyIsHeld() {
    assertThat(Arrays.stream(UserAction.values()).filter(KeyMap::repeats))
        .containsExactly(UserAction.LOOK_SLOWER, UserAction.LOOK_FASTER);
  }

  @Test
  void everyActHasOneKeyAndItsWords() {
    assertThat(Arrays.stream(UserAction.values()).map(KeyMap::keyOf)).doesNotHaveDuplicates();
    for (UserAction act : UserAction.values()) {
      String name = Words.key(act);
      assertThat(Words.say("desk.key." + name)).isNotBlank();
      assertThat(Words.say("desk.keyLong." + name)).isNotBlank();
    }
  }
}
