package org.halflight.session;

import java.util.List;
import java.util.Optional;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;

/** Whether the knob contact does what it is there for while the linkage is tested. */
final class KnobWatch {
  private static final Optional<DialSetting> LINKAGE =
      Optional.of(new DialSetting.Untimed(UntimedTest.LINKAGE));

  private Optional<BoardTraits> board = Optional.empty();

  /** The contact was wired once: its foil touched the wire. */
  private boolean wasTouched;

  /** Since the press before. */
  private boolean hasLeft;

  private boolean saidMissing;

  void onRig(SessionInput.RigIs rig) {
    board = Optional.of(rig.board());
    saidMissing = false;
  }

  void onEdge(Edge edge) {
    if (edge.channel() == Channel.KNOB) {
      wasTouched = true;
      hasLeft |= !edge.high();
    }
  }

  void onBeat(int levels) {
    wasTouched |= (levels >> Channel.KNOB.code() & 1) != 0;
  }

  /** Adds what there is to say to what has just happened. */
  void look(List<SessionEvent> events) {
    for (SessionEvent event : List.copyOf(events)) {
      if (event instanceof SessionEvent.SettingShown shown && isMissedAt(shown)) {
        saidMissing = true;
        events.add(new SessionEvent.KnobContact(KnobTrouble.NOT_ON_THIS_RIG));
      } else if (event instanceof SessionEvent.SettingShown shown && isDeafAt(shown)) {
        saidMissing = true;
        events.add(new SessionEvent.KnobContact(KnobTrouble.NO_CLICKS));
      } else if (event instanceof SessionEvent.PressCounted counted) {
        if (wasTouched && !hasLeft && counted.press().wind() == WindState.TURNS) {
          events.add(new SessionEvent.KnobContact(KnobTrouble.NEVER_OPENED));
        }
        hasLeft = false;
      }
    }
  }

  private boolean isDeafAt(SessionEvent.SettingShown shown) {
    return !saidMissing
        && Optional.of(shown.setting()).equals(LINKAGE)
        && board.filter(its -> !its.clicks()).isPresent();
  }

  private boolean isMissedAt(SessionEvent.SettingShown shown) {
    return !saidMissing
        && Optional.of(shown.setting()).equals(LINKAGE)
        && board.filter(its -> !its.knob()).isPresent();
  }
}
