package org.halflight.upload;

import java.util.Arrays;

/** Firmware on a rig, compared with the one that this program brings for that kind of rig. */
public enum FirmwareAge {
  /** Older: it works, without what came later. */
  OLDER,
  /** The same version. */
  SAME,
  /** Newer than this program. */
  NEWER,
  /** One of the two is no version of three numbers, or there is no image for this kind of rig. */
  NOT_KNOWN;

  private static final String VERSION = "\\d{1,4}\\.\\d{1,4}\\.\\d{1,4}";

  /**
   * Compares two versions by their numbers.
   *
   * @param onRig as the greeting says
   * @param brought as the list of images says
   */
  public static FirmwareAge of(String onRig, String brought) {
    if (!onRig.matches(VERSION) || !brought.matches(VERSION)) {
      return NOT_KNOWN;
    }
    int order = Arrays.compare(numbers(onRig), numbers(brought));
    return order == 0 ? SAME : order < 0 ? OLDER : NEWER;
  }

  private static int[] numbers(String version) {
    return Arrays.stream(version.split("\\.")).mapToInt(Integer::parseInt).toArray();
  }
}
