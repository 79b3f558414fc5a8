package org.halflight.upload;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** One command to the bootloader, and what its answer must be. */
public final class Exchange {
  /** What an answer is so far. */
  public enum Answer {
    /** It is not whole yet. */
    UNFINISHED,
    /** It is whole and right. */
    RIGHT,
    /** It is no answer to this command. */
    GARBLED,
    /** The data in it are not those that were asked for. */
    DIFFERS
  }

  private final UploadStep step;
  private final byte[] request;
  private final List<byte[]> rightData;

  private Exchange(UploadStep step, byte[] request, List<byte[]> rightData) {
    this.step = step;
    this.request = request;
    this.rightData = rightData;
  }

  /** A command whose answer has no data. */
  static Exchange plain(UploadStep step, byte[] request) {
    return new Exchange(step, request, List.of(new byte[0]));
  }

  /**
   * A command whose answer has data.
   *
   * @param rightData what they may be; all of one length
   */
  static Exchange withData(UploadStep step, byte[] request, List<byte[]> rightData) {
    return new Exchange(step, request, List.copyOf(rightData));
  }

  /** The question whether a bootloader is there and awake. */
  public static Exchange sync() {
    return plain(UploadStep.SEARCHING, Stk500.getSync());
  }

  /** Which part of the upload it belongs to. */
  public UploadStep step() {
    return step;
  }

  /** The bytes to send. */
  public byte[] request() {
    return request.clone();
  }

  /** What the bytes that came since the command amount to. */
  public Answer answer(byte[] came) {
    int whole = rightData.get(0).length + 2;
    boolean framed =
        (came.length < 1 || came[0] == Stk500.IN_SYNC)
            && came.length <= whole
            && (came.length < whole || came[whole - 1] == Stk500.OK);
    if (!framed) {
      return Answer.GARBLED;
    }
    if (came.length < whole) {
      return Answer.UNFINISHED;
    }
    byte[] data = Arrays.copyOfRange(came, 1, whole - 1);
    boolean right = rightData.stream().anyMatch(each -> Arrays.equals(each, data));
    return right ? Answer.RIGHT : Answer.DIFFERS;
  }

  /**
   * Whether what came at the question for a bootloader ends as its answer does. In front of it may
   * be anything: what the board sent before it was restarted.
   */
  public static boolean endsInSync(byte[] came) {
    int count = came.length;
    return count >= 2 && came[count - 2] == Stk500.IN_SYNC && came[count - 1] == Stk500.OK;
  }

  /**
   * The trouble that an answer means when no more comes.
   *
   * @param port where the board is, for the sentence
   * @return empty when it is right
   */
  public Optional<UploadTrouble> trouble(byte[] came, String port) {
    return switch (answer(came)) {
      case RIGHT -> Optional.empty();
      case UNFINISHED -> Optional.of(new UploadTrouble(UploadTrouble.Reason.SILENT, port));
      case GARBLED -> Optional.of(new UploadTrouble(UploadTrouble.Reason.GARBLED, port));
      case DIFFERS ->
          Optional.of(
              step == UploadStep.SEARCHING
                  ? new UploadTrouble(UploadTrouble.Reason.OTHER_CHIP, port, dataOf(came))
                  : new UploadTrouble(UploadTrouble.Reason.DIFFERS, port));
    };
  }

  private static String dataOf(byte[] came) {
    return HexFormat.ofDelimiter(" ").withUpperCase().formatHex(came, 1, came.length - 1);
  }
}
