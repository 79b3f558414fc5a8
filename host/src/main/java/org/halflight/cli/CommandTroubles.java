package org.halflight.cli;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.halflight.words.Words;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in words of the bundle and not of picocli. */
final class CommandTroubles {
  private CommandTroubles() {}

  /** Without the full stop at its end. */
  static String sentence(ParameterException bad) {
    if (bad instanceof UnmatchedArgumentException unmatched) {
      return Words.say("cli.unknown", String.join(" ", unmatched.getUnmatched()));
    }
    if (bad instanceof MissingParameterException missing) {
      List<ArgSpec> lacking = missing.getMissing();
      boolean isGiven =
          lacking.size() == 1 && lacking.get(0) instanceof OptionSpec option && !option.required();
      return isGiven
          ? Words.say("cli.noValue", name(lacking.get(0)), lacking.get(0).paramLabel())
          : Words.say(
              "cli.missing",
              lacking.stream().map(CommandTroubles::name).collect(Collectors.joining(", ")));
    }
    if (bad instanceof OverwrittenOptionException twice) {
      return Words.say("cli.twice", name(twice.getOverwritten()));
    }
    if (bad.getArgSpec() == null) {
      return Words.say(
          "cli.noCommand", String.join(", ", bad.getCommandLine().getSubcommands().keySet()));
    }
    return bad.getCause() instanceof TypeConversionException wrong
        ? Words.say(
            "cli.badValue", name(bad.getArgSpec()), Objects.requireNonNull(wrong.getMessage()))
        : Words.say("cli.noValue", name(bad.getArgSpec()), bad.getArgSpec().paramLabel());
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }
}
