package org.halflight.chart;

import java.util.Optional;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.FlashContact;
import org.halflight.extratest.Holds;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.SelfTimer;
import org.halflight.extratest.StopScale;

/** Pictures of what was tried beside the marked speeds; each kind has its own. */
public final class ExtraTestPictures {
  private ExtraTestPictures() {}

  /**
   * The picture of one thing; empty where there is nothing to draw.
   *
   * @param note where the figures come from; may be empty
   */
  public static Optional<Picture> of(ExtraTest tried, String note) {
    if (tried instanceof Bounce bounce && !bounce.speeds().isEmpty()) {
      return Optional.of(new BouncePicture(bounce, note));
    }
    if (tried instanceof Linkage linkage && !linkage.judged().presses().isEmpty()) {
      return Optional.of(new LinkagePicture(linkage.judged(), note));
    }
    if (tried instanceof AdvanceTiming linkage) {
      return Optional.of(new AdvanceTimingPicture(linkage, note));
    }
    if (tried instanceof LightLeak leak) {
      return Optional.of(new LeakPicture(leak, note)).filter(LeakPicture::isThere).map(p -> p);
    }
    if (tried instanceof StopScale scale && !scale.stops().isEmpty()) {
      return Optional.of(new StopScalePicture(scale, note));
    }
    if (tried instanceof FlashContact contact) {
      return Optional.of(new ContactPicture(contact, note))
          .filter(ContactPicture::isThere)
          .map(p -> p);
    }
    if (tried instanceof SelfTimer timer && !timer.seconds().isEmpty()) {
      return Optional.of(new SelfTimerPicture(timer, note));
    }
    if (tried instanceof Holds holds) {
      return Optional.of(new HoldsPicture(holds, note)).filter(HoldsPicture::isThere).map(p -> p);
    }
    return Optional.empty();
  }
}
