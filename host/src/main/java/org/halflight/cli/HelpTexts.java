package org.halflight.cli;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/**
 * The help of every command from the bundle of sentences: {@code help.run} for a command, {@code
 * help.run.firings} for an option or parameter of it, {@code help.any.rig} where commands share
 * one, {@code help.run.example} for an example.
 */
final class HelpTexts {
  private static final String GROUP = "help.";

  private final Map<String, String> ofArguments = new LinkedHashMap<>();

  private HelpTexts() {}

  /** Gives all commands their help. */
  static void into(CommandLine commands) {
    HelpTexts texts = new HelpTexts();
    texts.command(commands);
    commands.setResourceBundle(texts.forPicocli());
  }

  /** Where the help of a command is in the bundle: {@code help.disc.read}. */
  static String key(CommandSpec command) {
    String name = command.qualifiedName(".");
    int root = name.indexOf('.');
    return GROUP + (root < 0 ? name : name.substring(root + 1));
  }

  /** Where the help of an option or parameter is in the bundle. */
  static String key(CommandSpec command, ArgSpec argument) {
    String own = key(command) + "." + name(argument);
    return Words.has(own) ? own : GROUP + "any." + name(argument);
  }

  private void command(CommandLine commandLine) {
    CommandSpec command = commandLine.getCommandSpec();
    UsageMessageSpec usage = command.usageMessage();
    usage.synopsisHeading(Words.say("help.usage") + " ");
    usage.commandListHeading(Words.say("help.commands") + "%n");
    usage.description(forPicocli(Words.say(key(command))));
    String example = forPicocli(Words.say(key(command) + ".example"));
    usage.footer(
        command.parent() == null
            ? new String[] {"", forPicocli(Words.say("help.cautions"))}
            : new String[] {Words.say("help.example") + " " + example});
    for (ArgSpec argument : command.args()) {
      if (argument.description().length == 0 || isOfPicocli(argument)) {
        ofArguments.put(
            command.qualifiedName(".") + "." + picocliName(argument),
            forPicocli(Words.say(key(command, argument))));
      }
    }
    commandLine.getSubcommands().values().stream().distinct().forEach(this::command);
  }

  private static boolean isOfPicocli(ArgSpec argument) {
    return argument instanceof OptionSpec option && (option.usageHelp() || option.versionHelp());
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option
        ? plain(option)
        : argument.paramLabel().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-")
            + (argument.isMultiValue() ? "s" : "");
  }

  private static String plain(OptionSpec option) {
    return Arrays.stream(option.names())
        .max(Comparator.comparingInt(String::length))
        .orElseThrow()
        .replaceFirst("^-+", "");
  }

  /** The name under which picocli asks a bundle for the help of an argument. */
  private static String picocliName(ArgSpec argument) {
    return !argument.descriptionKey().isEmpty()
        ? argument.descriptionKey()
        : argument instanceof PositionalParamSpec parameter
            ? parameter.paramLabel() + "[" + parameter.index() + "]"
            : plain((OptionSpec) argument);
  }

  /** A percent sign begins a place to fill in. */
  private static String forPicocli(String text) {
    return text.replace("%", "%%");
  }

  private ResourceBundle forPicocli() {
    return new ResourceBundle() {
      @Override
      protected @Nullable Object handleGetObject(String key) {
        return ofArguments.get(key);
      }

      @Override
      public Enumeration<String> getKeys() {
        return Collections.enumeration(ofArguments.keySet());
      }
    };
  }
}
