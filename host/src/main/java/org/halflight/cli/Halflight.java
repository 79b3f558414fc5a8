package org.halflight.cli;

import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** All commands. Without one, the practice run. */
@Command(
    name = "halflight",
    mixinStandardHelpOptions = true,
    description =
        "Measures the shutters of mechanical cameras with a light rig. Without a command it does"
            + " the practice run.",
    footer = {
      "",
      "Cautions: bright lamps can hurt eyes; old flash contacts can carry high voltage, so never",
      "connect a flash unit to the rig; springs under tension jump; follow local rules for solvents."
    })
public final class Halflight {
  private final CommandLine commands;

  private Halflight(Surroundings surroundings) {
    this.commands = new CommandLine(this);
    commands.addSubcommand(new RigsCommand(surroundings));
    commands.addSubcommand(new LightCommand(surroundings));
    commands.addSubcommand(new RunCommand(surroundings));
    commands.addSubcommand(new LeakCommand(surroundings));
    commands.addSubcommand(new StopsCommand(surroundings));
    commands.addSubcommand(new ReplayCommand(surroundings));
    commands.addSubcommand(new ExportCommand(surroundings));
    commands.addSubcommand(new PictureCommand(surroundings));
    commands.addSubcommand(new CompareCommand(surroundings));
    commands.addSubcommand(new PageCommand(surroundings));
    commands.addSubcommand(new RecordCommand(surroundings));
    commands.addSubcommand(new CalibrateCommand(surroundings));
    commands.addSubcommand(new CheckCommand(surroundings));
    commands.addSubcommand(new ClockCommand(surroundings));
    commands.addSubcommand(new ProfileCommand(surroundings));
    commands.addSubcommand(new GaugeCommand(surroundings));
    commands.addSubcommand(
        new CommandLine(new DiscCommand(surroundings))
            .addSubcommand(new DiscReadCommand(surroundings)));
    commands.addSubcommand(new PracticeCommand(surroundings));
    commands
        .getSubcommands()
        .values()
        .forEach(command -> command.getCommandSpec().mixinStandardHelpOptions(true));
    commands.setExecutionExceptionHandler(
        (exception, command, parsed) -> {
          if (exception instanceof Trouble) {
            surroundings.terminal().say(exception.getMessage());
            return 1;
          }
          throw exception;
        });
    commands.setOut(surroundings.terminal().writer());
    commands.setErr(surroundings.terminal().writer());
    commands.getCommandSpec().version(Words.say("version", surroundings.version()));
  }

  /**
   * Does what the words of a command line say.
   *
   * @return 0 when it was done, 1 when it could not be, 2 when the words were not understood
   */
  public static int execute(Surroundings surroundings, String... words) {
    String[] asked = words.length == 0 ? new String[] {"practice"} : words;
    return new Halflight(surroundings).commands.execute(asked);
  }
}
