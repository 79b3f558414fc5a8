package org.halflight.desk;

import java.util.Map;
import java.util.Optional;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JRadioButtonMenuItem;
import org.halflight.shuttermodel.CurtainScrew;
import org.halflight.shuttermodel.InventedBar;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.words.Words;

/** What the practice menu has for curtain shutters: which camera, its screws, the sensors. */
final class PracticeCurtains {
  /** Of a turn; common practice with springs. */
  private static final double TURN = 0.25;

  private static final double SMALL_TURN = 0.0625;

  private PracticeCurtains() {}

  /**
   * The camera on the practice rig.
   *
   * @param items takes what chooses each of them
   */
  static JMenu cameras(PracticeMenu menu, Map<InventedCurtains, JRadioButtonMenuItem> items) {
    JMenu cameras = menu("camera");
    ButtonGroup one = new ButtonGroup();
    menu.choice(cameras, one, "camera.leaf", true, camera -> camera.useCurtains(Optional.empty()));
    for (InventedCurtains each : InventedCurtains.values()) {
      items.put(
          each,
          menu.choice(
              cameras,
              one,
              "camera." + Words.key(each),
              false,
              camera -> camera.useCurtains(Optional.of(each))));
    }
    return cameras;
  }

  /** Its screws, each a quarter of a turn or a sixteenth, in and out. */
  static JMenu screws(PracticeMenu menu) {
    JMenu screws = menu("curtain");
    for (CurtainScrew each : CurtainScrew.values()) {
      JMenu its = menu("curtain." + Words.key(each));
      turn(menu, its, each, "in", TURN);
      turn(menu, its, each, "in", SMALL_TURN);
      turn(menu, its, each, "out", SMALL_TURN);
      turn(menu, its, each, "out", TURN);
      screws.add(its);
    }
    return screws;
  }

  private static void turn(
      PracticeMenu menu, JMenu its, CurtainScrew screw, String way, double size) {
    double turns = way.equals("in") ? size : -size;
    String parts = "1/" + Math.round(1 / size);
    menu.item(
        its,
        "curtain." + Words.key(screw) + "." + way + "." + Math.round(1 / size),
        Words.say("desk.practice.curtain." + way, its.getText(), parts),
        camera -> camera.turn(screw, turns),
        camera -> camera.turn(screw, -turns));
  }

  /** How the sensors are placed and lit. */
  static JMenu bars(PracticeMenu menu) {
    JMenu bars = menu("bar");
    ButtonGroup one = new ButtonGroup();
    for (InventedBar each : InventedBar.values()) {
      menu.choice(
          bars,
          one,
          "bar." + Words.key(each),
          each == InventedBar.RIGHT,
          camera -> camera.placeBar(each));
    }
    return bars;
  }

  private static JMenu menu(String name) {
    JMenu menu = new JMenu(Words.say("desk.practice." + name));
    menu.setName("practice." + name);
    return menu;
  }
}
