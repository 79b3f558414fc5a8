package org.halflight.report;

import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;

/**
 * Who the page is from, as the settings have it.
 *
 * @param name of the workshop; may be empty
 * @param repairer may be empty
 * @param logo a file with a picture, as it was typed; empty for none
 * @param paper empty for the usual one of the country
 */
public record Workshop(String name, String repairer, String logo, Optional<Paper> paper) {
  public static final Workshop NONE = new Workshop("", "", "", Optional.empty());

  /** Countries where office paper is letter, not A4 (common practice, no source). */
  private static final Set<String> LETTER =
      Set.of("US", "CA", "MX", "PH", "CL", "CO", "VE", "GT", "CR", "PA", "SV", "NI", "DO", "PR");

  private static final String NAME = "workshop";
  private static final String REPAIRER = "repairer";
  private static final String LOGO = "logo";
  private static final String PAPER = "paper";

  /** From the settings. */
  public static Workshop of(Properties settings) {
    return new Workshop(
        settings.getProperty(NAME, ""),
        settings.getProperty(REPAIRER, ""),
        settings.getProperty(LOGO, ""),
        Paper.WORDS.find(settings.getProperty(PAPER, "")));
  }

  /** Into the settings. */
  public void keepIn(Properties settings) {
    settings.setProperty(NAME, name);
    settings.setProperty(REPAIRER, repairer);
    settings.setProperty(LOGO, logo);
    settings.setProperty(PAPER, paper.map(Paper.WORDS::word).orElse(""));
  }

  /** The paper of a page: what the settings say, else the usual one of the country. */
  public Paper paperIn(Locale locale) {
    return paper.orElse(LETTER.contains(locale.getCountry()) ? Paper.LETTER : Paper.A4);
  }
}
