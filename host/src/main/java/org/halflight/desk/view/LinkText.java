package org.halflight.desk.view;

import org.halflight.link.LinkState;
import org.halflight.words.Words;

/**
 * The link in a few words, and the rest of it.
 *
 * @param text for the top of every screen
 * @param more what was lost on the way
 * @param up whether the rig answers
 */
public record LinkText(String text, String more, boolean up) {
  /** The words for a link. */
  public static LinkText of(LinkView link) {
    String more =
        Words.say("desk.link.more", link.sentence(), link.damagedLines(), link.missingLines());
    if (!link.isUp()) {
      return new LinkText(
          Words.say(link.state() == LinkState.LOST ? "desk.link.isLost" : "desk.link.isSearching"),
          more,
          false);
    }
    String who =
        link.isPractice()
            ? Words.say("desk.link.practice")
            : Words.say("desk.link.rig", link.serial());
    long bad = link.damagedLines() + link.missingLines();
    return new LinkText(
        bad == 0 ? who : Words.count("desk.link.withLosses", Math.toIntExact(bad), who, bad),
        more,
        true);
  }
}
