package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.halflight.extratest.ContactShot;
import org.halflight.extratest.FlashContact;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/**
 * The flash contact at each marked speed, in milliseconds after the blades are fully open, with
 * first light and start of closing. Times of the blades are in the middle of the two opening laws.
 */
final class ContactPicture implements Picture {
  /** The picture reaches so far past the contact; a slow speed begins to close far beyond. */
  private static final double MARGIN = 1.4;

  private final FlashContact contact;
  private final String note;

  ContactPicture(FlashContact contact, String note) {
    this.contact = contact;
    this.note = note;
  }

  /** Whether a closing can be held against the blades at any speed. */
  boolean isThere() {
    return contact.speeds().stream()
        .flatMap(at -> at.shots().stream())
        .anyMatch(ContactPicture::isDrawn);
  }

  private String key(String key) {
    return contact.isOfCurtains() ? key + ".curtains" : key;
  }

  private static boolean isDrawn(ContactShot shot) {
    return shot.hasClosing() && shot.areaLinear().isPresent() && shot.radiusLinear().isPresent();
  }

  private static double middle(ContactShot shot, ToDoubleFunction<ContactShot.FullyOpen> moment) {
    return (moment.applyAsDouble(shot.areaLinear().orElseThrow())
            + moment.applyAsDouble(shot.radiusLinear().orElseThrow()))
        / 2;
  }

  private static double afterOpenMillis(ContactShot shot, double seconds) {
    return (seconds - middle(shot, ContactShot.FullyOpen::from)) * 1e3;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    List<String> names = contact.speeds().stream().map(at -> at.speed().label()).toList();
    List<double[]> closings = new ArrayList<>();
    List<double[]> firstLight = new ArrayList<>();
    List<double[]> ends = new ArrayList<>();
    double low = 0;
    double high = 1;
    for (int i = 0; i < names.size(); i++) {
      for (ContactShot shot : contact.speeds().get(i).shots()) {
        if (isDrawn(shot)) {
          double closes = afterOpenMillis(shot, shot.closingSeconds());
          double light = afterOpenMillis(shot, middle(shot, ContactShot.FullyOpen::firstLight));
          low = Math.min(low, Math.min(closes, light));
          high = Math.max(high, closes);
          closings.add(new double[] {i, closes});
          firstLight.add(new double[] {i - 0.12, light});
          ends.add(
              new double[] {
                i + 0.12, afterOpenMillis(shot, middle(shot, ContactShot.FullyOpen::to))
              });
        }
      }
    }
    double most = MARGIN * Math.max(high, -low);
    ends.removeIf(end -> end[1] > most);
    DotPlot plot =
        new DotPlot(
            Frame.names(Words.say("contact.picture.speed"), names),
            Words.say("contact.picture.axis"),
            theme);
    plot.dots(Words.say("contact.picture.closes"), closings, theme.asLeft());
    plot.dots(Words.say("contact.picture.light"), firstLight, theme.quietInk());
    plot.dots(Words.say(key("contact.picture.end")), ends, theme.asFound());
    plot.level(0, theme.ink(), false);
    plot.range(MARGIN * low - 0.1, most);
    return plot.chart(Words.say(key("contact.picture.title")), note);
  }

  @Override
  public DataTable table() {
    return new DataTable(
        Words.say(key("contact.picture.title")),
        List.of(
            Words.say("contact.picture.speed"),
            Words.say("contact.picture.light"),
            Words.say("contact.picture.closes"),
            Words.say(key("contact.picture.end")),
            Words.say("contact.table.duration"),
            Words.say("contact.table.bounces"),
            Words.say("contact.table.flash")),
        contact.speeds().stream().map(ContactPicture::row).toList(),
        note);
  }

  private static List<String> row(FlashContact.AtSpeed at) {
    return List.of(
        Numbers.speed(at.speed()),
        mean(at, s -> afterOpenMillis(s, middle(s, ContactShot.FullyOpen::firstLight))),
        mean(at, s -> afterOpenMillis(s, s.closingSeconds())),
        mean(at, s -> afterOpenMillis(s, middle(s, ContactShot.FullyOpen::to))),
        mean(at, s -> s.durationSeconds() * 1e3),
        String.valueOf(at.mostBounces()),
        Words.of("contact.flash", at.flash()));
  }

  private static String mean(FlashContact.AtSpeed at, ToDoubleFunction<ContactShot> millis) {
    return Optional.of(at.shots().stream().filter(ContactPicture::isDrawn).toList())
        .filter(shots -> !shots.isEmpty())
        .map(shots -> shots.stream().mapToDouble(millis).average().orElseThrow())
        .map(value -> String.format(Locale.ROOT, "%+.2f ms", value))
        .orElse(Words.say("table.nothing"));
  }
}
