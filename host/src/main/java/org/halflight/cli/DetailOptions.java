package org.halflight.cli;

import java.util.EnumMap;
import java.util.Map;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.ISetter;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Spec;

/** What is noted of camera and visit: an option for each. */
@Command
final class DetailOptions {
  private final Map<Detail, String> typed = new EnumMap<>(Detail.class);

  @Spec(Spec.Target.MIXEE)
  void command(CommandSpec command) {
    for (Detail detail : Detail.values()) {
      command.addOption(
          OptionSpec.builder("--" + Detail.WORDS.word(detail))
              .paramLabel("WORDS")
              // A percent sign begins a place to fill in.
              .description(Words.say("help.page." + Detail.WORDS.word(detail)).replace("%", "%%"))
              .type(String.class)
              .setter(
                  new ISetter() {
                    @Override
                    public <T> T set(T value) {
                      if (value != null) {
                        typed.put(detail, value.toString());
                      }
                      return value;
                    }
                  })
              .build());
    }
  }

  /**
   * What was given.
   *
   * @throws Trouble when whether film is inside is answered otherwise than by yes or no
   */
  Details details() {
    Details given = new Details(typed);
    String film = given.of(Detail.FILM);
    if (!film.isEmpty() && !film.equals(Detail.YES) && !film.equals(Detail.NO)) {
      throw new Trouble(Words.say("page.badFilm", film));
    }
    return given;
  }
}
