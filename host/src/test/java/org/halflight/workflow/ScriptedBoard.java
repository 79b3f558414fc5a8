package org.halflight.workflow;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.halflight.link.FakeClock;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;

/**
 * A board with a bootloader, as the application note AVR061 describes its protocol, and with what
 * was put into its flash: where that is an image of this program, the board greets as that rig. Its
 * own copy of the protocol, so that a slip in the client is not repeated here. Time goes on where
 * the host waits in vain.
 */
public final class ScriptedBoard implements Ports {
  static final String PATH = "/dev/board";

  private static final int WAIT_MILLIS = 100;
  private static final int PAGE = 128;
  private static final int RIG_BAUD = 250_000;

  private final FakeClock clock;
  private final byte[] flash = new byte[0x8000];
  private final byte[] eeprom = new byte[1024];
  private final ByteArrayOutputStream toHost = new ByteArrayOutputStream();
  private final ByteArrayOutputStream fromHost = new ByteArrayOutputStream();

  private int bootBaud = 115_200;
  private byte[] signature = HexFormat.of().parseHex("1E950F");
  private boolean hasBootloader = true;
  private boolean blinks;
  private int noisyStarts;
  private int cablePulledAtPage = Integer.MAX_VALUE;
  private int silentAtPage = Integer.MAX_VALUE;
  private int wornByte = -1;
  private Optional<String> otherGreeting = Optional.empty();

  private int highThreshold = 0xA200;

  private boolean inBootloader;
  private boolean dtr = true;
  private boolean pulled;
  private int baud;
  private int address;
  private int pagesWritten;
  private int restarts;
  private int blinking;
  private int refused;

  public ScriptedBoard(FakeClock clock) {
    this.clock = clock;
    Arrays.fill(flash, (byte) 0xFF);
    Arrays.fill(eeprom, (byte) 0xA5);
  }

  /** The image of a rig, read from the committed file in the tests' own way. */
  static byte[] image(String rig) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      for (String line : Files.readAllLines(Path.of("firmware/images", rig + ".hex"))) {
        if (line.startsWith("00", 7)) {
          bytes.writeBytes(HexFormat.of().parseHex(line, 9, line.length() - 2));
        }
      }
      return bytes.toByteArray();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Whether the flash begins with the image of a rig. */
  public boolean holds(String rig) {
    byte[] image = image(rig);
    return Arrays.equals(image, Arrays.copyOf(flash, image.length));
  }

  /** The firmware of a rig is on it already. */
  public ScriptedBoard with(String rig) {
    byte[] image = image(rig);
    System.arraycopy(image, 0, flash, 0, image.length);
    return this;
  }

  ScriptedBoard bootloaderAt(int baudRate) {
    bootBaud = baudRate;
    return this;
  }

  ScriptedBoard chip(String hexDigits) {
    signature = HexFormat.of().parseHex(hexDigits);
    return this;
  }

  ScriptedBoard withoutBootloader() {
    hasBootloader = false;
    return this;
  }

  /** The bootloader blinks for 400 ms before it listens, and its receiver holds two bytes. */
  ScriptedBoard blinksFirst() {
    blinks = true;
    return this;
  }

  /** What a rig was sending comes in front of the first answers. */
  ScriptedBoard noisyAtStart(int starts) {
    noisyStarts = starts;
    return this;
  }

  /** The cable is pulled once so many pages are written. */
  ScriptedBoard cablePulledAfter(int pages) {
    cablePulledAtPage = pages;
    return this;
  }

  /** Once so many pages are written, the board falls silent once. */
  ScriptedBoard silentAfter(int pages) {
    silentAtPage = pages;
    return this;
  }

  /** A byte of the flash that always reads 0. */
  ScriptedBoard wornAt(int byteAddress) {
    wornByte = byteAddress;
    return this;
  }

  /** Whatever is uploaded, the board greets with this firmware. */
  ScriptedBoard greetsWith(String firmware) {
    otherGreeting = Optional.of(firmware);
    return this;
  }

  /** What A4 reads, as a sum of 64 readings. */
  ScriptedBoard highThresholdReads(int sum64) {
    highThreshold = sum64;
    return this;
  }

  /** The board is plugged in again. */
  void plugIn() {
    pulled = false;
    cablePulledAtPage = Integer.MAX_VALUE;
    inBootloader = false;
  }

  byte[] flash() {
    return flash.clone();
  }

  byte[] eeprom() {
    return eeprom.clone();
  }

  int pagesWritten() {
    return pagesWritten;
  }

  int restarts() {
    return restarts;
  }

  /** Commands that this board does not know. */
  int refused() {
    return refused;
  }

  @Override
  public List<PortCandidate> candidates() {
    return pulled ? List.of() : List.of(new PortCandidate(PATH, "board", true));
  }

  @Override
  public Link open(PortCandidate candidate, int baudRate) {
    baud = baudRate;
    toHost.reset();
    fromHost.reset();
    return new BoardLink();
  }

