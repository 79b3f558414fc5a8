package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The guide as the window shows it. */
class GuideHtmlTest {
  private static final Path DOCS = Path.of("docs");

  @Test
  void headingsListsTablesCodeAndLinks() {
    assertThat(GuideHtml.of("## Checks (F6)\n\nPress **F6** and *then*\nread `a<b`."))
        .isEqualTo(
            """
            <h2><a name="checks-f6"></a>Checks (F6)</h2>
            <p>Press <b>F6</b> and <i>then</i> read <code>a&lt;b</code>.</p>
            """);
    assertThat(GuideHtml.of("1. one\n   goes on\n2. two\n   * inner\n\nafter"))
        .isEqualTo(
            """
            <ol>
            <li>one goes on<br>
            <li>two<br>
            <ul>
            <li>inner<br>
            </ul>
            </ol>
            <p>after</p>
            """);
    assertThat(GuideHtml.of("| a | b |\n|---|---|\n| [c](d.md#e) | 2 |"))
        .contains("<th align=\"left\" valign=\"top\">a</th>")
        .contains("<td align=\"left\" valign=\"top\"><a href=\"d.md#e\">c</a></td>")
        .endsWith("</tr>\n</table>\n");
    assertThat(GuideHtml.of("```sh\na | *b*\n```")).isEqualTo("<pre>a | *b*\n</pre>\n");
    assertThat(GuideHtml.of("![A run](images/run.png)")).contains("<img src=\"images/run.png\"");
    assertThat(GuideHtml.of("![A wire](wire.svg)")).contains("<img src=\"wire.svg\"");
  }

  /** No page of the guide loses a word, and every element that is opened is closed. */
  @Test
  void everyPageOfTheGuideIsWhole() throws Exception {
    for (String page : GuidePages.ALL) {
      String markdown = Files.readString(DOCS.resolve(page));
      String html = GuideHtml.of(markdown);
      assertThat(words(html.replaceAll("<[^>]*>", " ").replace("&lt;", "<").replace("&gt;", ">")))
          .as(page)
          .containsAll(
              words(
                  markdown
                      .replaceAll("(?m)^```.*$", "")
                      .replaceAll("\\]\\([^)]*\\)", " ")
                      .replaceAll("(?m)^\\s*(?:[*-]|\\d+\\.) ", " ")));
      Deque<String> open = new ArrayDeque<>();
      Matcher tag =
          Pattern.compile("<(/?)(ul|ol|table|pre|p|h\\d|code|b|i|a)\\b[^>]*>").matcher(html);
      while (tag.find()) {
        if (tag.group(1).isEmpty()) {
          open.push(tag.group(2));
        } else {
          assertThat(open.pop()).as(page + " at " + tag.start()).isEqualTo(tag.group(2));
        }
      }
      assertThat(open).as(page).isEmpty();
    }
  }

  @Test
  void everyPlaceHasItsPageAndTheHeadingIsThere() throws Exception {
    for (UserAction place : UserAction.values()) {
      String link = GuidePages.of(place);
      String html = GuideHtml.of(Files.readString(DOCS.resolve(GuidePages.page(link))));
      if (!GuidePages.heading(link).isEmpty()) {
        assertThat(html).as(link).contains("<a name=\"" + GuidePages.heading(link) + "\">");
      }
    }
    try (var files = Files.list(DOCS)) {
      assertThat(files.map(file -> file.getFileName().toString()).filter(f -> f.endsWith(".md")))
          .containsExactlyInAnyOrderElementsOf(GuidePages.ALL);
    }
  }

  private static List<String> words(String text) {
    return Arrays.stream(text.split("[^\\p{L}\\p{N}]+"))
        .filter(w -> !w.isEmpty())
        .distinct()
        .toList();
  }
}
