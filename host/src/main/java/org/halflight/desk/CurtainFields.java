package org.halflight.desk;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import org.halflight.session.Adjuster;
import org.halflight.session.RunOption;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;
import org.halflight.workflow.CurtainForm;

/** The fields for what is known of a camera by its curtains. */
final class CurtainFields {
  private final JTextField travel = new JTextField();
  private final JTextField flash = new JTextField();
  private final Map<Adjuster, JCheckBox> adjusters = new EnumMap<>(Adjuster.class);
  private final JPanel boxes = Place.group(new MigLayout("insets 0, gap 8 2, wrap 1"));

  CurtainFields() {
    travel.setName("cameraTravel");
    flash.setName("cameraXSpeed");
    travel.setToolTipText(OptionWords.usual(RunOption.OWN_TRAVEL));
    flash.setToolTipText(OptionWords.usual(RunOption.X_SPEED));
    for (Adjuster each : Adjuster.values()) {
      JCheckBox box = new JCheckBox(Words.of("desk.camera.adjuster", each));
      box.setName("adjuster." + Adjuster.WORDS.word(each));
      adjusters.put(each, box);
      boxes.add(box, "wmin 0");
    }
    boxes.setName("cameraAdjusters");
  }

  /** The options that it has a field for, in order. */
  static List<RunOption<?>> options() {
    return List.of(RunOption.OWN_TRAVEL, RunOption.X_SPEED, RunOption.ADJUSTERS);
  }

  JComponent of(RunOption<?> option) {
    return option == RunOption.OWN_TRAVEL ? travel : option == RunOption.X_SPEED ? flash : boxes;
  }

  /** The field of an option of this name. */
  Optional<JComponent> named(String name) {
    return options().stream().filter(o -> o.name().equals(name)).findFirst().map(this::of);
  }

  void show(CurtainForm form) {
    travel.setText(form.ownTravel());
    flash.setText(form.xSpeed());
    Set<Adjuster> ticked = RunOption.ADJUSTERS.find(form.adjusters()).orElse(Adjuster.ALL);
    adjusters.forEach((adjuster, box) -> box.setSelected(ticked.contains(adjuster)));
  }

  CurtainForm typed() {
    Set<Adjuster> ticked = EnumSet.noneOf(Adjuster.class);
    adjusters.forEach(
        (adjuster, box) -> {
          if (box.isSelected()) {
            ticked.add(adjuster);
          }
        });
    return new CurtainForm(
        travel.getText().strip(), flash.getText().strip(), RunOption.ADJUSTERS.text(ticked));
  }
}
