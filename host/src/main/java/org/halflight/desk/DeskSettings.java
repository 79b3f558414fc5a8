package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.SoundsOn;
import org.halflight.files.SettingsFile;
import org.halflight.profile.ProfileFit;
import org.halflight.session.RunOption;

/**
 * What the person likes, kept beside the record. It may get lost: then things are as usual.
 *
 * @param folder where it is kept
 * @param dark light letters on a dark ground
 * @param sounds which sounds are played
 * @param profileDays how many days old a rig profile may be to count as calibrated
 * @param pedals keys that are a pedal
 * @param options what the verdicts of the next camera's runs are about
 */
record DeskSettings(
    Path folder,
    boolean dark,
    SoundsOn sounds,
    int profileDays,
    Map<Pedal.Use, Pedal.Key> pedals,
    Map<RunOption<?>, String> options) {
  /** A wire on the flash contact is looked at anew each time; curtains are those of a camera. */
  private static final List<RunOption<?>> KEPT =
      RunOption.CRITERIA.stream()
          .filter(
              option -> option.isOffered() && option != RunOption.CONTACT && !option.isOfCurtains())
          .toList();

  private static final String SOUNDS_OFF = "sounds-off";

  /** What earlier versions wrote for an option that holds. */
  private static final String YES = "true";

  DeskSettings(Path folder, boolean dark, boolean sounds, int profileDays) {
    this(folder, dark, new SoundsOn(sounds, Set.of()), profileDays, Map.of(), Map.of());
  }

  /** The settings of a folder, or the usual ones. */
  static DeskSettings of(Path folder) {
    Properties kept = SettingsFile.read(folder);
    return new DeskSettings(
        folder,
        Boolean.parseBoolean(kept.getProperty("dark", "false")),
        sounds(kept),
        days(kept.getProperty("profile-days", "")),
        pedals(kept),
        options(kept));
  }

  private static SoundsOn sounds(Properties kept) {
    return new SoundsOn(
        Boolean.parseBoolean(kept.getProperty("sounds", "true")),
        Stream.of(kept.getProperty(SOUNDS_OFF, "").split(" ", -1))
            .flatMap(word -> SoundKind.WORDS.find(word).stream())
            .collect(Collectors.toSet()));
  }

  private static Map<Pedal.Use, Pedal.Key> pedals(Properties kept) {
    Map<Pedal.Use, Pedal.Key> pedals = new EnumMap<>(Pedal.Use.class);
    for (Pedal.Use use : Pedal.Use.values()) {
      Pedal.Key.parse(kept.getProperty(property(use), "")).ifPresent(key -> pedals.put(use, key));
    }
    return pedals;
  }

  private static String property(Pedal.Use use) {
    return switch (use) {
      case GO -> "pedal";
      case BACK -> "pedal-back";
    };
  }

  private static int days(String text) {
    try {
      return Math.max(1, Integer.parseInt(text));
    } catch (NumberFormatException unset) {
      return ProfileFit.USUAL_MOST_DAYS;
    }
  }

  /** As it was typed: what cannot be read is not begun with, and the form of the run says why. */
  private static Map<RunOption<?>, String> options(Properties kept) {
    Map<RunOption<?>, String> options = new LinkedHashMap<>();
    for (RunOption<?> option : KEPT) {
      String text = kept.getProperty(option.name(), "");
      boolean said = option.words().isEmpty() || option.words().contains(text);
      options.put(option, said ? text : text.equals(YES) ? option.words().get(0) : "");
    }
    return options;
  }

  DeskSettings with(boolean nowDark, SoundsOn nowSounds, Map<Pedal.Use, Pedal.Key> nowPedals) {
    return new DeskSettings(folder, nowDark, nowSounds, profileDays, nowPedals, options);
  }

  DeskSettings with(Map<RunOption<?>, String> nowOptions) {
    Map<RunOption<?>, String> kept = new LinkedHashMap<>(nowOptions);
    kept.keySet().retainAll(KEPT);
    return new DeskSettings(folder, dark, sounds, profileDays, pedals, kept);
  }

  /** Keeps them, where the folder can be written to. */
  void keep() {
    try {
      SettingsFile.change(folder, this::keepIn);
    } catch (IOException notKept) {
      // Nothing that was measured depends on it.
      return;
    }
  }

  private void keepIn(Properties kept) {
    kept.setProperty("dark", String.valueOf(dark));
    kept.setProperty("sounds", String.valueOf(sounds.all()));
    kept.setProperty(
        SOUNDS_OFF,
        sounds.off().stream().map(SoundKind.WORDS::word).sorted().collect(Collectors.joining(" ")));
    for (Pedal.Use use : Pedal.Use.values()) {
      kept.remove(property(use));
    }
    pedals.forEach((use, key) -> kept.setProperty(property(use), key.toString()));
    kept.setProperty("profile-days", String.valueOf(profileDays));
    KEPT.forEach(option -> kept.setProperty(option.name(), options.getOrDefault(option, "")));
  }
}
