package org.halflight.upload;

/** The parts of an upload, in order. */
public enum UploadStep {
  /** The bootloader is looked for and asked for its chip. */
  SEARCHING,
  /** The image goes into the flash. */
  WRITING,
  /** The flash is read back and compared. */
  VERIFYING,
  /** The new firmware is to greet. */
  GREETING
}
