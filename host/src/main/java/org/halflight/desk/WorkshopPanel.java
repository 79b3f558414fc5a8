package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.filechooser.FileNameExtensionFilter;
import net.miginfocom.swing.MigLayout;
import org.halflight.report.Paper;
import org.halflight.report.Workshop;
import org.halflight.words.Words;

/** Who pages are from: name, repairer, logo, paper; and where pictures arrive. */
final class WorkshopPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final List<Optional<Paper>> PAPERS =
      List.of(Optional.empty(), Optional.of(Paper.A4), Optional.of(Paper.LETTER));

  private final JTextField name = new JTextField(14);
  private final JTextField repairer = new JTextField(14);
  private final JTextField logo = new JTextField(14);
  private final JButton choose = new JButton(Words.say("desk.workshop.choose"));
  private final JTextField inbox = new JTextField(14);
  private final JButton chooseInbox = new JButton(Words.say("desk.workshop.choose"));
  private final JComboBox<String> paper = new JComboBox<>();
  private final JButton keep = new JButton(Words.say("desk.workshop.keep"));

  /**
   * @param kept takes what the person keeps, and the photo inbox
   */
  WorkshopPanel(BiConsumer<Workshop, String> kept) {
    super(new MigLayout("insets 0, gap 8 4", "[][fill,grow][][fill,grow][]"));
    setOpaque(false);
    for (Optional<Paper> each : PAPERS) {
      paper.addItem(
          Words.say("desk.workshop.paper." + each.map(Paper.WORDS::word).orElse("usual")));
    }
    row("name", name, "");
    row("repairer", repairer, "wrap");
    row("logo", logo, "split 2");
    add(choose, "grow 0");
    row("paper", paper, "wrap");
    row("inbox", inbox, "split 2");
    add(chooseInbox, "grow 0");
    add(keep, "skip 1, wrap");
    chooseInbox.setName("workshop.chooseInbox");
    chooseInbox.getAccessibleContext().setAccessibleName(Words.say("desk.workshop.chooseInbox"));
    choose.getAccessibleContext().setAccessibleName(Words.say("desk.workshop.chooseLogo"));
    chooseInbox.addActionListener(event -> chooseInbox());
    choose.setName("workshop.choose");
    keep.setName("workshop.keep");
    choose.addActionListener(event -> choose());
    keep.addActionListener(event -> kept.accept(typed(), inbox.getText().strip()));
    for (JTextField field : List.of(name, repairer, logo, inbox)) {
      field.addActionListener(event -> kept.accept(typed(), inbox.getText().strip()));
    }
  }

  /** What stands in the fields. */
  Workshop typed() {
    return new Workshop(
        name.getText().strip(),
        repairer.getText().strip(),
        logo.getText().strip(),
        PAPERS.get(paper.getSelectedIndex()));
  }

  /** The paper that is chosen, in words. */
  String paper() {
    return String.valueOf(paper.getSelectedItem());
  }

  private void row(String key, JComponent field, String place) {
    JLabel label = new JLabel(Words.say("desk.workshop." + key));
    label.setLabelFor(field);
    field.setName("workshop." + key);
    field.getAccessibleContext().setAccessibleName(label.getText());
    add(label);
    add(field, place);
  }

  void show(Workshop workshop, String photoInbox) {
    inbox.setText(photoInbox);
    name.setText(workshop.name());
    repairer.setText(workshop.repairer());
    logo.setText(workshop.logo());
    paper.setSelectedIndex(PAPERS.indexOf(workshop.paper()));
  }

  private void choose() {
    JFileChooser chooser = new JFileChooser(logo.getText());
    chooser.setDialogTitle(Words.say("desk.workshop.choose"));
    chooser.setFileFilter(
        new FileNameExtensionFilter(Words.say("desk.workshop.pictures"), "png", "jpg", "jpeg"));
    if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
      logo.setText(chooser.getSelectedFile().getPath());
    }
  }

  private void chooseInbox() {
    JFileChooser chooser = new JFileChooser(inbox.getText());
    chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
    if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
      inbox.setText(chooser.getSelectedFile().getPath());
    }
  }

  @Override
  public void look(Look look) {
    for (java.awt.Component each : getComponents()) {
      each.setFont(Look.letters(Look.BODY));
    }
  }
}
