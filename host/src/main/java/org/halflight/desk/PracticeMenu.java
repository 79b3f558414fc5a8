package org.halflight.desk;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.ButtonGroup;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JComponent;
import javax.swing.JMenu;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JRadioButtonMenuItem;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.UndoStack;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedContact;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.shuttermodel.InventedLamp;
import org.halflight.signal.BoardTraits;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;

/** What can be made to happen on the practice rig. */
final class PracticeMenu {
  /** Light of a lamp that is far too weak, as a share of the usual. */
  private static final double WEAK = 0.1;

  private final JPopupMenu menu = new JPopupMenu(Words.say("desk.practice.menu"));
  private final Consumer<Consumer<PracticeOperator>> onCamera;
  private final JMenuItem change = new JMenuItem();
  private final Consumer<UndoStack.Act> onChosen;
  private final Map<InventedCurtains, JRadioButtonMenuItem> cameras =
      new EnumMap<>(InventedCurtains.class);

  /** What chooses again, of each group, the entry that is chosen now. */
  private final Map<ButtonGroup, Runnable> chosen = new HashMap<>();

  private final JCheckBoxMenuItem stop = new JCheckBoxMenuItem(Words.say("desk.practice.moveStop"));
  private final JCheckBoxMenuItem bounce = new JCheckBoxMenuItem(Words.say("desk.practice.bounce"));
  private final JCheckBoxMenuItem clean = new JCheckBoxMenuItem(Words.say("desk.practice.clean"));
  private final JCheckBoxMenuItem knob = new JCheckBoxMenuItem(Words.say("desk.practice.knob"));
  private final JCheckBoxMenuItem cable = new JCheckBoxMenuItem(Words.say("desk.practice.cable"));

  /**
   * @param onCamera does something to the model camera on the thread of the bench
   * @param onChosen takes what was chosen, to be undone
   * @param onChange hears that the other bench is wanted
   */
  PracticeMenu(
      Consumer<Consumer<PracticeOperator>> onCamera,
      Consumer<UndoStack.Act> onChosen,
      Runnable onChange) {
    this.onCamera = onCamera;
    this.onChosen = onChosen;
    menu.add(PracticeCurtains.cameras(this, cameras));
    menu.add(PracticeCurtains.screws(this));
    menu.add(PracticeCurtains.bars(this));
    item("capped", mishap(PracticeMishap.CAPPED), mishap(PracticeMishap.NONE));
    item("stops-short", mishap(PracticeMishap.STOPS_SHORT), mishap(PracticeMishap.NONE));
    menu.addSeparator();
    item("hang", mishap(PracticeMishap.HANG), mishap(PracticeMishap.NONE));
    item("double", mishap(PracticeMishap.DOUBLE), mishap(PracticeMishap.NONE));
    item("forget", camera -> camera.forgetDialOnce(true), camera -> camera.forgetDialOnce(false));
    item("cock", PracticeOperator::cockWithLight);
    menu.addSeparator();
    menu.add(rigs());
    menu.add(contacts());
    menu.add(flaps());
    menu.add(light());
    menu.add(fits());
    tick(stop, "moveStop", on -> camera -> camera.moveStop(on));
    tick(clean, "clean", on -> camera -> camera.clean(on));
    tick(bounce, "bounce", on -> camera -> camera.bounce(on));
    menu.add(linkages());
    tick(knob, "knob", on -> camera -> camera.fitKnobContact(on));
    tick(
        cable,
        "cable",
        on ->
            camera -> {
              if (on) {
                camera.ports().pullCable();
              } else {
                camera.ports().plugIn();
              }
            });
    menu.addSeparator();
    change.setName("practice.change");
    change.addActionListener(event -> onChange.run());
    menu.add(change);
  }

  /**
   * Opens below a button, or at the right of the window while that is hidden.
   *
   * @param practice whether the practice rig is on the bench: else only the way to it is open
   */
  void open(JComponent button, boolean practice) {
    change.setText(
        KeyHints.begun(Words.say(practice ? "desk.bench.toRig" : "desk.bench.toPractice")));
    items().forEach(item -> item.setEnabled(practice || item == change));
    JComponent at = button.isShowing() ? button : (JComponent) button.getParent();
    menu.show(at, at.getWidth() - menu.getPreferredSize().width, at.getHeight());
  }

  List<JMenuItem> items() {
    return Arrays.stream(menu.getComponents())
        .filter(JMenuItem.class::isInstance)
        .map(JMenuItem.class::cast)
        .toList();
  }

  /** The curtains of the camera that is on the practice rig; empty for blades. */
  Optional<InventedCurtains> curtains() {
    return Arrays.stream(InventedCurtains.values())
        .filter(each -> Objects.requireNonNull(cameras.get(each)).isSelected())
        .findFirst();
  }

  JPopupMenu menu() {
    return menu;
  }

  private static Consumer<PracticeOperator> mishap(PracticeMishap mishap) {
    return camera -> camera.nextMishap(mishap);
  }

  private void item(
      String name, Consumer<PracticeOperator> doing, Consumer<PracticeOperator> undoing) {
    item(menu, name, doing, undoing);
  }

  private void item(
      JComponent into,
      String name,
      Consumer<PracticeOperator> doing,
      Consumer<PracticeOperator> undoing) {
    item(into, name, Words.say("desk.practice." + name), doing, undoing);
  }

  void item(
      JComponent into,
      String name,
      String words,
      Consumer<PracticeOperator> doing,
      Consumer<PracticeOperator> undoing) {
    Runnable chooses = () -> onCamera.accept(doing);
    JMenuItem item = item(into, name, words, doing);
    item.addActionListener(
        event ->
            onChosen.accept(
                UndoStack.Act.of(item.getText(), () -> onCamera.accept(undoing), chooses)));
  }

