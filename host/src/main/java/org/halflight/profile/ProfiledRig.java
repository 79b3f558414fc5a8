package org.halflight.profile;

/**
 * Which rig a profile belongs to, as the rig's greeting says it.
 *
 * @param serial serial number
 * @param kind {@code full} or {@code small}
 * @param firmware version of the firmware
 */
public record ProfiledRig(String serial, String kind, String firmware) {
  public ProfiledRig {
    for (String word : new String[] {serial, kind, firmware}) {
      if (!word.matches("[A-Za-z0-9._-]+")) {
        throw new IllegalArgumentException("not a word of a greeting: '" + word + "'");
      }
    }
  }
}
