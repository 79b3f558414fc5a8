package org.halflight.upload;

/**
 * The bytes of the protocol that common bootloaders of boards with an ATmega328P speak: STK500,
 * version 1, as the application note AVR061 has it (from memory). The host sends a command that
 * ends with CRC_EOP; the board answers INSYNC, data if any, OK.
 */
final class Stk500 {
  static final int IN_SYNC = 0x14;
  static final int OK = 0x10;

  private static final int CRC_EOP = 0x20;
  private static final int GET_SYNC = 0x30;
  private static final int ENTER_PROGMODE = 0x50;
  private static final int LEAVE_PROGMODE = 0x51;
  private static final int LOAD_ADDRESS = 0x55;
  private static final int PROG_PAGE = 0x64;
  private static final int READ_PAGE = 0x74;
  private static final int READ_SIGN = 0x75;

  /** The kind of memory of a page: {@code E} would be the EEPROM, which is never asked for. */
  private static final int FLASH = 'F';

  private Stk500() {}

  static byte[] getSync() {
    return command(GET_SYNC);
  }

  static byte[] enterProgramming() {
    return command(ENTER_PROGMODE);
  }

  static byte[] leaveProgramming() {
    return command(LEAVE_PROGMODE);
  }

  static byte[] readSignature() {
    return command(READ_SIGN);
  }

  /** The place of the next page. The protocol counts words of two bytes, the low byte first. */
  static byte[] loadAddress(int byteAddress) {
    int word = byteAddress / 2;
    return command(LOAD_ADDRESS, word & 0xFF, word >> 8);
  }

  static byte[] readPage(int count) {
    return command(READ_PAGE, count >> 8, count & 0xFF, FLASH);
  }

  static byte[] programPage(byte[] page) {
    int[] words = new int[page.length + 4];
    words[0] = PROG_PAGE;
    words[1] = page.length >> 8;
    words[2] = page.length & 0xFF;
    words[3] = FLASH;
    for (int i = 0; i < page.length; i++) {
      words[i + 4] = page[i];
    }
    return command(words);
  }

  private static byte[] command(int... words) {
    byte[] bytes = new byte[words.length + 1];
    for (int i = 0; i < words.length; i++) {
      bytes[i] = (byte) words[i];
    }
    bytes[words.length] = CRC_EOP;
    return bytes;
  }
}
