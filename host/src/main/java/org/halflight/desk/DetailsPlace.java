package org.halflight.desk;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.DetailsText;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;

/**
 * The details of the speed that is looked at: its uncertainty budget as bars and as a table, and
 * the figures that its verdict rests on. Keys of the bench work here too, so firing goes on.
 */
final class DetailsPlace extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final transient Executor drawing;
  private final JLabel title = new JLabel(" ");
  private final JButton back = new JButton(Words.say("desk.details.back"));
  private final PictureView bars;
  private final DataTableView budget = new DataTableView(Words.say("desk.details.table"));
  private final DataTableView figures = new DataTableView(Words.say("desk.details.name"));
  private final ReadOnlyText advice =
      new ReadOnlyText("detailsAdvice", Words.say("desk.details.advice"));
  private transient BenchView view;
  private transient BenchView made;
  private transient Optional<MarkedSpeed> looked = Optional.empty();
  private transient Optional<MarkedSpeed> madeOf = Optional.empty();
  private boolean making;

  DetailsPlace(Look look, Executor drawing, LongSupplier nanos, Runnable onBack) {
    super(
        new MigLayout(
            "insets 16 32 12 28, gap 22 8, fill",
            "[fill,grow 60,50%::][fill,grow 40]",
            "[][fill,grow 100][fill]"));
    this.drawing = drawing;
    bars =
        new PictureView(
            Words.say("desk.details.bars"), Words.say("desk.details.empty"), look, drawing, nanos);
    back.setName("detailsBack");
    back.addActionListener(event -> onBack.run());
    add(title);
    add(back, "align right, grow 0, wrap");
    add(bars, "grow, hmin 180");
    add(figures, "spany 2, split 2, flowy, grow, pushy");
    add(advice, "growx, wmin 100, wrap");
    add(budget, "grow, h 290!");
    look(look);
  }

  /** Shows a speed of a view as soon as it is worked out. */
  void show(BenchView shown, Optional<MarkedSpeed> at) {
    view = shown;
    looked = at;
    make();
  }

  PictureView bars() {
    return bars;
  }

  DataTableView budget() {
    return budget;
  }

  DataTableView figures() {
    return figures;
  }

  /** Whether what is on the screen is of the last view. */
  boolean isUpToDate() {
    return !making && bars.canvas().isUpToDate();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    advice.setBackground(look.ground());
    advice.setForeground(look.quietInk());
    advice.setFont(Look.letters(1.05));
    advice.setBorder(null);
    bars.look(look);
    budget.look(look);
    figures.look(look);
  }

  private void make() {
    boolean same =
        made != null
            && made.results() == view.results()
            && made.runs().equals(view.runs())
            && made.marks().equals(view.marks())
            && madeOf.equals(looked);
    if (making || same) {
      return;
    }
    making = true;
    BenchView of = view;
    Optional<MarkedSpeed> at = looked;
    drawing.execute(
        () -> {
          DetailsText text = DetailsText.of(of, at);
          SwingUtilities.invokeLater(() -> arrived(of, at, text));
        });
  }

  private void arrived(BenchView of, Optional<MarkedSpeed> at, DetailsText text) {
    making = false;
    made = of;
    madeOf = at;
    title.setText(text.title());
    bars.show(text.bars(), text.budget());
    budget.show(text.budget());
    figures.show(text.figures());
    advice.say(text.advice());
    make();
  }
}
