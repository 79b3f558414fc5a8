package org.halflight.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JFileChooser;
import javax.swing.JMenuItem;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JProgressBar;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.halflight.files.OutFolder;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The files that a place writes: where they go, what is being written, and the last one, to be
 * opened or shown in its folder. For the window's own thread.
 */
final class FilesPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  /** What was written. */
  record Written(Path file, String sentence) {}

  /** Writes something on the thread of the record. */
  @FunctionalInterface
  interface Writing {
    /**
     * Writes it.
     *
     * @param folder where it is to go; it is there
     * @throws Trouble when it cannot be written, or the person ended it
     */
    Written into(Path folder, WorkshopRecord record, FileProgress progress);
  }

  private final transient Archive archive;
  private final transient Path settings;
  private final transient Path usual;
  private final List<String> sorts;
  private final ReadOnlyText said = new ReadOnlyText("exportSaid", Words.say("desk.files.said"));
  private final JProgressBar bar = new JProgressBar(0, 1);
  private final JButton end = new JButton(Words.say("desk.files.end"));
  private final JButton open = new JButton(Words.say("desk.files.open"));
  private final JButton show = new JButton(Words.say("desk.files.show"));
  private final JButton where = new JButton(Words.say("desk.files.where"));
  private transient Optional<FileProgress> going = Optional.empty();
  private transient Optional<Path> last = Optional.empty();

  /**
   * @param settings the folder of the settings
   * @param usual where files go as long as nobody chooses
   * @param sorts of files that are written here, as the settings name them; each has a folder
   */
  FilesPanel(Archive archive, Path settings, Path usual, List<String> sorts) {
    super(new MigLayout("insets 0, fillx, gap 8 4, hidemode 3", "[fill,grow][]"));
    setOpaque(false);
    this.archive = archive;
    this.settings = settings;
    this.usual = usual;
    this.sorts = List.copyOf(sorts);
    bar.setName("filesProgress");
    bar.getAccessibleContext().setAccessibleName(Words.say("desk.files.progress"));
    end.setName("filesEnd");
    open.setName("filesOpen");
    show.setName("filesShow");
    where.setName("filesWhere");
    end.addActionListener(event -> going.ifPresent(FileProgress::end));
    open.addActionListener(event -> last.ifPresent(file -> DesktopFiles.open(file, this::say)));
    show.addActionListener(
        event -> last.ifPresent(file -> DesktopFiles.showInFolder(file, this::say)));
    where.addActionListener(event -> where());
    JPanel acts = Place.group(new MigLayout("insets 0, gap 8, hidemode 3"));
    acts.add(end);
    acts.add(open);
    acts.add(show);
    acts.add(where);
    add(said, "wmin 100");
    add(acts, "aligny top, wrap");
    add(bar, "span, growx, h 8!");
    dress();
  }

  /** Says something about files. */
  void say(String sentence) {
    said.say(sentence);
  }

  /**
   * Writes something; one at a time.
   *
   * @param sort of the file, which decides on its folder
   */
  void write(String sort, Writing writing) {
    if (going.isPresent()) {
      say(Words.say("desk.files.busy"));
      return;
    }
    FileProgress progress = new FileProgress(step -> SwingUtilities.invokeLater(() -> isAt(step)));
    going = Optional.of(progress);
    dress();
    archive.ask(record -> outcome(sort, writing, record, progress), this::isDone);
  }

  /** What the person reads of it, and the file where there is one. */
  private record Outcome(String sentence, Optional<Path> file) {}

  private Outcome outcome(
      String sort, Writing writing, WorkshopRecord record, FileProgress progress) {
    try {
      Path folder = OutFolder.of(settings, sort, usual).ready();
      Written written = writing.into(folder, record, progress);
      return new Outcome(written.sentence(), Optional.of(written.file()));
    } catch (Trouble trouble) {
      return new Outcome(trouble.getMessage(), Optional.empty());
    } catch (RuntimeException | Error fault) {
      SwingUtilities.invokeLater(() -> isDone(new Outcome(" ", Optional.empty())));
      throw fault;
    }
  }

  private void isAt(FileProgress.Step step) {
    if (going.isPresent()) {
      bar.setMaximum(step.all());
      bar.setValue(step.done());
      bar.setIndeterminate(step.all() == 0);
      say(step.doing());
    }
  }

  private void isDone(Outcome outcome) {
    boolean hadFocus = end.isFocusOwner();
    going = Optional.empty();
    last = outcome.file().or(() -> last);
    say(outcome.sentence());
    dress();
    if (hadFocus) {
      where.requestFocusInWindow();
    }
  }

  private void dress() {
    bar.setVisible(going.isPresent());
    end.setVisible(going.isPresent());
    open.setVisible(last.isPresent() && going.isEmpty());
    show.setVisible(last.isPresent() && going.isEmpty());
    revalidate();
  }

  private void where() {
    archive.ask(
        record -> sorts.stream().map(sort -> OutFolder.of(settings, sort, usual).path()).toList(),
        this::where);
  }

  private void where(List<Path> folders) {
    JPopupMenu menu = new JPopupMenu();
    for (int i = 0; i < sorts.size(); i++) {
      String sort = sorts.get(i);
      Path now = folders.get(i);
      JMenuItem entry =
          new JMenuItem(Words.say("desk.files.whereOf", Words.say("desk.files.of." + sort), now));
      entry.setName("filesWhere." + sort);
      entry.addActionListener(event -> choose(sort, now));
      menu.add(entry);
    }
    menu.show(where, 0, where.getHeight());
  }

  private void choose(String sort, Path now) {
    JFileChooser chooser = new JFileChooser(now.toFile());
    chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
    chooser.setDialogTitle(Words.say("desk.files.where"));
    if (chooser.showDialog(this, Words.say("desk.files.choose")) == JFileChooser.APPROVE_OPTION) {
      Path folder = chooser.getSelectedFile().toPath();
      archive.ask(
          record -> {
            try {
              return Words.say(
                  "desk.files.goTo",
                  Words.say("desk.files.of." + sort),
                  OutFolder.choose(settings, sort, folder).path());
            } catch (Trouble trouble) {
              return trouble.getMessage();
            }
          },
          this::say);
    }
  }

  @Override
  public void look(Look look) {
    said.setBorder(null);
    said.setBackground(look.ground());
    said.setForeground(look.ink());
    said.setFont(Look.letters(Look.BODY));
  }
}
