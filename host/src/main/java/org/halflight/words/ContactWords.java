package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.extratest.BulbClass;
import org.halflight.extratest.ContactShot.Flash;
import org.halflight.extratest.ContactShot.How;
import org.halflight.extratest.FlashContact;
import org.halflight.session.SyncLever;
import org.halflight.speeds.MarkedSpeed;

/** The flash contact in sentences. */
public final class ContactWords {
  private ContactWords() {}

  /** To be said before the contact input is used for the first time in a session. */
  public static String caution() {
    return Words.say("contact.caution");
  }

  /** How it is, and what else there is to know. */
  public static List<String> lines(FlashContact contact) {
    List<String> lines = new ArrayList<>();
    trouble(lines, contact, How.NEVER, "contact.never");
    trouble(lines, contact, How.ALWAYS_CLOSED, "contact.always");
    trouble(lines, contact, How.CHATTERS, "contact.chatters");
    flash(lines, contact, Flash.TOO_LATE, key(contact, "contact.late"));
    if (contact.lever().equals(Optional.of(SyncLever.M))) {
      contact
          .isRightAtM()
          .ifPresent(
              right ->
                  lines.add(
                      Words.say(key(contact, "contact.lever." + (right ? "right" : "wrong")))));
    } else {
      flash(lines, contact, Flash.TOO_EARLY, key(contact, "contact.early"));
      if (!contact.at(Flash.TOO_EARLY).isEmpty()) {
        lines.add(
            contact.lever().isPresent()
                ? Words.say(key(contact, "contact.lever.early"))
                : bulbs(contact));
      }
      flash(lines, contact, Flash.TOO_CLOSE, "contact.close");
      flash(lines, contact, Flash.WHILE_OPEN, key(contact, "contact.inTime"));
    }
    flash(lines, contact, Flash.NEVER_OPEN, key(contact, "contact.neverOpen"));
    int bounces =
        contact.speeds().stream().mapToInt(FlashContact.AtSpeed::mostBounces).max().orElse(0);
    if (bounces > 0) {
      lines.add(Words.count("contact.bounces", bounces, bounces));
    }
    lines.add(Words.say("contact.resistance"));
    return lines;
  }

  private static void trouble(List<String> lines, FlashContact contact, How how, String key) {
    if (contact.count(how) > 0) {
      int all = contact.speeds().stream().mapToInt(at -> at.shots().size()).sum();
      lines.add(Words.count(key, all, contact.count(how), all));
    }
  }

  /** Speeds whose firings all agree in one sentence; each that was so only at times in its own. */
  private static void flash(List<String> lines, FlashContact contact, Flash flash, String key) {
    List<MarkedSpeed> dial = contact.speeds().stream().map(FlashContact.AtSpeed::speed).toList();
    List<FlashContact.AtSpeed> its =
        contact.speeds().stream().filter(at -> at.flash() == flash).toList();
    List<MarkedSpeed> always =
        its.stream()
            .filter(at -> at.count(flash) == at.closed().size())
            .map(FlashContact.AtSpeed::speed)
            .toList();
    if (!always.isEmpty()) {
      lines.add(Words.say(key, SpeedNames.of(always, dial)));
    }
    for (FlashContact.AtSpeed at : its) {
      if (!always.contains(at.speed())) {
        lines.add(
            Words.say(
                "contact.atTimes",
                Words.say(key, Numbers.speed(at.speed())),
                at.count(flash),
                at.closed().size()));
      }
    }
  }

  /** A sentence that is another one about curtains. */
  private static String key(FlashContact contact, String key) {
    return contact.isOfCurtains() ? key + ".curtains" : key;
  }

  private static String bulbs(FlashContact contact) {
    List<BulbClass> classes = contact.classes();
    if (classes.isEmpty()) {
      return Words.say(key(contact, "contact.bulb.none"));
    }
    List<String> names =
        classes.stream()
            .map(
                each ->
                    each.isFromMemory()
                        ? Words.say("contact.bulb.memory", each.name())
                        : each.name())
            .toList();
    return Words.say(key(contact, "contact.bulb.fits"), String.join(", ", names));
  }
}
