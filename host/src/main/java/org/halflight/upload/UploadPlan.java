package org.halflight.upload;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * What is said to a bootloader to put an image into the flash: is it the right chip, write page by
 * page, read all of it back, start. Nothing in it touches the EEPROM, where the rig keeps its
 * serial number.
 */
public final class UploadPlan {
  /** Bytes of a page of the ATmega328P's flash (data sheet, page size). */
  static final int PAGE_BYTES = 128;

  /** Signature bytes of ATmega328P and ATmega328 (data sheets). */
  private static final List<byte[]> CHIPS =
      List.of(HexFormat.of().parseHex("1E950F"), HexFormat.of().parseHex("1E9514"));

  private UploadPlan() {}

  /** The commands in order; each has its right answer before the next is sent. */
  public static List<Exchange> of(FirmwareImage image) {
    List<Exchange> plan = new ArrayList<>();
    plan.add(Exchange.plain(UploadStep.SEARCHING, Stk500.enterProgramming()));
    plan.add(Exchange.withData(UploadStep.SEARCHING, Stk500.readSignature(), CHIPS));
    for (int at = 0; at < image.size(); at += PAGE_BYTES) {
      plan.add(Exchange.plain(UploadStep.WRITING, Stk500.loadAddress(at)));
      plan.add(Exchange.plain(UploadStep.WRITING, Stk500.programPage(image.page(at, PAGE_BYTES))));
    }
    for (int at = 0; at < image.size(); at += PAGE_BYTES) {
      plan.add(Exchange.plain(UploadStep.VERIFYING, Stk500.loadAddress(at)));
      plan.add(
          Exchange.withData(
              UploadStep.VERIFYING,
              Stk500.readPage(PAGE_BYTES),
              List.of(image.page(at, PAGE_BYTES))));
    }
    plan.add(Exchange.plain(UploadStep.GREETING, Stk500.leaveProgramming()));
    return plan;
  }
}
