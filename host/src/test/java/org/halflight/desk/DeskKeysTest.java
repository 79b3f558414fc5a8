package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import org.halflight.desk.view.KeyMap;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which key is meant by an event of the keyboard, without a window. */
class DeskKeysTest {
  private static final int F13 = KeyEvent.VK_F13;

  private final JPanel source = new JPanel();
  private final List<String> heard = new ArrayList<>();
  private long nanos = Pedal.UNREAD_NANOS;
  private final Pedal pedal = new Pedal(() -> nanos, Map.of(Pedal.Use.GO, new Pedal.Key(F13, 1)));
  private final PedalKeys keys =
      new PedalKeys(pedal, use -> heard.add(use.name()), heard::add, heard::add);

  /** NumLock changes what the system calls a key of the pad, not what is printed on it. */
  @ParameterizedTest
  @CsvSource({
    "10, 10, ENTER, ACCEPT",
    "110, 127, ., REJECT",
    "108, 127, ., REJECT",
    "107, 107, +, NEXT",
    "109, 109, -, PREVIOUS",
    "106, 106, *, MARK",
    "111, 111, /, CLOSED_BY_HAND",
    "97, 35, 1, WIND_TURNS",
    "96, 155, 0, WIND_LOCKED"
  })
  void theNumberPadWorksWithNumLockOnAndOff(int on, int off, String printed, UserAction act) {
    for (int code : new int[] {on, off}) {
      String name = DeskKeys.name(pressed(code, '\n', KeyEvent.KEY_LOCATION_NUMPAD, 0));
      assertThat(name).isEqualTo("PAD " + printed);
      assertThat(KeyMap.act(name, true, false, false)).contains(act);
      assertThat(KeyMap.act(name, true, true, false)).as("while typing").isEmpty();
    }
    assertThat(KeyMap.ofPad()).containsEntry(printed, act);
  }

  @Test
  void keysOfTheSameNumberElsewhereAreOthers() {
    assertThat(DeskKeys.name(pressed(KeyEvent.VK_ENTER, '\n', 1, 0))).isEqualTo("ENTER");
    assertThat(DeskKeys.name(pressed(KeyEvent.VK_DELETE, (char) 127, 1, 0))).isEmpty();
  }

  @Test
  void zIsTheFarViewAndCtrlZTakesBack() {
    String far = DeskKeys.name(pressed(KeyEvent.VK_Z, 'z', 1, 0));
    assertThat(KeyMap.act(far, true, false, false)).contains(UserAction.FAR_VIEW);
    assertThat(KeyMap.act(far, true, true, false)).as("while typing").isEmpty();
    assertThat(KeyMap.act(far, false, false, false)).as("elsewhere").isEmpty();
    String undo = DeskKeys.name(pressed(KeyEvent.VK_Z, 'z', 1, InputEvent.CTRL_DOWN_MASK));
    assertThat(KeyMap.act(undo, true, false, false)).contains(UserAction.UNDO);
    String leaves = DeskKeys.name(pressed(KeyEvent.VK_ESCAPE, (char) 27, 1, 0));
    assertThat(KeyMap.act(leaves, true, false, false)).as("left to the bench itself").isEmpty();
  }

  @Test
  void aPedalThatIsHeldDownCountsOnceAndIsToldOnce() {
    KeyEvent foot = pressed(F13, KeyEvent.CHAR_UNDEFINED, 1, 0);
    assertThat(keys.pressed(foot, true, false)).isTrue();
    assertThat(keys.pressed(foot, false, false)).isTrue();
    assertThat(keys.pressed(foot, false, false)).isTrue();
    assertThat(heard).containsExactly("GO", Words.say("desk.pedal.held"));
    keys.pressed(foot, true, false);
    assertThat(heard).endsWith("GO");
  }

  @Test
  void whoTypesKeepsTheCharactersAndThePedalTheRest() {
    assertThat(keys.pressed(pressed(F13, KeyEvent.CHAR_UNDEFINED, 1, 0), true, true)).isTrue();
    pedal.learn(Pedal.Use.BACK);
    KeyEvent character = pressed(KeyEvent.VK_SEMICOLON, ';', 1, 0);
    keys.pressed(character, true, false);
    assertThat(pedal.learnt())
        .containsEntry(Pedal.Use.BACK, new Pedal.Key(KeyEvent.VK_SEMICOLON, 1));
    assertThat(keys.pressed(character, true, true)).isFalse();
    assertThat(keys.pressed(character, true, false)).isTrue();
    KeyEvent copied = pressed(KeyEvent.VK_SEMICOLON, ';', 1, InputEvent.CTRL_DOWN_MASK);
    assertThat(keys.pressed(copied, true, false)).as("with Ctrl it is another").isFalse();
    assertThat(heard).containsExactly("GO", "Semicolon is a pedal now.", "BACK");
  }

  @Test
  void keysThatDoSomethingAreRefusedInASentenceAndEscapeLeavesIt() {
    pedal.learn(Pedal.Use.GO);
    for (int code :
        new int[] {
          KeyEvent.VK_SPACE, KeyEvent.VK_F12, KeyEvent.VK_TAB, KeyEvent.VK_CONTROL, KeyEvent.VK_N
        }) {
      assertThat(keys.pressed(pressed(code, ' ', 1, 0), true, false)).isTrue();
      assertThat(heard.get(heard.size() - 1)).contains("has a meaning already");
    }
    keys.pressed(pressed(KeyEvent.VK_ESCAPE, (char) 27, 1, 0), true, false);
    assertThat(heard).endsWith("Nothing was learnt.");
    assertThat(pedal.learnt()).containsEntry(Pedal.Use.GO, new Pedal.Key(F13, 1));
    assertThat(pedal.learning()).isEmpty();
  }

  /** In a field Ctrl+Z belongs to what is typed; elsewhere to what was done at the place. */
  @Test
  void inATextFieldUndoTakesBackWhatWasTypedAndNothingElse() {
    String name = DeskKeys.name(pressed(KeyEvent.VK_Z, 'z', 1, InputEvent.CTRL_DOWN_MASK));
    assertThat(KeyMap.act(name, false, false, false)).contains(UserAction.UNDO);
    assertThat(KeyMap.act(name, false, true, false)).isEmpty();
    JTextField field = new JTextField("1/60");
    TypingUndo.begins(field);
    field.setCaretPosition(4);
    field.replaceSelection("0");
    press(field, KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK);
    assertThat(field.getText()).isEqualTo("1/60");
    press(field, KeyEvent.VK_Y, InputEvent.CTRL_DOWN_MASK);
    assertThat(field.getText()).isEqualTo("1/600");
    TypingUndo.begins(field);
    press(field, KeyEvent.VK_Z, InputEvent.CTRL_DOWN_MASK);
    assertThat(field.getText()).as("left and entered again").isEqualTo("1/600");
  }

  private static void press(JTextField field, int code, int modifiers) {
    Object bound = field.getInputMap().get(KeyStroke.getKeyStroke(code, modifiers));
    field.getActionMap().get(bound).actionPerformed(new ActionEvent(field, 0, ""));
  }

  private KeyEvent pressed(int code, char typed, int location, int modifiers) {
    return new KeyEvent(source, KeyEvent.KEY_PRESSED, 0, modifiers, code, typed, location);
  }
}
