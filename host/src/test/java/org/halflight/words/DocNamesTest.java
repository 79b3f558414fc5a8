package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the docs point to is there: files, headings, classes and packages. */
class DocNamesTest {
  private static final Path MAIN = Path.of("host/src/main/java/org/halflight");
  private static final Path TESTS = Path.of("host/src/test/java/org/halflight");

  private static final Pattern CODE = Pattern.compile("`([^`\n]+)`");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)[^)]*\\)");
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ +(.+?) *$");
  private static final Pattern TYPE = Pattern.compile("\\b(?:class|record|enum|interface) (\\w+)");
  private static final Pattern PACKAGE_ROW =
      Pattern.compile("(?m)^\\| ((?:`[a-z.]+`(?:, )?)+) \\|");

  /** A class alone or behind its package, perhaps with a class or a method of it behind. */
  private static final Pattern CLASS_NAME =
      Pattern.compile("(?:[a-z]+\\.)?((?:[A-Z][a-z0-9]+){2,})(?:\\.\\w+(?:\\(\\))?)?");

  @Test
  void everyLinkLeadsSomewhere() throws IOException {
    List<DocPage> pages = new ArrayList<>(DocPage.all());
    for (String other : List.of("firmware/README.md", "fixtures/README.md")) {
      pages.add(DocPage.of(Path.of(other)));
    }
    List<String> broken = new ArrayList<>();
    int links = 0;
    for (DocPage page : pages) {
      String markdown = CODE.matcher(page.markdown()).replaceAll("");
      for (String target : LINK.matcher(markdown).results().map(each -> each.group(1)).toList()) {
        links++;
        if (!target.contains("://") && !leadsSomewhere(page.path(), target)) {
          broken.add(page.path() + ": " + target);
        }
      }
    }
    assertThat(broken).isEmpty();
    assertThat(links).isGreaterThan(50);
  }

  @Test
  void everyClassThatIsNamedExists() throws IOException {
    Set<String> known = new HashSet<>(Set.of("IllegalArgumentException"));
    for (Path source : sources(MAIN, TESTS)) {
      TYPE.matcher(Files.readString(source)).results().map(m -> m.group(1)).forEach(known::add);
    }
    List<String> unknown = new ArrayList<>();
    int named = 0;
    for (DocPage page : DocPage.all()) {
      for (MatchResult code : CODE.matcher(page.markdown()).results().toList()) {
        var name = CLASS_NAME.matcher(code.group(1));
        if (name.matches()) {
          named++;
          if (!known.contains(name.group(1))) {
            unknown.add(page.path() + ": " + code.group(1));
          }
        }
      }
    }
    assertThat(unknown).isEmpty();
    assertThat(named).isGreaterThan(30);
  }

  @Test
  void everyPackageIsInTheTableForContributors() throws IOException {
    Set<String> described = new TreeSet<>();
    PACKAGE_ROW
        .matcher(Files.readString(Path.of("DEVELOPERS.md")))
        .results()
        .flatMap(row -> CODE.matcher(row.group(1)).results())
        .forEach(name -> described.add(name.group(1)));
    Set<String> there = new TreeSet<>();
    for (Path source : sources(MAIN)) {
      there.add(
          MAIN.relativize(source.getParent()).toString().replace('\\', '/').replace('/', '.'));
    }
    assertThat(described).containsAll(there);
  }

  private static boolean leadsSomewhere(Path page, String target) throws IOException {
    String[] parts = target.split("#", 2);
    Path file = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
    if (!Files.exists(file)) {
      return false;
    }
    return parts.length == 1 || headings(file).contains(parts[1]);
  }

  /** The names by which headings are linked to. */
  private static Set<String> headings(Path page) throws IOException {
    Set<String> names = new HashSet<>();
    HEADING
        .matcher(DocPage.of(page).markdown())
        .results()
        .map(heading -> heading.group(1).toLowerCase(Locale.ROOT))
        .map(heading -> heading.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'))
        .forEach(names::add);
    return names;
  }

  private static List<Path> sources(Path... roots) throws IOException {
    List<Path> sources = new ArrayList<>();
    for (Path root : roots) {
      try (Stream<Path> files = Files.walk(root)) {
        files.filter(each -> each.toString().endsWith(".java")).forEach(sources::add);
      }
    }
    return sources;
  }
}
