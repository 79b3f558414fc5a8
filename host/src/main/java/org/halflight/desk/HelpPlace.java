package org.halflight.desk;

import java.awt.Color;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JEditorPane;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import javax.swing.event.HyperlinkEvent;
import javax.swing.text.html.HTMLDocument;
import javax.swing.text.html.HTMLEditorKit;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.GuideHtml;
import org.halflight.desk.view.GuidePages;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/** The guide that comes with the program, page by page, and what the program says of itself. */
final class HelpPlace extends Place {
  private static final long serialVersionUID = 1L;

  /** Where the pages are beside the classes. */
  private static final String FOLDER = "/org/halflight/guide/";

  private static final int ABOUT = 0;

  /** A page as HTML, and its drawings. */
  private record Shown(String body, GuidePictures pictures) {}

  private final transient Supplier<List<String>> about;
  private final transient Executor drawing;
  private final JLabel title = new JLabel(Words.say("desk.help.title"));
  private final DefaultListModel<String> titles = new DefaultListModel<>();
  private final JList<String> pages = new JList<>(titles);
  private final JEditorPane text = new JEditorPane();
  private final HTMLEditorKit kit = new HTMLEditorKit();
  private final JButton copy = new JButton(Words.say("desk.about.copy"));
  private final JLabel copied = new JLabel(" ");
  private transient Look look;

  /** The page on the screen; empty before the first one. */
  private String shown = "";

  /**
   * @param drawing where pages are read
   * @param about what the program says of itself, line by line
   */
  HelpPlace(Look look, Executor drawing, Supplier<List<String>> about) {
    super(UserAction.HELP);
    this.about = about;
    this.drawing = drawing;
    this.look = look;
    setLayout(
        new MigLayout(
            "insets 20 32 14 28, gap 18 8, fill", "[fill,220::300][fill,grow]", "[][fill,grow][]"));
    pages.setName("helpPages");
    pages.getAccessibleContext().setAccessibleName(Words.say("desk.help.pages"));
    pages.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    titles.addElement(Words.say("desk.about.title"));
    GuidePages.ALL.forEach(page -> titles.addElement(GuidePages.title(page)));
    pages.addListSelectionListener(event -> select());
    kit.setAutoFormSubmission(false);
    text.setName("helpText");
    text.setEditable(false);
    text.setEditorKit(kit);
    // Each kind of text has a context of its own.
    text.getAccessibleContext().setAccessibleName(Words.say("desk.help.text"));
    text.putClientProperty(JEditorPane.HONOR_DISPLAY_PROPERTIES, true);
    text.addHyperlinkListener(
        event -> {
          if (event.getEventType() == HyperlinkEvent.EventType.ACTIVATED) {
            follow(event.getDescription());
          }
        });
    copy.setName("aboutCopy");
    copied.setName("aboutCopied");
    copy.addActionListener(event -> copy());
    add(title, "span, wrap");
    add(new JScrollPane(pages), "growy");
    add(new JScrollPane(text), "grow, push, wrap");
    JPanel row = group(new MigLayout("insets 0, hidemode 3"));
    row.add(copy);
    row.add(copied);
    add(row, "skip 1");
    look(look);
  }

  /** Shows the page about a place when it comes up. */
  void about(UserAction place) {
    show(GuidePages.of(place));
  }

  /** Shows what the program says of itself when it comes up. */
  void about() {
    pages.setSelectedIndex(ABOUT);
  }

  @Override
  JEditorPane first() {
    return text;
  }

  private void select() {
    int index = pages.getSelectedIndex();
    if (index == ABOUT) {
      sayAbout();
    } else if (index > ABOUT && !GuidePages.page(shown).equals(GuidePages.ALL.get(index - 1))) {
      show(GuidePages.ALL.get(index - 1));
    }
  }

  private void sayAbout() {
    shown = "";
    copy.setVisible(true);
    copied.setText(" ");
    StringBuilder html = new StringBuilder();
    html.append("<h1>").append(Words.say("desk.title")).append("</h1>");
    Stream.concat(about.get().stream(), Stream.of(Words.say("desk.about.send")))
        .forEach(line -> html.append(GuideHtml.of(line)));
    put(new Shown(html.toString(), GuidePictures.NONE), "");
  }

  private void copy() {
    Toolkit.getDefaultToolkit()
        .getSystemClipboard()
        .setContents(new StringSelection(String.join("\n", about.get())), null);
    copied.setText(Words.say("desk.about.copied"));
  }

  /** A link to another page, or within this one; what is not of the guide is left alone. */
  private void follow(@Nullable String link) {
    if (link != null) {
      String page =
          GuidePages.page(link).isEmpty() ? GuidePages.page(shown) : GuidePages.page(link);
      if (GuidePages.ALL.contains(page)) {
        String heading = GuidePages.heading(link);
        show(heading.isEmpty() ? page : page + '#' + heading);
      }
    }
  }

  private void show(String link) {
    String page = GuidePages.page(link);
    copy.setVisible(false);
    copied.setText(" ");
    shown = link;
    pages.setSelectedIndex(GuidePages.ALL.indexOf(page) + 1);
    LatestWork.there(
        drawing,
        () -> {
          String body =
              read(page).map(GuideHtml::of).orElseGet(() -> Words.say("desk.help.missing", page));
          return new Shown(body, GuidePictures.of(body, folder()));
        },
        made -> {
          if (made != null && shown.equals(link)) {
            put(made, GuidePages.heading(link));
          }
        });
  }

  private static @Nullable URL folder() {
    return HelpPlace.class.getResource(FOLDER + GuidePages.ALL.get(0));
  }

  private void put(Shown made, String heading) {
    HTMLDocument document = (HTMLDocument) kit.createDefaultDocument();
    document.putProperty(GuidePictures.PROPERTY, made.pictures());
    document.getStyleSheet().addRule(style());
    URL folder = folder();
    if (folder != null) {
      document.setBase(folder);
    }
    text.setDocument(document);
    text.setText("<html><body>" + made.body() + "</body></html>");
    text.setCaretPosition(0);
    if (!heading.isEmpty()) {
      SwingUtilities.invokeLater(() -> text.scrollToReference(heading));
    }
  }

  private String style() {
    return "body { color: "
        + hex(look.ink())
        + "; margin: 8px; } a { color: "
        + hex(look.theme().asLeft())
        + "; } pre, code { font-family: monospaced; } h1, h2, h3 { margin-top: 12px; }";
  }

  private static String hex(Color colour) {
    return String.format("#%06X", colour.getRGB() & 0xFFFFFF);
  }

  private static Optional<String> read(String page) {
    try (InputStream in = HelpPlace.class.getResourceAsStream(FOLDER + page)) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    pages.setFont(Look.letters(Look.BODY));
    text.setFont(Look.letters(Look.LEAD));
    text.setBackground(look.ground());
    text.setForeground(look.ink());
    copied.setForeground(look.quietInk());
    if (shown.isEmpty()) {
      if (pages.getSelectedIndex() == ABOUT) {
        sayAbout();
      }
    } else {
      show(shown);
    }
  }
}
