package org.halflight.link.serial;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Tells ports that look like an ATmega328P board from others. */
final class BoardSigns {
  /**
   * USB vendors whose serial devices are boards of this kind, as in the udev rules that come with
   * these boards.
   */
  private static final Set<Integer> BOARD_VENDORS = Set.of(0x2341, 0x2A03);

  /**
   * USB serial chips on such boards by vendor and product, as in the tables of the Linux drivers
   * ch341, ftdi_sio, cp210x and pl2303; 1A86:55D4, a chip that needs none of these, as in udev
   * rules for it.
   */
  private static final Map<Integer, Set<Integer>> SERIAL_CHIPS =
      Map.of(
          0x1A86, Set.of(0x7523, 0x55D4),
          0x4348, Set.of(0x5523),
          0x0403, Set.of(0x6001, 0x6015),
          0x10C4, Set.of(0xEA60),
          0x067B, Set.of(0x2303));

  /** Words in what systems call such a port; from memory. */
  private static final List<String> WORDS =
      List.of("arduino", "ch340", "ch341", "ft232", "cp210", "usb serial", "usb-serial");

  private BoardSigns() {}

  /**
   * @param vendorId USB vendor, below 1 where not known
   * @param productId USB product
   * @param description what the system calls the port; counts only without a vendor
   */
  static boolean show(int vendorId, int productId, String description) {
    if (vendorId > 0) {
      return BOARD_VENDORS.contains(vendorId)
          || SERIAL_CHIPS.getOrDefault(vendorId, Set.of()).contains(productId);
    }
    String lower = description.toLowerCase(Locale.ROOT);
    return WORDS.stream().anyMatch(lower::contains);
  }
}
