package org.halflight.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortDataListener;
import com.fazecast.jSerialComm.SerialPortEvent;
import java.util.concurrent.atomic.AtomicBoolean;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.words.Words;

/**
 * A serial port, 8 data bits, no parity, 1 stop bit, no flow control.
 *
 * <p>One thread may read while another writes; {@link #close} may come from any third one and ends
 * both. A write into a device that takes nothing more can hang until then, so whoever writes needs
 * someone else who notices the silence and closes.
 */
final class SerialLink implements Link {
  private static final int READ_WAIT_MILLIS = 100;

  /**
   * More than this waiting to be sent means that the device takes nothing: a command has at most 96
   * bytes, and at 115200 baud these are gone after 10 ms.
   */
  private static final int WAITING_BYTES_MOST = 1024;

  /** What the library calls an error of a read or a write. */
  private static final int ERROR = -1;

  private final SerialPort port;
  private final String name;
  private final AtomicBoolean closed = new AtomicBoolean();
  private volatile boolean unplugged;

  /**
   * @param port open
   */
  private SerialLink(SerialPort port, String name) {
    this.port = port;
    this.name = name;
  }

  /** Sets a port up, before it is opened. */
  static void setUp(SerialPort port, int baudRate) {
    port.setComPortParameters(baudRate, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
  }

  /** The link over an open port. */
  static SerialLink over(SerialPort port, String name) {
    SerialLink link = new SerialLink(port, name);
    port.addDataListener(link.new UnplugListener());
    return link;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public int read(byte[] buffer) {
    int count = port.readBytes(buffer, buffer.length);
    // isOpen() stays true after the plug was pulled; only the results of reads and writes, and the
    // event, tell.
    if (count == ERROR || (count == 0 && unplugged)) {
      throw lost();
    }
    return Math.max(count, 0);
  }

  @Override
  public void write(byte[] bytes) {
    if (unplugged || port.bytesAwaitingWrite() > WAITING_BYTES_MOST) {
      throw lost();
    }
    if (port.writeBytes(bytes, bytes.length) != bytes.length) {
      throw lost();
    }
  }

  @Override
  public void setBaudRate(int baudRate) {
    if (!port.setBaudRate(baudRate)) {
      throw lost();
    }
  }

  /** A pseudo-terminal has no such lines, and the library then says no. That is no trouble. */
  @Override
  @SuppressWarnings("ReturnValueIgnored")
  public void setDtr(boolean on) {
    if (on) {
      port.setDTR();
      port.setRTS();
    } else {
      port.clearDTR();
      port.clearRTS();
    }
  }

  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      port.closePort();
    }
  }

  private LinkLostException lost() {
    return new LinkLostException(
        Words.say(closed.get() ? "link.lost.closed" : "link.lost.away", name));
  }

  /**
   * Hears of the pulled plug. The library calls it again and again until the port is closed, from a
   * thread that closing waits for: so it only raises a flag.
   */
  private final class UnplugListener implements SerialPortDataListener {
    @Override
    public int getListeningEvents() {
      return SerialPort.LISTENING_EVENT_PORT_DISCONNECTED;
    }

    @Override
    public void serialEvent(SerialPortEvent event) {
      unplugged = true;
    }
  }
}
