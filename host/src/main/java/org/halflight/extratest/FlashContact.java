package org.halflight.extratest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.SyncLever;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;

/**
 * The flash contact at each marked speed, against the blades or the curtains. The resistance of the
 * contact is not measured.
 *
 * @param run counts the runs of the session from 1
 * @param phase of the run
 * @param lever where the sync lever was set, where that is known
 * @param speeds each marked speed at which light came, slow to fast
 */
public record FlashContact(
    int run, Optional<Phase> phase, Optional<SyncLever> lever, List<AtSpeed> speeds)
    implements ExtraTest {
  /** The quantity: the first closing, from the first crossing of the low level. */
  public static final String CLOSING = "contact-closing";

  /** The quantity: from the closing to four fifths open. */
  public static final String DELAY = "contact-delay-to-80-percent-open";

  /** The quantity: from the closing to the slit of curtains at the centre. */
  public static final String DELAY_CURTAINS = "contact-delay-to-slit-at-centre";

  /** The quantity: from first closing to last opening. */
  public static final String DURATION = "contact-duration";

  /** The quantity: most bounces in one firing. */
  public static final String BOUNCES = "contact-bounces";

  /**
   * One marked speed.
   *
   * @param shots at least one
   */
  public record AtSpeed(MarkedSpeed speed, List<ContactShot> shots) {
    public AtSpeed {
      shots = List.copyOf(shots);
    }

    /** The firings in which it closed. */
    public List<ContactShot> closed() {
      return shots.stream().filter(ContactShot::hasClosing).toList();
    }

    /** How many firings the contact did this in. */
    public int count(ContactShot.How how) {
      return (int) shots.stream().filter(shot -> shot.how() == how).count();
    }

    /** How many firings an electronic flash would find this in. */
    public int count(ContactShot.Flash flash) {
      return (int) closed().stream().filter(shot -> shot.flash() == flash).count();
    }

    /** What an electronic flash would find at the worst of its firings. */
    public ContactShot.Flash flash() {
      return closed().stream()
          .map(ContactShot::flash)
          .max(Comparator.naturalOrder())
          .orElse(ContactShot.Flash.UNKNOWN);
    }

    /** See {@link ContactShot#delaySeconds}; empty where no firing has it. */
    public Optional<Sample> delaySeconds() {
      List<Double> delays = shots.stream().flatMap(shot -> shot.delaySeconds().stream()).toList();
      return delays.isEmpty() ? Optional.empty() : Optional.of(Sample.of(delays));
    }

    /** Most bounces in one firing in which it came to rest. */
    public int mostBounces() {
      return shots.stream()
          .filter(s -> s.how() == ContactShot.How.CLOSED)
          .mapToInt(ContactShot::bounces)
          .max()
          .orElse(0);
    }
  }

  public FlashContact {
    speeds = List.copyOf(speeds);
  }

  /** The contact of a run; empty without light at a marked speed, or where nobody wired it. */
  static Optional<FlashContact> of(ExtraTests.Run run) {
    if (!run.criteria().flashContact()
        && run.firings().stream()
            .allMatch(firing -> firing.firing().of(Channel.CONTACT).isEmpty())) {
      return Optional.empty();
    }
    Map<MarkedSpeed, List<ContactShot>> bySpeed =
        new TreeMap<>(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed());
    for (FiringResult firing : run.firings()) {
      // Light while cocking is no release, and no contact closes with it.
      if (firing.shown().isPresent()
          && firing.outcome().isOfTheShutter()
          && firing.rejection().isEmpty()) {
        ContactShot.of(firing)
            .ifPresent(
                shot ->
                    bySpeed
                        .computeIfAbsent(firing.shown().orElseThrow(), s -> new ArrayList<>())
                        .add(shot));
      }
    }
    List<AtSpeed> speeds = new ArrayList<>();
    bySpeed.forEach((speed, shots) -> speeds.add(new AtSpeed(speed, shots)));
    return speeds.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new FlashContact(
                run.of().number(),
                run.of().phase(),
                run.conditions().get(RunOption.SYNC_LEVER),
                speeds));
  }

  /** The speeds at which an electronic flash would find this at worst. */
  public List<MarkedSpeed> at(ContactShot.Flash flash) {
    return speeds.stream().filter(at -> at.flash() == flash).map(AtSpeed::speed).toList();
  }

  /** How many firings of the run the contact did this in. */
  public int count(ContactShot.How how) {
    return speeds.stream().mapToInt(at -> at.count(how)).sum();
  }

  /** The bulb classes that the delay fits at every speed that has one; classes overlap. */
  public List<BulbClass> classes() {
    List<Sample> delays = speeds.stream().flatMap(at -> at.delaySeconds().stream()).toList();
    return delays.isEmpty()
        ? List.of()
        : Arrays.stream(BulbClass.values())
            .filter(each -> delays.stream().allMatch(d -> fitting(d.mean().get()).contains(each)))
            .toList();
  }

  private List<BulbClass> fitting(double delaySeconds) {
    return isOfCurtains()
        ? BulbClass.fittingCurtains(delaySeconds)
        : BulbClass.fitting(delaySeconds);
  }

  /** Whether it is held against the window of two curtains. */
  public boolean isOfCurtains() {
    return speeds.stream().flatMap(at -> at.shots().stream()).anyMatch(ContactShot::curtains);
  }

  /** Whether a class whose delay is published fits; one from memory alone clears no contact. */
  private boolean isForBulbs() {
    return classes().stream().anyMatch(each -> !each.isFromMemory());
  }

  /** Whether the lever is at M and the contact closes as it should there; empty elsewhere. */
  public Optional<Boolean> isRightAtM() {
    return lever
        .filter(SyncLever.M::equals)
        .filter(m -> speeds.stream().anyMatch(at -> at.delaySeconds().isPresent()))
        .map(m -> classes().contains(BulbClass.M));
  }

  @Override
  public String what() {
    return "flash-contact";
  }

  @Override
  public CheckItem item() {
    return CheckItem.FLASH_CONTACT;
  }

  @Override
  public String setting() {
    return lever.map(SyncLever.WORDS::word).orElse("");
  }

  /**
   * A contact that fails to close, is always closed or chatters is at fault; so is one that is late
   * in any firing. With the lever at X an early one is at fault, at M one that does not have the
   * delay of that class. Where the lever is not known, an early one has to fit a class of bulbs
   * whose delay is published.
   */
  @Override
  public CheckState state() {
    if (count(ContactShot.How.CLOSED) < speeds.stream().mapToInt(at -> at.shots().size()).sum()) {
      return CheckState.FAULT;
    }
    if (!at(ContactShot.Flash.TOO_LATE).isEmpty()) {
      return CheckState.FAULT;
    }
    if (lever.equals(Optional.of(SyncLever.M))) {
      return isRightAtM()
          .map(right -> right ? CheckState.OK : CheckState.FAULT)
          .orElse(CheckState.NOT_TESTED);
    }
    if (!at(ContactShot.Flash.TOO_EARLY).isEmpty()) {
      return lever.isEmpty() && isForBulbs() ? CheckState.OK : CheckState.FAULT;
    }
    return at(ContactShot.Flash.WHILE_OPEN).isEmpty() ? CheckState.NOT_TESTED : CheckState.OK;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    for (AtSpeed at : speeds) {
      List<ContactShot> closed = at.closed();
      if (!closed.isEmpty()) {
        String label = at.speed().label();
        values.add(
            ExtraTestValue.mean(
                CLOSING,
                label,
                Sample.of(closed.stream().map(s -> s.closingSeconds() * 1e3).toList()),
                "ms"));
        at.delaySeconds()
            .ifPresent(
                delays ->
                    values.add(
                        ExtraTestValue.mean(
                            isOfCurtains() ? DELAY_CURTAINS : DELAY,
                            label,
                            Sample.of(Arrays.stream(delays.values()).map(s -> s * 1e3).toArray()),
                            "ms")));
        List<Double> lasting =
            closed.stream().map(s -> s.durationSeconds() * 1e3).filter(ms -> ms > 0).toList();
        if (!lasting.isEmpty()) {
          values.add(ExtraTestValue.mean(DURATION, label, Sample.of(lasting), "ms"));
        }
        values.add(ExtraTestValue.single(BOUNCES, label, at.mostBounces(), "count"));
      }
    }
    return values;
  }
}
