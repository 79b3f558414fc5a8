package org.halflight.desk;

import java.awt.event.KeyEvent;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.desk.view.KeyMap;
import org.halflight.desk.view.Pedal;
import org.halflight.words.Words;

/** Hears the keys that a pedal types, and those that are to be learnt as one. */
final class PedalKeys {
  private final Pedal pedal;
  private final Consumer<Pedal.Use> pressed;
  private final Consumer<String> says;
  private final Consumer<String> learns;
  private boolean heldIsSaid;

  /**
   * @param pressed takes what a pedal is pressed for
   * @param says takes what the person must know of it
   * @param learns takes what came of a key that was pressed to be learnt
   */
  PedalKeys(
      Pedal pedal, Consumer<Pedal.Use> pressed, Consumer<String> says, Consumer<String> learns) {
    this.pedal = pedal;
    this.pressed = pressed;
    this.says = says;
    this.learns = learns;
  }

  /**
   * A key is pressed, or repeated while it is held down.
   *
   * @param typing whether a text field has the focus; then a key that types a character is its own
   * @return whether the key was a pedal's and is for nobody else
   */
  boolean pressed(KeyEvent event, boolean anew, boolean typing) {
    if (pedal.learning().isPresent()) {
      if (anew) {
        learn(event);
      }
      return true;
    }
    Optional<Pedal.Use> use = pedal.use(key(event));
    if (use.isEmpty() || DeskKeys.isWithControl(event) || (typing && isCharacter(event))) {
      return false;
    }
    if (!anew) {
      if (!heldIsSaid) {
        says.accept(Words.say("desk.pedal.held"));
      }
      heldIsSaid = true;
    } else {
      heldIsSaid = false;
      if (pedal.isHeard()) {
        pressed.accept(use.get());
      } else {
        says.accept(Words.say("desk.pedal.tooSoon"));
      }
    }
    return true;
  }

  private void learn(KeyEvent event) {
    if (event.getKeyCode() == KeyEvent.VK_ESCAPE) {
      pedal.learnsNothing();
      learns.accept(Words.say("desk.pedal.leftOut"));
      return;
    }
    Pedal.Lesson lesson = pedal.lesson(key(event), KeyMap.hasMeaning(DeskKeys.bareName(event)));
    learns.accept(Words.of("desk.pedal.lesson", lesson, name(key(event))));
  }

  /** What is printed on a key, as far as the system knows. */
  static String name(Pedal.Key key) {
    return KeyEvent.getKeyText(key.code());
  }

  private static Pedal.Key key(KeyEvent event) {
    int code = event.getKeyCode();
    return new Pedal.Key(
        code == KeyEvent.VK_UNDEFINED ? event.getExtendedKeyCode() : code, event.getKeyLocation());
  }

  private static boolean isCharacter(KeyEvent event) {
    return event.getKeyChar() != KeyEvent.CHAR_UNDEFINED
        && !Character.isISOControl(event.getKeyChar());
  }
}
