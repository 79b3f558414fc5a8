package org.halflight.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.halflight.session.RunOption;
import org.halflight.words.OptionWords;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.ISetter;
import picocli.CommandLine.Model.OptionSpec;

/** Options of a run on the command line, each made from its declaration. */
final class OptionArguments {
  private final Map<RunOption<?>, String> typed = new LinkedHashMap<>();

  /** What was typed, by option; nothing for what was not. */
  Map<RunOption<?>, String> typed() {
    return Map.copyOf(typed);
  }

  /** Has a command take some options. */
  void addTo(CommandSpec command, List<RunOption<?>> options) {
    options.forEach(option -> command.addOption(argument(option)));
  }

  private OptionSpec argument(RunOption<?> option) {
    OptionSpec.Builder argument =
        OptionSpec.builder("--" + option.name())
            // A percent sign begins a place to fill in.
            .description(OptionWords.help(option).replace("%", "%%"));
    if (option.isFlag()) {
      return argument
          .type(boolean.class)
          .setter(setter(on -> put(option, Boolean.TRUE.equals(on) ? option.words().get(0) : null)))
          .build();
    }
    String label = option.name().toUpperCase(Locale.ROOT);
    return argument
        .type(String.class)
        .paramLabel(option.words().isEmpty() ? label : String.join("|", option.words()))
        .setter(setter(text -> put(option, (String) text)))
        .build();
  }

  private void put(RunOption<?> option, @Nullable String text) {
    if (text == null) {
      typed.remove(option);
    } else {
      typed.put(option, text);
    }
  }

  private static ISetter setter(Consumer<Object> to) {
    return new ISetter() {
      @Override
      public <T> T set(T value) {
        to.accept(value);
        return value;
      }
    };
  }
}
