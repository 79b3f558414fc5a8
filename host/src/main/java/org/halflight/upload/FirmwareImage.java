package org.halflight.upload;

import java.util.Arrays;

/** Firmware for one rig, as it is in the flash of its board from address 0 on. */
public final class FirmwareImage {
  private final String rig;
  private final String version;
  private final String checksum;
  private final byte[] bytes;

  /**
   * @param rig which one it is for, as the greeting says: {@code full} or {@code small}
   * @param version as the greeting says
   * @param checksum SHA-256 of its file, in hexadecimal digits
   * @param bytes what goes into the flash
   */
  FirmwareImage(String rig, String version, String checksum, byte[] bytes) {
    this.rig = rig;
    this.version = version;
    this.checksum = checksum;
    this.bytes = bytes.clone();
  }

  /** Which rig it is for, as the greeting says. */
  public String rig() {
    return rig;
  }

  /** Its version, as the greeting says. */
  public String version() {
    return version;
  }

  /** SHA-256 of its file, in hexadecimal digits. */
  public String checksum() {
    return checksum;
  }

  /** How many bytes of flash it takes. */
  public int size() {
    return bytes.length;
  }

  /** The page of the flash that begins there; behind the end of the image it is erased, FF. */
  byte[] page(int from, int pageBytes) {
    byte[] page = new byte[pageBytes];
    Arrays.fill(page, (byte) 0xFF);
    System.arraycopy(bytes, from, page, 0, Math.min(pageBytes, bytes.length - from));
    return page;
  }
}
