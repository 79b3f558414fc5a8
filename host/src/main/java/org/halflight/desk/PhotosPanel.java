package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.Icon;
import javax.swing.ImageIcon;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.filechooser.FileNameExtensionFilter;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.JobActWords;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.Visit;
import org.halflight.photo.PhotoStore;
import org.halflight.record.Edit;
import org.halflight.words.PhotoWords;
import org.halflight.words.Words;

/** The pictures of a visit, small; Enter or a click enlarges one. */
final class PhotosPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final int TILE = 136;
  private static final String ALL = "all";
  private static final String ONE = "one";

  private final transient Archive archive;
  private final transient Executor drawing;
  private final transient JobEdits edits;
  private final transient ZoneId zone;
  private final ReadOnlyText question =
      new ReadOnlyText("photosQuestion", Words.say("desk.photos.question"));
  private final JButton here = new JButton(Words.say("desk.photos.here"));
  private final JButton leave = new JButton(Words.say("desk.photos.leave"));
  private final JPanel asks = Place.group(new MigLayout("insets 0, fillx", "[fill,grow][][]"));
  private final DefaultListModel<Photo> model = new DefaultListModel<>();
  private final JList<Photo> photos = new JList<>(model);
  private final JLabel large = new JLabel("", SwingConstants.CENTER);
  private final CardLayout cards = new CardLayout();
  private final JPanel middle = new JPanel(cards);
  private final ReadOnlyText hint = new ReadOnlyText("photosHint", Words.say("desk.photos.name"));
  private final JLabel captionLabel = new JLabel(Words.say("desk.photos.caption"));
  private final JTextField caption = new JTextField();
  private final JButton add = new JButton(Words.say("desk.photos.add"));
  private final JButton enlarge = new JButton(Words.say("desk.photos.enlarge"));
  private final JButton off = new JButton(Words.say("desk.photos.off"));
  private final transient Map<Id<Photo>, PhotoImage> small = new HashMap<>();
  private transient Optional<Id<Visit>> visit = Optional.empty();
  private transient Optional<PhotoStore> store = Optional.empty();
  private boolean isLarge;

  /**
   * @param edits what is changed here goes through
   */
  PhotosPanel(Archive archive, JobEdits edits, Executor drawing, ZoneId zone) {
    super(new MigLayout("insets 8 0 0 0, fill, wrap 1, gap 0 6", "[fill,grow]"));
    setOpaque(false);
    this.archive = archive;
    this.edits = edits;
    this.drawing = drawing;
    this.zone = zone;
    photos.setName("photos");
    photos.getAccessibleContext().setAccessibleName(Words.say("desk.photos.name"));
    photos.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    photos.setLayoutOrientation(JList.HORIZONTAL_WRAP);
    photos.setVisibleRowCount(-1);
    photos.setCellRenderer(new Tile());
    photos.setFixedCellWidth(Look.px(TILE + 16));
    photos.setFixedCellHeight(Look.px(TILE + 34));
    photos.addListSelectionListener(event -> select());
    photos.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent event) {
            int at = photos.locationToIndex(event.getPoint());
            if (at >= 0 && photos.getCellBounds(at, at).contains(event.getPoint())) {
              enlarge(true);
            }
          }
        });
    large.setName("photoLarge");
    large.setFocusable(true);
    large.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent event) {
            enlarge(false);
          }
        });
    key(photos, "ENTER", () -> enlarge(true));
    key(photos, "DELETE", this::takeOff);
    for (String each : new String[] {"ENTER", "ESCAPE"}) {
      key(large, each, () -> enlarge(false));
    }
    key(large, "LEFT", () -> step(-1));
    key(large, "RIGHT", () -> step(1));
    question.setRows(2);
    asks.add(question, "wmin 100");
    asks.add(here);
    asks.add(leave);
    caption.setName("photoCaption");
    captionLabel.setLabelFor(caption);
    here.setName("photosHere");
    leave.setName("photosLeave");
    add.setName("photosAdd");
    enlarge.setName("photosEnlarge");
    off.setName("photosOff");
    here.addActionListener(
        event ->
            visit.ifPresent(its -> add(archive.addingWaiting(its), Words.say("act.photo.waited"))));
    leave.addActionListener(event -> archive.leaveWaiting());
    caption.addActionListener(event -> caption());
    add.addActionListener(event -> choose());
    enlarge.addActionListener(event -> enlarge(!isLarge));
    off.addActionListener(event -> takeOff());
    JScrollPane scroll = new JScrollPane(photos);
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    middle.setOpaque(false);
    middle.add(scroll, ALL);
    middle.add(large, ONE);
    add(asks, "wmin 100, hidemode 3");
    add(hint, "wmin 100, hmin 34");
    add(middle, "grow, push, hmin 120");
    add(captionLabel, "split 2, grow 0");
    add(caption, "growx, pushx, wmin 60");
    JPanel buttons = Place.group(new MigLayout("insets 0"));
    for (JButton each : List.of(add, enlarge, off)) {
      buttons.add(each);
    }
    add(buttons);
    asks.setVisible(false);
    dress();
  }

  private static void key(JComponent of, String stroke, Runnable act) {
    BoundKey.does(of, WHEN_FOCUSED, KeyStroke.getKeyStroke(stroke), act);
  }

  /** What pictures that wait are asked; empty for none. */
  void ask(String asked) {
    question.say(asked);
    asks.setVisible(!asked.isEmpty());
    dress();
    revalidate();
  }

  /** Reads the pictures of a visit anew; of none while no camera is named. */
  void show(Optional<Id<Visit>> of) {
    if (!visit.equals(of)) {
      visit = of;
      model.clear();
      small.clear();
      isLarge = false;
      cards.show(middle, ALL);
    }
    visit.ifPresentOrElse(
        its ->
            archive.ask(
                record -> {
                  store = Optional.of(PhotoStore.beside(record.file()));
                  return record.photos(its);
                },
                now -> {
                  if (visit.equals(of)) {
                    show(now);
                  }
                }),
        this::dress);
  }

  private void show(List<Photo> now) {
    List<Photo> before = Arrays.asList(model.toArray()).stream().map(Photo.class::cast).toList();
    if (!before.equals(now)) {
      Optional<Id<Photo>> chosen = selected().map(Photo::id);
      model.clear();
      now.forEach(model::addElement);
      int at = chosen.map(id -> now.stream().map(Photo::id).toList().indexOf(id)).orElse(-1);
      if (at >= 0) {
        photos.setSelectedIndex(at);
      }
      now.forEach(this::load);
    }
    if (isLarge && selected().isEmpty()) {
      enlarge(false);
    }
    dress();
  }

  private void load(Photo photo) {
    if (!small.containsKey(photo.id())) {
      int most = 2 * Look.px(TILE);
      LatestWork.there(
          drawing,
          () -> image(photo, most, most),
          made -> {
            if (made != null) {
              small.put(photo.id(), made);
              photos.repaint();
            }
          });
    }
  }

  private PhotoImage image(Photo photo, int wide, int high) {
    Path file = store.orElseThrow().file(photo.file());
    return PhotoImage.of(file, photo.name(), wide, high);
  }

  private Optional<Photo> selected() {
    return Optional.ofNullable(photos.getSelectedValue());
  }

  private void select() {
    caption.setText(selected().map(Photo::caption).orElse(""));
    if (isLarge) {
      enlarge(selected().isPresent());
    }
    dress();
  }

  private void step(int by) {
    int to = photos.getSelectedIndex() + by;
    if (to >= 0 && to < model.size()) {
      photos.setSelectedIndex(to);
    }
  }

  private void enlarge(boolean to) {
    isLarge = to && selected().isPresent();
    if (!isLarge) {
      large.setIcon(null);
      cards.show(middle, ALL);
      photos.requestFocusInWindow();
      dress();
      return;
    }
    Photo photo = selected().orElseThrow();
    large.setIcon(null);
    large.setText(Words.say("desk.photos.loading"));
    cards.show(middle, ONE);
    large.requestFocusInWindow();
    int wide = Math.max(1, middle.getWidth());
    int high = Math.max(1, middle.getHeight());
    LatestWork.there(
        drawing,
        () -> image(photo, wide, high),
        made -> {
          if (made != null && isLarge && selected().equals(Optional.of(photo))) {
            large.setText(made.said());
            large.setIcon(made.image().map(ImageIcon::new).orElse(null));
          }
        });
    dress();
  }

  private void caption() {
    selected()
        .filter(photo -> !photo.caption().equals(caption.getText().strip()))
        .ifPresent(
            photo ->
                edits.does(
                    JobActWords.caption(photo, caption.getText()),
                    Edit.of(photo.withCaption(caption.getText())),
                    () -> show(visit)));
  }

  private void takeOff() {
    selected()
        .ifPresent(
            photo ->
                edits.does(
                    Words.say("act.photo.off", photo.name()),
                    Edit.of(photo.off(true)),
                    () -> show(visit)));
  }

  private void choose() {
    JFileChooser chooser = new JFileChooser();
    chooser.setMultiSelectionEnabled(true);
    chooser.setFileFilter(
        new FileNameExtensionFilter(
            Words.say("desk.photos.pictures"), "jpg", "jpeg", "png", "heic", "heif"));
    if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
      List<Path> chosen = Arrays.stream(chooser.getSelectedFiles()).map(File::toPath).toList();
      String names = chosen.stream().map(PhotoStore::name).collect(Collectors.joining(", "));
      visit.ifPresent(its -> add(archive.adding(its, chosen), Words.say("act.photo.added", names)));
    }
  }

  private void add(Edit adding, String words) {
    edits.does(words, adding, () -> show(visit));
  }

  private void dress() {
    boolean one = selected().isPresent();
    here.setEnabled(visit.isPresent());
    add.setEnabled(visit.isPresent());
    enlarge.setEnabled(one);
    enlarge.setText(Words.say(isLarge ? "desk.photos.shrink" : "desk.photos.enlarge"));
    off.setEnabled(one);
    caption.setEnabled(one);
    hint.say(
        Words.say(
            visit.isEmpty()
                ? "desk.photos.noVisit"
                : model.isEmpty() ? "desk.photos.empty" : "desk.photos.select"));
    large
        .getAccessibleContext()
        .setAccessibleName(
            selected()
                .map(photo -> PhotoWords.line(photos.getSelectedIndex() + 1, photo, zone))
                .orElse(Words.say("desk.photos.large")));
  }

  @Override
  public void look(Look look) {
    for (ReadOnlyText each : new ReadOnlyText[] {question, hint}) {
      each.setBorder(null);
      each.setBackground(look.ground());
      each.setForeground(each == question ? look.attention() : look.ink());
    }
    large.setForeground(look.ink());
  }

  /** One picture with its caption, or when it was taken. */
  private final class Tile implements ListCellRenderer<Photo> {
    private final JPanel tile = new JPanel(new BorderLayout(0, 4));
    private final JLabel picture = new JLabel("", SwingConstants.CENTER);
    private final JLabel words = new JLabel("", SwingConstants.CENTER);

    Tile() {
      tile.setBorder(BorderFactory.createEmptyBorder(6, 6, 6, 6));
      picture.setPreferredSize(new Dimension(Look.px(TILE), Look.px(TILE)));
      tile.add(picture);
      tile.add(words, BorderLayout.SOUTH);
    }

    @Override
    public Component getListCellRendererComponent(
        JList<? extends Photo> list, Photo photo, int index, boolean isSelected, boolean hasFocus) {
      PhotoImage image = small.get(photo.id());
      tile.setBackground(isSelected ? list.getSelectionBackground() : list.getBackground());
      words.setForeground(isSelected ? list.getSelectionForeground() : list.getForeground());
      picture.setForeground(words.getForeground());
      picture.setIcon(
          image == null ? null : image.image().map(full -> new Scaled(full, TILE)).orElse(null));
      picture.setText(
          image == null
              ? Words.say("desk.photos.loading")
              : image.said().isEmpty() ? "" : Words.say("desk.photos.notShown"));
      words.setText(
          photo.caption().isEmpty() ? PhotoWords.moment(photo.takenAt(), zone) : photo.caption());
      tile.getAccessibleContext().setAccessibleName(PhotoWords.line(index + 1, photo, zone));
      return tile;
    }
  }

  /** A picture drawn at half its size, sharp where the screen has the pixels. */
  private record Scaled(BufferedImage full, int most) implements Icon {
    private double scale() {
      return Math.min(1, (double) Look.px(most) / Math.max(full.getWidth(), full.getHeight()));
    }

    @Override
    public int getIconWidth() {
      return (int) Math.round(full.getWidth() * scale());
    }

    @Override
    public int getIconHeight() {
      return (int) Math.round(full.getHeight() * scale());
    }

    @Override
    public void paintIcon(Component on, Graphics g, int x, int y) {
      Graphics2D fine = (Graphics2D) g.create();
      fine.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
      fine.drawImage(full, x, y, getIconWidth(), getIconHeight(), null);
      fine.dispose();
    }
  }
}
