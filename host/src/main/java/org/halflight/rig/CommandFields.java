package org.halflight.rig;

import java.util.Optional;
import org.halflight.rig.RigCommand.AskGreeting;
import org.halflight.rig.RigCommand.AskStatus;
import org.halflight.rig.RigCommand.AskThresholds;
import org.halflight.rig.RigCommand.DriveReference;
import org.halflight.rig.RigCommand.MeasureLight;
import org.halflight.rig.RigCommand.Ping;
import org.halflight.rig.RigCommand.SetSerial;
import org.halflight.rig.RigCommand.SetThresholds;
import org.halflight.rig.RigCommand.SweepThreshold;
import org.halflight.rig.RigCommand.TakeCurves;
import org.halflight.rig.RigCommand.TakeLongCurve;
import org.halflight.signal.Channel;

/** The fields of each kind of line from host to rig. */
final class CommandFields {
  static final String KINDS = "hsptvmicrw";

  /** The mode of light curves that asks for a long one. */
  private static final int LONG_CURVE = 2;

  private static final int SERIAL_CHARACTERS_MOST = 12;

  private CommandFields() {}

  static Optional<RigCommand> read(char kind, FieldReader fields) {
    return switch (kind) {
      case 'h' -> fields.make(AskGreeting::new);
      case 's' -> fields.make(AskStatus::new);
      case 'p' -> {
        int token = fields.hex(4, 0xFFFF);
        yield fields.make(() -> new Ping(token));
      }
      case 't' -> {
        int lowCode = fields.hex(2, 0xFF);
        int highCode = fields.hex(2, 0xFF);
        fields.require(lowCode < highCode);
        yield fields.make(() -> new SetThresholds(lowCode, highCode));
      }
      case 'v' -> fields.make(AskThresholds::new);
      case 'm' -> {
        Channel channel = fields.lightSensor();
        int blocks = fields.hex(4, 0xFFFF);
        yield fields.make(() -> new MeasureLight(channel, blocks));
      }
      case 'i' -> {
        String serial = fields.word(SERIAL_CHARACTERS_MOST);
        yield fields.make(() -> new SetSerial(serial));
      }
      case 'c' -> {
        int mode = fields.hex(1, LONG_CURVE);
        yield fields.make(
            () -> mode == LONG_CURVE ? new TakeLongCurve() : new TakeCurves(mode == 1));
      }
      case 'r' -> driveReference(fields);
      case 'w' -> sweepThreshold(fields);
      default -> throw new IllegalArgumentException("no kind of command: " + kind);
    };
  }

  private static Optional<RigCommand> driveReference(FieldReader fields) {
    Optional<ReferenceDrive> drive = ReferenceDrive.ofCode(fields.hex(1, 0xF));
    fields.require(drive.isPresent());
    long widthTicks = fields.hex(8);
    int count = fields.hex(4, 0xFFFF);
    if (drive.filter(ReferenceDrive::isPulsed).isPresent()) {
      fields.require(
          widthTicks >= DriveReference.WIDTH_TICKS_LEAST
              && widthTicks <= DriveReference.WIDTH_TICKS_MOST
              && count > 0);
      return fields.make(() -> new DriveReference(drive.orElseThrow(), widthTicks, count));
    }
    // Width and count mean nothing without pulses, and are not looked at.
    return fields.make(
        () ->
            drive.orElseThrow() == ReferenceDrive.STEADY
                ? DriveReference.steady()
                : DriveReference.off());
  }

  private static Optional<RigCommand> sweepThreshold(FieldReader fields) {
    Channel channel = fields.channel();
    fields.require(channel == Channel.CENTRE_LOW || channel == Channel.CENTRE_HIGH);
    int fromCode = fields.hex(4, 0xFFFF);
    int toCode = fields.hex(4, 0xFFFF);
    fields.require(SweepThreshold.isRange(fromCode, toCode));
    return fields.make(() -> new SweepThreshold(channel, fromCode, toCode));
  }

  static String body(int sequence, RigCommand command) {
    if (command instanceof AskGreeting) {
      return new FieldWriter('h', sequence).body();
    }
    if (command instanceof AskStatus) {
      return new FieldWriter('s', sequence).body();
    }
    if (command instanceof Ping it) {
      return new FieldWriter('p', sequence).hex(4, it.token()).body();
    }
    if (command instanceof SetThresholds it) {
      return new FieldWriter('t', sequence).hex(2, it.lowCode()).hex(2, it.highCode()).body();
    }
    if (command instanceof AskThresholds) {
      return new FieldWriter('v', sequence).body();
    }
    if (command instanceof MeasureLight it) {
      return new FieldWriter('m', sequence).hex(1, it.channel().code()).hex(4, it.blocks()).body();
    }
    if (command instanceof SetSerial it) {
      return new FieldWriter('i', sequence).word(it.serial()).body();
    }
    if (command instanceof TakeCurves it) {
      return new FieldWriter('c', sequence).bit(it.on()).body();
    }
    if (command instanceof TakeLongCurve) {
      return new FieldWriter('c', sequence).hex(1, LONG_CURVE).body();
    }
    if (command instanceof DriveReference it) {
      return new FieldWriter('r', sequence)
          .hex(1, it.drive().code())
          .hex(8, it.widthTicks())
          .hex(4, it.count())
          .body();
    }
    SweepThreshold it = (SweepThreshold) command;
    return new FieldWriter('w', sequence)
        .hex(1, it.channel().code())
        .hex(4, it.fromCode())
        .hex(4, it.toCode())
        .body();
  }
}
