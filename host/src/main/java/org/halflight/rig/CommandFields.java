package org.halflight.rig;

import java.util.Optional;
import org.halflight.rig.RigCommand.AskGreeting;
import org.halflight.rig.RigCommand.AskStatus;
import org.halflight.rig.RigCommand.AskThresholds;
import org.halflight.rig.RigCommand.MeasureLight;
import org.halflight.rig.RigCommand.Ping;
import org.halflight.rig.RigCommand.SetSerial;
import org.halflight.rig.RigCommand.SetThresholds;
import org.halflight.signal.Channel;

/** The fields of each kind of line from host to rig. */
final class CommandFields {
  static final String KINDS = "hsptvmi";

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
      default -> throw new IllegalArgumentException("no kind of command: " + kind);
    };
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
    SetSerial it = (SetSerial) command;
    return new FieldWriter('i', sequence).word(it.serial()).body();
  }
}
