package org.halflight.rig;

import java.util.List;
import org.halflight.rig.RigCommand.AskGreeting;
import org.halflight.rig.RigCommand.AskStatus;
import org.halflight.rig.RigCommand.AskThresholds;
import org.halflight.rig.RigCommand.CurveMode;
import org.halflight.rig.RigCommand.DriveReference;
import org.halflight.rig.RigCommand.MeasureLight;
import org.halflight.rig.RigCommand.Ping;
import org.halflight.rig.RigCommand.SetSerial;
import org.halflight.rig.RigCommand.SetThresholds;
import org.halflight.rig.RigCommand.SweepThreshold;
import org.halflight.rig.RigCommand.TakeCurves;

/**
 * The lines from host to rig: for each kind its letter and its fields, in the order of
 * docs/protocol.md. What a field may hold beside its digits, the command itself checks.
 */
final class CommandFields {
  private static final int SERIAL_CHARACTERS_MOST = 12;
  private static final List<CurveMode> CURVE_MODES = List.of(CurveMode.values());

  static final LineForms<RigCommand> FORMS =
      new LineForms<RigCommand>()
          .with('h', AskGreeting.class, f -> new AskGreeting())
          .with('s', AskStatus.class, f -> new AskStatus())
          .with('p', Ping.class, f -> new Ping(f.hex(4, 0xFFFF, Ping::token)))
          .with(
              't',
              SetThresholds.class,
              f ->
                  new SetThresholds(
                      f.hex(2, 0xFF, SetThresholds::lowCode),
                      f.hex(2, 0xFF, SetThresholds::highCode)))
          .with('v', AskThresholds.class, f -> new AskThresholds())
          .with(
              'm',
              MeasureLight.class,
              f ->
                  new MeasureLight(
                      f.channel(MeasureLight::channel), f.hex(4, 0xFFFF, MeasureLight::blocks)))
          .with(
              'i',
              SetSerial.class,
              f -> new SetSerial(f.word(SERIAL_CHARACTERS_MOST, SetSerial::serial)))
          .with(
              'c',
              TakeCurves.class,
              f -> new TakeCurves(f.coded(1, TakeCurves::mode, CURVE_MODES, CurveMode::code)))
          .with('r', DriveReference.class, CommandFields::driveReference)
          .with(
              'w',
              SweepThreshold.class,
              f ->
                  new SweepThreshold(
                      f.channel(SweepThreshold::channel),
                      f.hex(4, 0xFFFF, SweepThreshold::fromCode),
                      f.hex(4, 0xFFFF, SweepThreshold::toCode)));

  private CommandFields() {}

  private static DriveReference driveReference(Fields<DriveReference> f) {
    ReferenceDrive drive = f.drive(DriveReference::drive);
    long widthTicks = f.hex(8, DriveReference::widthTicks);
    int count = f.hex(4, 0xFFFF, DriveReference::count);
    // Width and count mean nothing without pulses, and are not looked at.
    return drive.isPulsed()
        ? new DriveReference(drive, widthTicks, count)
        : DriveReference.withoutPulses(drive);
  }
}
