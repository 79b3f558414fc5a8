package org.halflight.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.job.CheckState;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.session.Source;
import org.halflight.words.Words;

/** What the page for the owner says, in plain words and without statistics. */
final class OwnerText {
  private final PageInput input;
  private final PageText text;
  private final Workshop from;
  private final Details details;

  /**
   * @param text of the same input
   */
  OwnerText(PageInput input, PageText text, Workshop from) {
    this.input = input;
    this.text = text;
    this.from = from;
    this.details = input.details();
  }

  /**
   * One part of the page.
   *
   * @param name its heading
   * @param points one sentence or more each
   */
  record Section(String name, List<String> points) {
    Section {
      points = List.copyOf(points);
    }
  }

  /** Which camera it is, in one line. */
  String facts() {
    return Stream.of(
            input.make().equals(input.camera()) ? "" : input.make(),
            fact("page.owner.serial", input.serialNumber()),
            details.of(Detail.LENS),
            fact("page.owner.second", details.of(Detail.SECOND_SERIAL)),
            fact("page.owner.job", input.jobNumber()),
            fact("page.owner.for", details.of(Detail.OWNER)),
            input.date())
        .filter(each -> !each.isBlank())
        .collect(Collectors.joining(Words.say("page.owner.between")));
  }

  /** Who repaired it; empty where nobody is named. */
  String repairer() {
    return fact("page.owner.repairer", from.repairer());
  }

  private static String fact(String key, String value) {
    return value.isBlank() ? "" : Words.say(key, value);
  }

  /** All that is said, in order; a part of which there is nothing to say is left out. */
  List<Section> sections() {
    String complaint = details.of(Detail.COMPLAINT);
    String answer = details.of(Detail.ANSWER);
    return Stream.of(
            section(
                "page.owner.section.complaint",
                complaint.isEmpty()
                    ? List.of()
                    : List.of(Words.say("page.owner.quoted", complaint))),
            section("page.owner.section.answer", answer.isEmpty() ? List.of() : List.of(answer)),
            section(
                complaint.isEmpty() || !answer.isEmpty()
                    ? "page.owner.section.result"
                    : "page.owner.section.answer",
                text.outcome()),
            section("page.owner.section.frame", FrameText.sentences(input.last().run().speeds())),
            section("page.owner.section.done", done()),
            section("page.owner.section.before", before()),
            section("page.owner.section.checks", checks()),
            section("page.owner.section.note", notes()))
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<Section> section(String key, List<String> points) {
    return points.isEmpty() ? Optional.empty() : Optional.of(new Section(Words.say(key), points));
  }

  private List<String> before() {
    List<String> said = new ArrayList<>();
    if (!input.moved().isEmpty()) {
      said.add(input.moved());
    }
    said.addAll(text.before());
    return said;
  }

  private List<String> done() {
    List<String> said = new ArrayList<>(input.workDone());
    String lubricant = details.of(Detail.LUBRICANT);
    if (!lubricant.isEmpty()) {
      said.add(Words.say("page.owner.lubricant", lubricant));
    }
    return said.isEmpty() ? List.of(Words.say("page.done.nothing")) : said;
  }

  private List<String> checks() {
    List<String> said = new ArrayList<>();
    for (CheckState state : CheckState.values()) {
      String items =
          input.lists().stream()
              .filter(line -> line.last() == state)
              .map(CheckLine::item)
              .collect(Collectors.joining(", "));
      if (!items.isEmpty()) {
        said.add(Words.of("page.owner.check", state, items));
      }
    }
    return said;
  }

  private List<String> notes() {
    List<String> said = new ArrayList<>();
    if (details.of(Detail.FILM).equals(Detail.YES)) {
      said.add(Words.say("page.owner.film"));
    }
    said.addAll(text.ownCautions());
    if (input.source() != Source.RIG) {
      said.add(PageText.sentence(input.sourceWords()));
    }
    return said;
  }
}
