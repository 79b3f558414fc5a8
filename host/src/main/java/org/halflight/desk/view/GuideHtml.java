package org.halflight.desk.view;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A page of the guide as HTML that a text pane of the window can show. It knows the Markdown that
 * the guide is written in: headings, paragraphs, lists of two levels, tables, code, links,
 * pictures.
 */
public final class GuideHtml {
  private static final Pattern HEADING = Pattern.compile("(#{1,6}) (.*)");
  private static final Pattern ITEM = Pattern.compile("( *)(?:[*-]|(\\d+)\\.) (.*)");
  private static final Pattern INLINE =
      Pattern.compile(
          "`([^`]+)`|(!?)\\[([^\\]]*)]\\(([^)]*)\\)|\\*\\*(.+?)\\*\\*|\\*([^*\\s](?:[^*]*[^*\\s])?)\\*");

  /** What a text pane needs help with. */
  public static final String DRAWING = ".svg";

  /** How wide a drawing is shown, in pixels of a usual screen. */
  public static final int DRAWING_WIDTH = 880;

  private static final int SCREEN_WIDTH = 640;
  private static final String FENCE = "```";

  private final StringBuilder html = new StringBuilder();
  private final StringBuilder text = new StringBuilder();

  /** Opened and not yet closed, the outermost first: ul, ol, li, p. */
  private final java.util.ArrayDeque<String> open = new java.util.ArrayDeque<>();

  private GuideHtml() {}

  /** The body of a page. */
  public static String of(String markdown) {
    return new GuideHtml().page(markdown.lines().toList());
  }

  /** The name of the place in a page where a heading is, as links give it. */
  public static String anchor(String heading) {
    return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N} -]", "").replace(' ', '-');
  }

  private String page(List<String> lines) {
    boolean code = false;
    boolean table = false;
    for (String line : lines) {
      boolean isFence = line.startsWith(FENCE);
      if (code || isFence) {
        endText(isFence && !code);
        html.append(isFence ? code ? "</pre>\n" : "<pre>" : escaped(line) + '\n');
        code ^= isFence;
      } else if (line.startsWith("|")) {
        endText(!table);
        row(line, table ? "td" : "th", table);
        table = true;
      } else {
        if (table) {
          html.append("</table>\n");
          table = false;
        }
        line(line);
      }
    }
    endText(true);
    return html.append(table ? "</table>\n" : "").toString();
  }

  private void line(String line) {
    Matcher heading = HEADING.matcher(line);
    Matcher item = ITEM.matcher(line);
    if (heading.matches()) {
      endText(true);
      String level = "h" + heading.group(1).length();
      html.append('<').append(level).append("><a name=\"").append(anchor(heading.group(2)));
      html.append("\"></a>").append(inline(heading.group(2))).append("</").append(level);
      html.append(">\n");
    } else if (item.matches()) {
      endText(false);
      item(item.group(1).isEmpty() ? 1 : 2, item.group(2) == null ? "ul" : "ol");
      text.append(item.group(3));
    } else if (line.isBlank()) {
      endText(false);
    } else {
      if (text.isEmpty() && !line.startsWith(" ")) {
        close(0);
      }
      text.append(text.isEmpty() ? "" : " ").append(line.strip());
    }
  }

  /** Begins an item of a list at a depth. */
  private void item(int depth, String kind) {
    close(
        open.size() > depth
            ? depth
            : depth - 1 + (open.size() == depth && kind.equals(open.peekLast()) ? 1 : 0));
    while (open.size() < depth) {
      open.addLast(kind);
      html.append('<').append(kind).append(">\n");
    }
    html.append("<li>");
  }

  private void endText(boolean allLists) {
    if (!text.isEmpty()) {
      String said = inline(text.toString());
      html.append(open.isEmpty() ? "<p>" + said + "</p>\n" : said + "<br>\n");
      text.setLength(0);
    }
    if (allLists) {
      close(0);
    }
  }

  private void close(int depth) {
    while (open.size() > depth) {
      html.append("</").append(open.removeLast()).append(">\n");
    }
  }

  private void row(String line, String cell, boolean inTable) {
    if (inTable && line.matches("[|: -]+")) {
      return;
    }
    html.append(
        inTable ? "<tr>" : "<table border=\"1\" cellspacing=\"0\" cellpadding=\"4\">\n<tr>");
    String inner = line.strip().replaceAll("^\\||\\|$", "");
    for (String each : inner.split("(?<!\\\\)\\|", -1)) {
      html.append('<').append(cell).append(" align=\"left\" valign=\"top\">");
      html.append(inline(each.strip().replace("\\|", "|"))).append("</").append(cell).append('>');
    }
    html.append("</tr>\n");
  }

  private static String inline(String words) {
    StringBuilder made = new StringBuilder();
    Matcher found = INLINE.matcher(words);
    int at = 0;
    while (found.find()) {
      made.append(escaped(words.substring(at, found.start())));
      at = found.end();
      if (found.group(1) != null) {
        made.append("<code>").append(escaped(found.group(1))).append("</code>");
      } else if (found.group(3) != null) {
        made.append(found.group(2).isEmpty() ? link(found) : picture(found));
      } else if (found.group(5) != null) {
        made.append("<b>").append(inline(found.group(5))).append("</b>");
      } else {
        made.append("<i>").append(inline(found.group(6))).append("</i>");
      }
    }
    return made.append(escaped(words.substring(at))).toString();
  }

  private static String link(Matcher found) {
    return "<a href=\"" + escaped(found.group(4)) + "\">" + inline(found.group(3)) + "</a>";
  }

  /** Drawings have small letters, so they are wider than screens of the window. */
  private static String picture(Matcher found) {
    int width = found.group(4).endsWith(DRAWING) ? DRAWING_WIDTH : SCREEN_WIDTH;
    return "<img src=\""
        + escaped(found.group(4))
        + "\" width=\""
        + width
        + "\"><br><i>"
        + inline(found.group(3))
        + "</i>";
  }

  private static String escaped(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
