package org.halflight.cli;

import java.lang.reflect.Method;
import java.util.Map;
import java.util.stream.Stream;
import org.halflight.files.FaultLog;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;

/** All commands. Without one, the practice run. */
@Command(name = "halflight")
public final class Halflight {
  /** Options that were called otherwise in earlier versions; scripts of people have them. */
  private static final Map<String, String> OLD_SPELLINGS = Map.of("--everyday", "--extra-tests");

  private final Surroundings surroundings;
  private final CommandLine commands;

  private Halflight(Surroundings surroundings) {
    this.commands = new CommandLine(this);
    commands.addSubcommand(new RigsCommand(surroundings));
    commands.addSubcommand(new FirmwareCommand(surroundings));
    commands.addSubcommand(new FirstLightCommand(surroundings));
    commands.addSubcommand(new AimCommand(surroundings));
    commands.addSubcommand(new LightCommand(surroundings));
    commands.addSubcommand(new RunCommand(surroundings));
    commands.addSubcommand(new LeakCommand(surroundings));
    commands.addSubcommand(new StopsCommand(surroundings));
    commands.addSubcommand(new PanelCommand(surroundings));
    commands.addSubcommand(new ReplayCommand(surroundings));
    commands.addSubcommand(new ExportCommand(surroundings));
    commands.addSubcommand(new PictureCommand(surroundings));
    commands.addSubcommand(new CompareCommand(surroundings));
    commands.addSubcommand(new PageCommand(surroundings));
    commands.addSubcommand(new WorkshopCommand(surroundings));
    commands.addSubcommand(new RecordCommand(surroundings));
    commands.addSubcommand(new CalibrateCommand(surroundings));
    commands.addSubcommand(new CheckCommand(surroundings));
    commands.addSubcommand(new ClockCommand(surroundings));
    commands.addSubcommand(new ProfileCommand(surroundings));
    commands.addSubcommand(new GaugeCommand(surroundings));
    commands.addSubcommand(
        new CommandLine(new DiscCommand(surroundings))
            .addSubcommand(new DiscReadCommand(surroundings)));
    commands.addSubcommand(new HolderCommand(surroundings));
    commands.addSubcommand(new PracticeCommand(surroundings));
    giveHelp(commands);
    HelpTexts.into(commands);
    TypedValues.in(commands);
    // A label that begins with @ is a label, and no file to read more words from.
    commands.setExpandAtFiles(false);
    this.surroundings = surroundings;
    commands.setParameterExceptionHandler((bad, words) -> notUnderstood(bad));
    commands.setExecutionExceptionHandler((fault, command, parsed) -> failed(fault, command));
    commands.setOut(surroundings.terminal().writer());
    commands.setErr(surroundings.terminal().writer());
    commands.getCommandSpec().version(Words.say("version", surroundings.version()));
  }

  private static void giveHelp(CommandLine command) {
    CommandSpec spec = command.getCommandSpec();
    if (spec.userObject() instanceof Method) {
      // Behind the parameters of the method: the standard options would take their places.
      spec.addOption(
          OptionSpec.builder("-h", "--help").usageHelp(true).descriptionKey("help").build());
    } else {
      spec.mixinStandardHelpOptions(true);
    }
    command.getSubcommands().values().stream().distinct().forEach(Halflight::giveHelp);
  }

  /** All commands with their words. */
  static CommandLine model(Surroundings surroundings) {
    return new Halflight(surroundings).commands;
  }

  private int notUnderstood(ParameterException bad) {
    CommandLine command = bad.getCommandLine();
    surroundings
        .terminal()
        .say(
            Words.say(
                "cli.notUnderstood",
                CommandTroubles.sentence(bad),
                command.getCommandSpec().qualifiedName()));
    return command.getCommandSpec().exitCodeOnInvalidInput();
  }

  /** A trouble has its own sentence; anything else is a fault of this program. */
  private int failed(Throwable fault, CommandLine command) {
    surroundings
        .terminal()
        .say(
            fault instanceof Trouble trouble
                ? trouble.getMessage()
                : new FaultLog(surroundings.folder(), surroundings.date())
                    .ends(
                        fault,
                        Words.say("fault.at.command", command.getCommandSpec().qualifiedName())));
    return command.getCommandSpec().exitCodeOnExecutionException();
  }

  /**
   * Does what the words of a command line say.
   *
   * @return 0 when it was done, 1 when it could not be, 2 when the words were not understood
   */
  public static int execute(Surroundings surroundings, String... words) {
    String[] asked =
        words.length == 0
            ? new String[] {"practice"}
            : Stream.of(words)
                .map(word -> OLD_SPELLINGS.getOrDefault(word, word))
                .toArray(String[]::new);
    Halflight halflight = new Halflight(surroundings);
    try {
      return halflight.commands.execute(asked);
    } catch (RuntimeException | Error fault) {
      return halflight.failed(fault, halflight.commands);
    }
  }
}
