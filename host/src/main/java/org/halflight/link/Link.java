package org.halflight.link;

/**
 * Bytes to and from a rig. One thread may read while another writes; no call waits for ever.
 *
 * <p>A link that is gone stays gone: open a new one.
 */
public interface Link extends AutoCloseable {
  /** What the person calls this link: a port name, or {@code practice}. */
  String name();

  /**
   * Waits a short while for bytes (at most about 100 ms).
   *
   * @return how many bytes were put at the start of {@code buffer}; 0 when none came
   * @throws LinkLostException when the other side is gone
   */
  int read(byte[] buffer);

  /**
   * Sends all bytes.
   *
   * @throws LinkLostException when the other side is gone or takes nothing
   */
  void write(byte[] bytes);

  /**
   * Changes the speed without opening anew. A link that has no speed takes any.
   *
   * @param baudRate bits a second, above zero
   * @throws LinkLostException when the port does not take it
   */
  default void setBaudRate(int baudRate) {}

  /**
   * Sets the lines DTR and RTS. On most boards, DTR restarts the board as it goes on. A link
   * without these lines does nothing.
   */
  default void setDtr(boolean on) {}

  /** Lets go of the port. May be called twice, and from any thread. */
  @Override
  void close();
}
