package org.halflight.upload;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** All firmware that this program brings, one image for each kind of rig. */
public final class FirmwareImages {
  /**
   * Flash beside the largest bootloader that boards of this kind have, 2048 of 32768 bytes (data
   * sheet of the ATmega328P, boot size).
   */
  static final int BYTES_MOST = 30_720;

  private static final int COLUMNS = 5;

  private final List<FirmwareImage> images;

  private FirmwareImages(List<FirmwareImage> images) {
    this.images = List.copyOf(images);
  }

  /**
   * Reads the list and the files that it names.
   *
   * @param list lines of rig, version, bytes, file, SHA-256 of the file, with tabs between;
   *     comments begin with #
   * @param file contents of a file by its name
   * @throws UploadTrouble when anything is not as the list says
   */
  public static FirmwareImages read(String list, Function<String, Optional<byte[]>> file) {
    List<FirmwareImage> images = new ArrayList<>();
    for (String line : list.lines().filter(each -> !each.startsWith("#")).toList()) {
      images.add(image(line.split("\t", -1), file));
    }
    if (images.isEmpty()) {
      throw new UploadTrouble(UploadTrouble.Reason.DAMAGED_IMAGE, "images.tsv");
    }
    return new FirmwareImages(images);
  }

  private static FirmwareImage image(String[] its, Function<String, Optional<byte[]>> file) {
    if (its.length == COLUMNS) {
      Optional<byte[]> contents = file.apply(its[3]).filter(found -> sha256(found).equals(its[4]));
      Optional<byte[]> bytes =
          contents.flatMap(
              found ->
                  IntelHex.read(new String(found, StandardCharsets.US_ASCII), BYTES_MOST)
                      .filter(read -> String.valueOf(read.length).equals(its[2])));
      if (bytes.isPresent()) {
        return new FirmwareImage(its[0], its[1], its[4], bytes.get());
      }
    }
    throw new UploadTrouble(
        UploadTrouble.Reason.DAMAGED_IMAGE, its.length == COLUMNS ? its[3] : "images.tsv");
  }

  private static String sha256(byte[] contents) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(contents));
    } catch (NoSuchAlgorithmException never) {
      throw new IllegalStateException("every Java has SHA-256", never);
    }
  }

  /** All of them, in the order of the list. */
  public List<FirmwareImage> all() {
    return images;
  }

  /** The one for a rig, by the word of its greeting. */
  public Optional<FirmwareImage> of(String rig) {
    return images.stream().filter(image -> image.rig().equals(rig)).findFirst();
  }

  /** The words of all rigs, in the order of the list. */
  public List<String> rigs() {
    return images.stream().map(FirmwareImage::rig).toList();
  }
}
