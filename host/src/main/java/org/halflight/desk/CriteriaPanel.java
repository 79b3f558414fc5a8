package org.halflight.desk;

import com.formdev.flatlaf.FlatClientProperties;
import java.util.List;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import org.halflight.desk.view.CriteriaForm;
import org.halflight.desk.view.StopsForm;
import org.halflight.session.Measurand;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The fields for what the verdicts of a run are about. */
final class CriteriaPanel {
  private static final List<Measurand> MEASURANDS = List.of(Measurand.values());

  private final JTextField tolerance = new JTextField();
  private final JComboBox<String> measurand = new JComboBox<>();
  private final JComboBox<String> rule =
      new JComboBox<>(
          new String[] {Words.say("desk.run.rule.fixed"), Words.say("desk.run.rule.untilDecided")});

  private final JTextField stops = new JTextField(CriteriaForm.USUAL.stops().markings(), 14);
  private final JTextField stopTolerance = new JTextField(8);
  private final JTextField linkage = new JTextField(8);
  private final JCheckBox contact = new JCheckBox(Words.say("desk.run.contact"));

  CriteriaPanel() {
    stops.setName("runStops");
    stopTolerance.setName("runStopTolerance");
    stopTolerance.putClientProperty(
        FlatClientProperties.PLACEHOLDER_TEXT, Words.say("desk.run.stopTolerance.usual"));
    stopTolerance
        .getAccessibleContext()
        .setAccessibleDescription(Words.say("desk.run.stopTolerance.usual"));
    contact.setName("runContact");
    linkage.setName("runLinkage");
    linkage.putClientProperty(
        FlatClientProperties.PLACEHOLDER_TEXT, Words.say("desk.run.linkage.usual"));
    linkage.getAccessibleContext().setAccessibleDescription(Words.say("desk.run.linkage.usual"));
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

  /** The stops that a stop check is about. */
  JTextField stops() {
    return stops;
  }

  /** How far they may be off. */
  JTextField stopTolerance() {
    return stopTolerance;
  }

  /** Whether the flash contact is wired. */
  JCheckBox contact() {
    return contact;
  }

  /** From where to where the linkage is good. */
  JTextField linkage() {
    return linkage;
  }

  JComboBox<String> rule() {
    return rule;
  }

  void show(CriteriaForm form) {
    tolerance.setText(form.tolerance());
    measurand.setSelectedIndex(MEASURANDS.indexOf(form.measurand()));
    rule.setSelectedIndex(form.untilDecided() ? 1 : 0);
    stops.setText(form.stops().markings());
    stopTolerance.setText(form.stops().tolerance());
    linkage.setText(form.linkage());
    contact.setSelected(form.flashContact());
  }

  CriteriaForm form() {
    return new CriteriaForm(
        tolerance.getText(),
        MEASURANDS.get(Math.max(0, measurand.getSelectedIndex())),
        rule.getSelectedIndex() == 1,
        new StopsForm(stops.getText(), stopTolerance.getText()),
        linkage.getText(),
        contact.isSelected());
  }
}
