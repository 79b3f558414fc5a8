package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.words.Words;

/** What the menu offers: every act, in groups, with its key, and whether it means anything now. */
public final class MenuList {
  /** Acts that belong together, in the order of the menu. */
  public enum Group {
    PLACES,
    EDIT,
    FIRING,
    RUN,
    CURTAINS,
    CONDITIONS,
    PRACTICE,
    VIEW,
    HELP
  }

  /**
   * One act.
   *
   * @param words what it does
   * @param key the name of its key
   * @param isEnabled whether it means anything now
   * @param isOn whether it is on; empty for what cannot be
   */
  public record Entry(
      UserAction act, String words, String key, boolean isEnabled, Optional<Boolean> isOn) {}

  /**
   * How the window is.
   *
   * @param view what is known of the bench; empty before it has begun
   * @param isAtBench whether the keys of the bench work at the place on the screen
   * @param undo what would be undone there
   * @param redo what would be done again there
   * @param tables whether pictures are tables
   * @param sounds whether sounds are on
   */
  public record Now(
      Optional<BenchView> view,
      boolean isAtBench,
      Optional<String> undo,
      Optional<String> redo,
      boolean tables,
      boolean sounds) {}

  private MenuList() {}

  /** The menu. */
  public static Map<Group, List<Entry>> of(Now now) {
    Map<Group, List<Entry>> menu = new EnumMap<>(Group.class);
    for (UserAction act : UserAction.values()) {
      if (act != UserAction.MENU) {
        menu.computeIfAbsent(group(act), each -> new ArrayList<>()).add(entry(act, now));
      }
    }
    Objects.requireNonNull(menu.get(Group.PLACES))
        .sort(
            Comparator.comparing((Entry entry) -> entry.key().length()).thenComparing(Entry::key));
    return menu;
  }

  private static Entry entry(UserAction act, Now now) {
    return new Entry(
        act, words(act, now), KeyHints.keyName(act), isEnabled(act, now), isOn(act, now));
  }

  private static String words(UserAction act, Now now) {
    Optional<String> said =
        switch (act) {
          case UNDO -> now.undo().map(words -> Words.say("desk.menu.undo", words));
          case REDO -> now.redo().map(words -> Words.say("desk.menu.redo", words));
          case CHANGE_BENCH -> now.view().map(view -> KeyHints.otherBench(view.link()));
          default -> Optional.empty();
        };
    String words = said.orElseGet(() -> KeyHints.words(act));
    return KeyHints.begun(words);
  }

  /** Acts that belong to no other group change how things are shown. */
  private static Group group(UserAction act) {
    return switch (act) {
      case TO_BENCH, TO_LIGHT, TO_CAMERA, TO_RUN, TO_TRIED, TO_CAMERAS, TO_RIG, TO_FIRST_LIGHT ->
          Group.PLACES;
      case UNDO, REDO -> Group.EDIT;
      case ACCEPT,
          WIND_TURNS,
          WIND_LOCKED,
          SKIP_READING,
          STOP_READING,
          FULL_LIGHT,
          AIM_LIGHT,
          SET_LIGHT,
          CHECK_SCREEN,
          REJECT,
          REASON,
          MOVE,
          CLOSED_BY_HAND,
          LEARN_COCKING,
          LENS_CAP,
          MARK ->
          Group.FIRING;
      case NEXT,
          PREVIOUS,
          LOOK_SLOWER,
          LOOK_FASTER,
          CHOOSE,
          TWO,
          SWITCH_COVER,
          SWITCH_CELLS,
          SWITCH_PLACE ->
          Group.RUN;
      case FIRE, COCK, PRACTICE, CHANGE_BENCH -> Group.PRACTICE;
      case KEYS, HELP, ABOUT, QUIT -> Group.HELP;
      default ->
          CurtainKeys.isOfCurtains(act)
              ? Group.CURTAINS
              : ConditionKeys.of(act).isPresent() ? Group.CONDITIONS : Group.VIEW;
    };
  }

  private static boolean isEnabled(UserAction act, Now now) {
    if (act == UserAction.UNDO || act == UserAction.REDO) {
      return (act == UserAction.UNDO ? now.undo() : now.redo()).isPresent();
    }
    if (act == UserAction.CHANGE_BENCH) {
      return now.view().isPresent();
    }
    if (KeyMap.isEverywhere(act)) {
      return act != UserAction.PRACTICE
          || now.view().filter(v -> v.link().isPractice()).isPresent();
    }
    return now.isAtBench() && now.view().filter(view -> means(act, view)).isPresent();
  }

  /** Whether an act of the bench means anything now. */
  private static boolean means(UserAction act, BenchView view) {
    Optional<RunSetup> setup = view.setup();
    boolean isStage = setup.filter(RunSetup::isStage).isPresent();
    return switch (act) {
      case ACCEPT, WIND_TURNS, WIND_LOCKED, SKIP_READING, STOP_READING ->
          KeyHints.of(view).stream().anyMatch(hint -> hint.act() == act);
      case MOVE -> view.question().isPresent();
      case CLOSED_BY_HAND -> view.openSeconds().isPresent();
      case FULL_LIGHT -> view.link().isUp() && !view.lightTest().isUnderWay();
      case REJECT, DETAILS, CURVE -> !view.results().isEmpty();
      case REASON ->
          view.results().stream().map(FiringResult::rejection).anyMatch(Optional::isPresent);
      case NEXT, PREVIOUS, LOOK_SLOWER, LOOK_FASTER, CHOOSE -> setup.isPresent();
      case MARK, TWO ->
          (!isStage && setup.filter(each -> each.phase() == Phase.ADJUSTING).isPresent())
              || KeyHints.of(view).stream().anyMatch(hint -> hint.act() == act);
      case SWITCH_COVER, SWITCH_CELLS, SWITCH_PLACE -> isStage;
      case FIRE, COCK -> view.link().isPractice();
      default ->
          CurtainKeys.isOfCurtains(act)
              ? CurtainKeys.means(act, view)
              : ConditionKeys.of(act).isEmpty() || setup.isPresent();
    };
  }

  private static Optional<Boolean> isOn(UserAction act, Now now) {
    return switch (act) {
      case TABLES -> Optional.of(now.tables());
      case SOUNDS -> Optional.of(now.sounds());
      case LENS_CAP -> Optional.of(now.view().filter(BenchView::capOn).isPresent());
      case TWO -> Optional.of(now.view().flatMap(BenchView::two).isPresent());
      default ->
          now.view()
              .filter(view -> CurtainKeys.STEPS.containsKey(act) && CurtainBench.isLed(view))
              .map(view -> CurtainKeys.STEPS.get(act) == CurtainBench.step(view));
    };
  }
}
