package org.halflight.desk;

import com.formdev.flatlaf.FlatClientProperties;
import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import org.halflight.desk.view.AimForm;
import org.halflight.session.Measurand;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The fields for what the verdicts of a run are about. */
final class AimPanel {
  private static final List<Measurand> MEASURANDS = List.of(Measurand.values());

  private final JTextField tolerance = new JTextField();
  private final JComboBox<String> measurand = new JComboBox<>();
  private final JComboBox<String> rule =
      new JComboBox<>(
          new String[] {Words.say("desk.run.rule.fixed"), Words.say("desk.run.rule.untilDecided")});

  AimPanel() {
    for (Measurand each : MEASURANDS) {
      measurand.addItem(Words.say("details.measurand." + Sentences.measurand(each)));
    }
    tolerance.setName("runTolerance");
    measurand.setName("runMeasurand");
    rule.setName("runRule");
    tolerance.putClientProperty(
        FlatClientProperties.PLACEHOLDER_TEXT, Words.say("desk.run.tolerance.usual"));
    tolerance
        .getAccessibleContext()
        .setAccessibleDescription(Words.say("desk.run.tolerance.usual"));
  }

  JTextField tolerance() {
    return tolerance;
  }

  JComboBox<String> measurand() {
    return measurand;
  }

  JComboBox<String> rule() {
    return rule;
  }

  void show(AimForm form) {
    tolerance.setText(form.tolerance());
    measurand.setSelectedIndex(MEASURANDS.indexOf(form.measurand()));
    rule.setSelectedIndex(form.untilDecided() ? 1 : 0);
  }

  AimForm form() {
    return new AimForm(
        tolerance.getText(),
        MEASURANDS.get(Math.max(0, measurand.getSelectedIndex())),
        rule.getSelectedIndex() == 1);
  }
}
