package org.halflight.desk;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JTextField;
import org.halflight.job.Correction;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.words.Words;

/** A field for each detail of camera and visit. */
final class DetailFields {
  /** What the choice says, in its order. */
  private static final List<String> FILM = List.of("", Detail.NO, Detail.YES);

  private final Map<Detail, JTextField> texts = new EnumMap<>(Detail.class);
  private final JComboBox<String> film = new JComboBox<>();

  DetailFields() {
    for (Detail detail : Detail.values()) {
      if (detail != Detail.FILM) {
        JTextField field = new JTextField();
        field.setName("detail." + detail);
        texts.put(detail, field);
      }
    }
    film.setName("detail." + Detail.FILM);
    for (String answer : FILM) {
      film.addItem(Words.say("desk.camera.film." + (answer.isEmpty() ? "unknown" : answer)));
    }
  }

  JComponent field(Detail detail) {
    JTextField text = texts.get(detail);
    return text == null ? film : text;
  }

  void show(Details details) {
    texts.forEach(
        (detail, field) -> {
          field.setText(details.of(detail));
          field.setCaretPosition(0);
        });
    film.setSelectedIndex(FILM.indexOf(details.of(Detail.FILM)));
  }

  Details typed(List<Detail> which) {
    Map<Detail, String> typed = new EnumMap<>(Detail.class);
    for (Detail detail : which) {
      JTextField text = texts.get(detail);
      typed.put(
          detail, text == null ? FILM.get(Math.max(0, film.getSelectedIndex())) : text.getText());
    }
    return new Details(typed);
  }

  /** What stood in a field before, as its tool tip. */
  void before(List<Correction> corrections) {
    for (Detail detail : Detail.values()) {
      String column = Detail.WORDS.word(detail).replace('-', '_');
      field(detail)
          .setToolTipText(
              corrections.stream()
                  .filter(each -> each.field().equals(column))
                  .map(each -> Words.say("desk.camera.earlier", each.earlier()))
                  .reduce((first, second) -> second)
                  .orElse(null));
    }
  }
}