  private JMenuItem item(String name, Consumer<PracticeOperator> doing) {
    return item(menu, name, Words.say("desk.practice." + name), doing);
  }

  private JMenuItem item(
      JComponent into, String name, String words, Consumer<PracticeOperator> doing) {
    JMenuItem item = new JMenuItem(words);
    item.setName("practice." + name);
    item.addActionListener(event -> onCamera.accept(doing));
    into.add(item);
    return item;
  }

  private JMenu rigs() {
    JMenu rigs = new JMenu(Words.say("desk.practice.rig"));
    ButtonGroup one = new ButtonGroup();
    for (BoardTraits.Kind each : BoardTraits.Kind.values()) {
      choice(
          rigs,
          one,
          "rig." + BoardTraits.Kind.WORDS.word(each),
          each == BoardTraits.Kind.FULL,
          camera -> camera.useRig(each));
    }
    return rigs;
  }

  private JMenu contacts() {
    JMenu contacts = new JMenu(Words.say("desk.practice.flash"));
    ButtonGroup one = new ButtonGroup();
    choice(contacts, one, "flash.its-own", true, camera -> camera.useContact(Optional.empty()));
    for (InventedContact each : InventedContact.values()) {
      choice(
          contacts,
          one,
          "flash." + Words.key(each),
          false,
          camera -> camera.useContact(Optional.of(each)));
    }
    return contacts;
  }

  private JMenu light() {
    JMenu light = new JMenu(Words.say("desk.practice.light"));
    Consumer<PracticeOperator> closer = camera -> camera.moveLamp(true);
    Consumer<PracticeOperator> further = camera -> camera.moveLamp(false);
    tick(light, "light.held", on -> camera -> camera.hold(on));
    item(light, "light.closer", closer, further);
    item(light, "light.further", further, closer);
    tick(light, "light.weak", on -> camera -> camera.placeLamp(on ? WEAK : 1));
    ButtonGroup one = new ButtonGroup();
    for (InventedLamp each : InventedLamp.values()) {
      choice(
          light,
          one,
          "light." + Words.key(each),
          each == InventedLamp.GOOD,
          camera -> camera.useLamp(each));
    }
    tick(light, "light.room", on -> camera -> camera.lightRoom(on));
    tick(light, "light.screen", on -> camera -> camera.turnScreen(on));
    return light;
  }

  private JMenu flaps() {
    JMenu flaps = new JMenu(Words.say("desk.practice.flap"));
    ButtonGroup one = new ButtonGroup();
    for (InventedFlap each : InventedFlap.values()) {
      choice(
          flaps, one, "flap." + Words.key(each), each == InventedFlap.NONE, c -> c.useFlap(each));
    }
    return flaps;
  }

  private JMenu fits() {
    JMenu fits = new JMenu(Words.say("desk.practice.fit"));
    ButtonGroup one = new ButtonGroup();
    for (InventedFit each : InventedFit.values()) {
      choice(fits, one, "fit." + Words.key(each), each == InventedFit.SOUND, c -> c.useFit(each));
    }
    return fits;
  }

  private JMenu linkages() {
    JMenu linkages = new JMenu(Words.say("desk.practice.linkage"));
    ButtonGroup one = new ButtonGroup();
    linkage(linkages, one, "advance-first", true, ButtonLinkage.ADVANCE_FIRST);
    linkage(linkages, one, "one-click", false, ButtonLinkage.ONE_CLICK);
    linkage(linkages, one, "shutter-first", false, ButtonLinkage.SHUTTER_FIRST);
    return linkages;
  }

  private void linkage(
      JMenu linkages, ButtonGroup one, String name, boolean isFound, ButtonLinkage linkage) {
    choice(linkages, one, "linkage." + name, isFound, camera -> camera.adjustLinkage(linkage));
  }

  JRadioButtonMenuItem choice(
      JMenu choices,
      ButtonGroup one,
      String name,
      boolean isChosen,
      Consumer<PracticeOperator> doing) {
    JRadioButtonMenuItem item =
        new JRadioButtonMenuItem(Words.say("desk.practice." + name), isChosen);
    item.setName("practice." + name);
    Runnable chooses =
        new Runnable() {
          @Override
          public void run() {
            item.setSelected(true);
            chosen.put(one, this);
            onCamera.accept(doing);
          }
        };
    if (isChosen) {
      chosen.put(one, chooses);
    }
    item.addActionListener(
        event -> {
          Runnable before = Objects.requireNonNull(chosen.get(one));
          chooses.run();
          onChosen.accept(UndoStack.Act.of(item.getText(), before, chooses));
        });
    one.add(item);
    choices.add(item);
    return item;
  }

  private void tick(JMenu into, String name, Function<Boolean, Consumer<PracticeOperator>> doing) {
    JCheckBoxMenuItem item = new JCheckBoxMenuItem(Words.say("desk.practice." + name));
    tick(item, name, doing);
    into.add(item);
  }

  private void tick(
      JCheckBoxMenuItem item, String name, Function<Boolean, Consumer<PracticeOperator>> doing) {
    item.setName("practice." + name);
    item.addActionListener(
        event -> {
          boolean on = item.isSelected();
          onCamera.accept(doing.apply(on));
          String words = Words.say(on ? "act.practice.on" : "act.practice.off", item.getText());
          onChosen.accept(
              UndoStack.Act.of(words, () -> turn(item, !on, doing), () -> turn(item, on, doing)));
        });
    menu.add(item);
  }

  private void turn(
      JCheckBoxMenuItem item, boolean on, Function<Boolean, Consumer<PracticeOperator>> doing) {
    item.setSelected(on);
    onCamera.accept(doing.apply(on));
  }
}
