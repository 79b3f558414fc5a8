package org.halflight.workflow;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.halflight.upload.FirmwareImages;
import org.halflight.upload.UploadTrouble;

/** The firmware images inside this program. */
public final class ShippedFirmware {
  private static final String LIST = "images.tsv";

  private ShippedFirmware() {}

  /**
   * All of them.
   *
   * @throws UploadTrouble when one is damaged
   */
  public static FirmwareImages images() {
    return FirmwareImages.read(
        contents(LIST)
            .map(list -> new String(list, StandardCharsets.US_ASCII))
            .orElseThrow(() -> new UploadTrouble(UploadTrouble.Reason.DAMAGED_IMAGE, LIST)),
        ShippedFirmware::contents);
  }

  /** All of them; empty when one is damaged. */
  public static Optional<FirmwareImages> ifWhole() {
    try {
      return Optional.of(images());
    } catch (UploadTrouble damaged) {
      return Optional.empty();
    }
  }

  private static Optional<byte[]> contents(String name) {
    try (InputStream in = FirmwareImages.class.getResourceAsStream(name)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }
}
