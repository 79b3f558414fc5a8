package org.halflight.desk;

import java.util.List;
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
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.shuttermodel.InventedContact;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;

/** What can be made to happen on the practice rig. */
final class PracticeMenu {
  /** How far one turn of the screw of the linkage goes. */
  private static final double TURN_MILLIS = 1.5;

  private final JPopupMenu menu = new JPopupMenu(Words.say("desk.practice.menu"));
  private final Consumer<Consumer<PracticeOperator>> onCamera;
  private final JCheckBoxMenuItem stop = new JCheckBoxMenuItem(Words.say("desk.practice.moveStop"));
  private final JCheckBoxMenuItem bounce = new JCheckBoxMenuItem(Words.say("desk.practice.bounce"));
  private final JCheckBoxMenuItem clean = new JCheckBoxMenuItem(Words.say("desk.practice.clean"));
  private final JCheckBoxMenuItem contact =
      new JCheckBoxMenuItem(Words.say("desk.practice.contact"));
  private final JCheckBoxMenuItem cable = new JCheckBoxMenuItem(Words.say("desk.practice.cable"));

  /**
   * @param onCamera does something to the model camera on the thread of the bench
   */
  PracticeMenu(Consumer<Consumer<PracticeOperator>> onCamera) {
    this.onCamera = onCamera;
    item("hang", camera -> camera.nextMishap(PracticeMishap.HANG));
    item("double", camera -> camera.nextMishap(PracticeMishap.DOUBLE));
    item("forget", PracticeOperator::forgetDialOnce);
    item("cock", PracticeOperator::cockWithLight);
    menu.addSeparator();
    menu.add(contacts());
    menu.add(flaps());
    tick(stop, "moveStop", on -> camera -> camera.moveStop(on));
    tick(clean, "clean", on -> camera -> camera.clean(on));
    tick(bounce, "bounce", on -> camera -> camera.bounce(on));
    item("linkageEarlier", camera -> camera.turnLinkage(TURN_MILLIS));
    item("linkageLater", camera -> camera.turnLinkage(-TURN_MILLIS));
    tick(contact, "contact", on -> camera -> camera.contactAtAdvance(on));
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
  }

  /** Opens below a button. */
  void open(JComponent button) {
    menu.show(button, button.getWidth() - menu.getPreferredSize().width, button.getHeight());
  }

  List<JMenuItem> items() {
    return java.util.Arrays.stream(menu.getComponents())
        .filter(JMenuItem.class::isInstance)
        .map(JMenuItem.class::cast)
        .toList();
  }

  JPopupMenu menu() {
    return menu;
  }

  private void item(String name, Consumer<PracticeOperator> doing) {
    JMenuItem item = new JMenuItem(Words.say("desk.practice." + name));
    item.setName("practice." + name);
    item.addActionListener(event -> onCamera.accept(doing));
    menu.add(item);
  }

  private JMenu contacts() {
    JMenu contacts = new JMenu(Words.say("desk.practice.flash"));
    ButtonGroup one = new ButtonGroup();
    contact(contacts, one, "its-own", Optional.empty());
    for (InventedContact each : InventedContact.values()) {
      contact(contacts, one, Words.key(each), Optional.of(each));
    }
    return contacts;
  }

  private JMenu flaps() {
    JMenu flaps = new JMenu(Words.say("desk.practice.flap"));
    ButtonGroup one = new ButtonGroup();
    for (InventedFlap flap : InventedFlap.values()) {
      JRadioButtonMenuItem item =
          new JRadioButtonMenuItem(
              Words.of("desk.practice.flap", flap), flap == InventedFlap.NONE);
      item.setName("practice.flap." + Words.key(flap));
      item.addActionListener(event -> onCamera.accept(camera -> camera.useFlap(flap)));
      one.add(item);
      flaps.add(item);
    }
    return flaps;
  }

  private void contact(
      JMenu contacts, ButtonGroup one, String name, Optional<InventedContact> contact) {
    JRadioButtonMenuItem item =
        new JRadioButtonMenuItem(Words.say("desk.practice.flash." + name), contact.isEmpty());
    item.setName("practice.flash." + name);
    item.addActionListener(event -> onCamera.accept(camera -> camera.useContact(contact)));
    one.add(item);
    contacts.add(item);
  }

  private void tick(
      JCheckBoxMenuItem item, String name, Function<Boolean, Consumer<PracticeOperator>> doing) {
    item.setName("practice." + name);
    item.addActionListener(event -> onCamera.accept(doing.apply(item.isSelected())));
    menu.add(item);
  }
}
