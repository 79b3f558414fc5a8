package org.halflight.desk;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JLabel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.DetailsText;
import org.halflight.desk.view.UserAction;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The details of the speed that is looked at: its uncertainty budget as bars and as a table, and
 * the figures that its verdict rests on. Keys of the bench work here too, so firing goes on.
 */
final class DetailsPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final JLabel title = new JLabel(" ");
  private final JButton back = new JButton(Words.say("desk.details.back"));
  private final PictureView bars;
  private final DataTableView budget = new DataTableView(Words.say("desk.details.table"));
  private final DataTableView figures = new DataTableView(Words.say("desk.details.name"));
  private final ReadOnlyText advice =
      new ReadOnlyText("detailsAdvice", Words.say("desk.details.advice"));
  private final transient Supplier<Optional<MarkedSpeed>> looked;
  private final transient LatestWork<LookedAt, DetailsText> text;
  private transient @Nullable BenchView view;
  private boolean up;

  /**
   * @param looked the speed that is looked at
   */
  DetailsPlace(
      Look look,
      Executor drawing,
      LongSupplier nanos,
      Supplier<Optional<MarkedSpeed>> looked,
      Runnable onBack) {
    super(UserAction.DETAILS);
    setLayout(
        new MigLayout(
            "insets 16 32 12 28, gap 22 8, fill",
            "[fill,grow 60,50%::][fill,grow 40]",
            "[][fill,grow 100][fill]"));
    this.looked = looked;
    text =
        new LatestWork<>(
            drawing,
            of -> DetailsText.of(of.view(), of.speed()),
            DetailsPlace::comeToTheSame,
            (of, made) -> arrived(made));
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

  @Override
  void show(BenchView shown) {
    view = shown;
    work();
  }

  @Override
  void comesUp() {
    up = true;
    work();
  }

  @Override
  void isLeft() {
    up = false;
  }

  /** Has the speed that is looked at worked out where it is on the screen. */
  void work() {
    if (up && view != null) {
      text.of(new LookedAt(view, looked.get(), 0));
    }
  }

  @Override
  void asTables(boolean on) {
    bars.asTable(on);
  }

  @Override
  boolean acceptsBenchKeys() {
    return true;
  }

  DataTableView budget() {
    return budget;
  }

  DataTableView figures() {
    return figures;
  }

  /** Whether what is on the screen is of the last view. */
  boolean isUpToDate() {
    return text.isDone() && bars.canvas().isUpToDate();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    advice.setBackground(look.ground());
    advice.setForeground(look.quietInk());
    advice.setFont(Look.letters(Look.BODY));
    advice.setBorder(null);
    bars.look(look);
    budget.look(look);
    figures.look(look);
  }

  private static boolean comeToTheSame(LookedAt one, LookedAt other) {
    return one.view().results() == other.view().results()
        && one.view().runs().equals(other.view().runs())
        && one.view().marks().equals(other.view().marks())
        && one.speed().equals(other.speed());
  }

  private void arrived(DetailsText made) {
    title.setText(made.title());
    bars.show(made.picture(), made.budget());
    budget.show(made.budget());
    figures.show(made.figures());
    advice.say(made.advice());
  }
}
