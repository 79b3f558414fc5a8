package org.halflight.desk;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javax.swing.JCheckBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.SoundsOn;
import org.halflight.desk.view.UndoStack;
import org.halflight.words.Words;

/** A switch for each kind of sound. */
final class SoundsPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final Map<SoundKind, JCheckBox> boxes = new EnumMap<>(SoundKind.class);

  /**
   * @param turned takes the kind that was switched, and whether it is on
   * @param onDone takes what was switched, to be undone
   */
  SoundsPanel(SoundsOn on, BiConsumer<SoundKind, Boolean> turned, Consumer<UndoStack.Act> onDone) {
    super(new MigLayout("insets 0, gap 14 0", ""));
    setOpaque(false);
    for (SoundKind kind : SoundKind.values()) {
      JCheckBox box = new JCheckBox(Words.of("desk.sounds", kind), !on.off().contains(kind));
      box.setName("sound." + kind);
      box.setOpaque(false);
      box.addActionListener(
          event -> {
            boolean now = box.isSelected();
            turned.accept(kind, now);
            onDone.accept(
                UndoStack.Act.of(
                    Words.say(now ? "act.practice.on" : "act.practice.off", box.getText()),
                    () -> turn(box, !now, () -> turned.accept(kind, !now)),
                    () -> turn(box, now, () -> turned.accept(kind, now))));
          });
      boxes.put(kind, box);
      add(box);
    }
  }

  private static void turn(JCheckBox box, boolean on, Runnable then) {
    box.setSelected(on);
    then.run();
  }

  @Override
  public void look(Look look) {
    boxes.values().forEach(box -> box.setFont(Look.letters(Look.BODY)));
  }
}
