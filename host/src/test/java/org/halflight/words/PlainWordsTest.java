package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.ResourceBundle;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Plain words in the docs and in the bundle: none of fixtures/words/forbidden.tsv, but for the
 * exceptions beside it, and no sentence of the docs longer than a person reads in one go.
 */
class PlainWordsTest {
  private static final int MOST_WORDS = 35;

  @Test
  void docsHaveNoForbiddenWord() throws IOException {
    ForbiddenWords forbidden = new ForbiddenWords("docs");
    List<String> found = new ArrayList<>();
    for (DocPage page : DocPage.all()) {
      for (String sentence : page.sentences()) {
        found.addAll(forbidden.in(name(page), sentence));
      }
    }
    assertThat(found).isEmpty();
    assertThat(forbidden.needless()).isEmpty();
  }

  @Test
  void bundleHasNoForbiddenWord() {
    ForbiddenWords forbidden = new ForbiddenWords("bundle");
    ResourceBundle bundle = ResourceBundle.getBundle("org.halflight.words.sentences");
    List<String> found = new ArrayList<>();
    for (String key : Collections.list(bundle.getKeys()).stream().sorted().toList()) {
      found.addAll(forbidden.in(key, bundle.getString(key)));
    }
    assertThat(found).isEmpty();
    assertThat(forbidden.needless()).isEmpty();
  }

  @Test
  void docsHaveNoLongSentence() throws IOException {
    List<String> found = new ArrayList<>();
    for (DocPage page : DocPage.all()) {
      page.sentences().stream()
          .filter(each -> DocPage.words(each) > MOST_WORDS)
          .forEach(each -> found.add(name(page) + ": " + DocPage.words(each) + " words | " + each));
    }
    assertThat(found).isEmpty();
  }

  @Test
  void eachForbiddenWordIsFoundInItsExample() {
    assertThat(
            Stream.of("docs", "bundle")
                .flatMap(where -> new ForbiddenWords(where).blind().stream()))
        .isEmpty();
  }

  @Test
  void proseIsSplitIntoSentences() {
    assertThat(
            DocPage.sentences(
                """
                # A heading

                One sentence, of
                two lines. *Another* with `a.b c` and [a link](there.md#x "y"). It is 3.5 mm, e.g. Here?

                * an item
                  that goes on
                * a second

                | a cell | two. Three |
                |---|---|
                """))
        .containsExactly(
            "A heading",
            "One sentence, of two lines.",
            "Another with CODE and a link.",
            "It is 3.5 mm, e.g. Here?",
            "an item that goes on",
            "a second",
            "a cell",
            "two.",
            "Three");
    assertThat(DocPage.words("one of CODE, CODE or CODE")).isEqualTo(3);
    assertThat(DocPage.words("It is - as CODE - \u00b1 3 ms.")).isEqualTo(6);
  }

  private static String name(DocPage page) {
    return page.path().toString().replace('\\', '/');
  }
}
