package org.halflight.desk;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.BiConsumer;
import javax.swing.JCheckBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.SoundsOn;
import org.halflight.words.Words;

/** A switch for each kind of sound. */
final class SoundsPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final Map<SoundKind, JCheckBox> boxes = new EnumMap<>(SoundKind.class);

  /**
   * @param turned takes the kind that was switched, and whether it is on
   */
  SoundsPanel(SoundsOn on, BiConsumer<SoundKind, Boolean> turned) {
    super(new MigLayout("insets 0, gap 14 0", ""));
    setOpaque(false);
    for (SoundKind kind : SoundKind.values()) {
      JCheckBox box = new JCheckBox(Words.of("desk.sounds", kind), !on.off().contains(kind));
      box.setName("sound." + kind);
      box.setOpaque(false);
      box.addActionListener(event -> turned.accept(kind, box.isSelected()));
      boxes.put(kind, box);
      add(box);
    }
  }

  @Override
  public void look(Look look) {
    boxes.values().forEach(box -> box.setFont(Look.letters(1.05)));
  }
}