  private void restart() {
    restarts++;
    inBootloader = hasBootloader;
    blinking = blinks ? 4 : 0;
    fromHost.reset();
    if (noisyStarts-- > 0) {
      toHost.writeBytes(new byte[] {0x14, 0x10, 0x33, 0x14});
    }
  }

  private void hear(byte[] bytes) {
    if (!inBootloader) {
      hearAsRig(bytes);
    } else if (baud != bootBaud) {
      // Not CRC_EOP where it should be: the bootloader gives up and starts what is in the flash.
      inBootloader = false;
      toHost.write(0x7F);
    } else if (blinking > 0) {
      fromHost.write(bytes, 0, Math.min(bytes.length, Math.max(0, 2 - fromHost.size())));
    } else {
      fromHost.writeBytes(bytes);
      obey();
    }
  }

  private void obey() {
    byte[] said = fromHost.toByteArray();
    int length = said.length == 0 ? 0 : lengthOf(said);
    if (length == 0 || said.length < length) {
      return;
    }
    fromHost.reset();
    if (said.length > length || said[length - 1] != 0x20) {
      inBootloader = false;
      return;
    }
    if (pagesWritten >= silentAtPage) {
      silentAtPage = Integer.MAX_VALUE;
      inBootloader = false;
      return;
    }
    toHost.write(0x14);
    perform(said);
    toHost.write(0x10);
    if (said[0] == 0x51) {
      inBootloader = false;
    }
  }

  private static int lengthOf(byte[] said) {
    return switch (said[0]) {
      case 0x55 -> 4;
      case 0x74 -> 5;
      case 0x64 -> said.length < 4 ? 5 : 4 + ((said[1] << 8) | (said[2] & 0xFF)) + 1;
      default -> 2;
    };
  }

  private void perform(byte[] said) {
    switch (said[0]) {
      case 0x30, 0x50, 0x51 -> {}
      case 0x55 -> address = 2 * ((said[1] & 0xFF) | (said[2] & 0xFF) << 8);
      case 0x75 -> toHost.writeBytes(signature);
      case 0x64 -> program(said);
      case 0x74 -> {
        byte[] memory = said[3] == 'F' ? flash : eeprom;
        toHost.write(memory, address, (said[1] << 8) | (said[2] & 0xFF));
      }
      default -> refused++;
    }
  }

  private void program(byte[] said) {
    byte[] memory = said[3] == 'F' ? flash : eeprom;
    int count = (said[1] << 8) | (said[2] & 0xFF);
    if (count != PAGE || address % PAGE != 0) {
      refused++;
    }
    System.arraycopy(said, 4, memory, address, count);
    if (wornByte >= 0) {
      flash[wornByte] = 0;
    }
    pagesWritten++;
    if (pagesWritten >= cablePulledAtPage) {
      pulled = true;
    }
  }

  private void hearAsRig(byte[] bytes) {
    String said = new String(bytes, StandardCharsets.US_ASCII);
    Optional<RigMessage.Greeting> greeting = greeting();
    if (baud == RIG_BAUD && said.startsWith("h ")) {
      greeting.ifPresent(this::say);
    } else if (baud == RIG_BAUD && said.startsWith("v ") && greeting.isPresent()) {
      say(new RigMessage.Thresholds(1, 0x2B, 0xA1, 0x2C00, highThreshold));
    }
  }

  private void say(RigMessage message) {
    toHost.writeBytes((LineCodec.format(message) + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  private Optional<RigMessage.Greeting> greeting() {
    return ShippedFirmware.images().all().stream()
        .filter(image -> holds(image.rig()))
        .findFirst()
        .map(
            image ->
                new RigMessage.Greeting(
                    0,
                    1,
                    16_000_000,
                    image.rig(),
                    image.rig().equals("small") ? 0xE1 : 0xFF,
                    "R-0001",
                    7,
                    "power",
                    otherGreeting.orElse(image.version()),
                    0x12C0));
  }

  private final class BoardLink implements Link {
    private boolean closed;

    @Override
    public String name() {
      return PATH;
    }

    @Override
    public int read(byte[] buffer) {
      synchronized (ScriptedBoard.this) {
        mustBeThere();
        byte[] bytes = toHost.toByteArray();
        toHost.reset();
        if (bytes.length == 0) {
          clock.passMillis(WAIT_MILLIS);
          if (blinking > 0 && --blinking == 0) {
            obey();
          }
        }
        System.arraycopy(bytes, 0, buffer, 0, bytes.length);
        return bytes.length;
      }
    }

    @Override
    public void write(byte[] bytes) {
      synchronized (ScriptedBoard.this) {
        mustBeThere();
        hear(bytes);
      }
    }

    @Override
    public void setBaudRate(int baudRate) {
      mustBeThere();
      baud = baudRate;
    }

    @Override
    public void setDtr(boolean on) {
      if (on && !dtr) {
        restart();
      }
      dtr = on;
    }

    @Override
    public void close() {
      closed = true;
    }

    private void mustBeThere() {
      if (pulled || closed) {
        throw new LinkLostException(PATH + " is gone");
      }
    }
  }
}
