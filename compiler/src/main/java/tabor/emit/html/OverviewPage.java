package tabor.emit.html;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tabor.find.LessonSummary;
import tabor.find.Overview;
import tabor.find.Technique;
import tabor.rhythm.Tempo;
import tabor.words.Words;

/** A term on one page: every lesson, and what comes first when. */
public final class OverviewPage {
  private OverviewPage() {}

  /**
   * One HTML file.
   *
   * @param title of the page
   * @param words that the page is written in
   */
  public static String write(String title, Overview overview, Words words) {
    List<LessonSummary> lessons = overview.lessons();
    int sections = lessons.stream().mapToInt(lesson -> lesson.sections().size()).sum();
    LibraryMarkup page =
        new LibraryMarkup(
            title,
            List.of(
                words.text("library.lessons", lessons.size()),
                words.text("library.sections", sections),
                words.text("library.bold")),
            words);
    firsts(page, overview, words);
    for (int i = 0; i < lessons.size(); i++) {
      Set<Technique> fresh = new HashSet<>();
      overview.newIn(i).forEach(first -> fresh.add(first.technique()));
      lesson(page, i + 1, lessons.get(i), fresh, words);
    }
    return page.close();
  }

  /** What is new in which lesson. */
  private static void firsts(LibraryMarkup page, Overview overview, Words words) {
    page.raw("<table class=\"new\">\n<caption>" + text(words, "library.new") + "</caption>\n");
    page.raw("<thead><tr><th scope=\"col\">" + text(words, "library.lesson"));
    page.raw("</th><th scope=\"col\">" + text(words, "library.first") + "</th>");
    page.raw("</tr></thead>\n<tbody>\n");
    for (int i = 0; i < overview.lessons().size(); i++) {
      page.raw("<tr><th scope=\"row\"><a href=\"#N" + (i + 1) + "\">");
      page.raw(LibraryMarkup.foreign(overview.lessons().get(i).title())).raw("</a></th><td>");
      List<Overview.First> fresh = overview.newIn(i);
      if (fresh.isEmpty()) {
        page.raw(text(words, "library.practice"));
      } else {
        page.raw("<ul>");
        fresh.forEach(
            first -> page.raw("<li>" + Markup.text(first.technique().words(words)) + "</li>"));
        page.raw("</ul>");
      }
      page.raw("</td></tr>\n");
    }
    page.raw("</tbody>\n</table>\n");
  }

  private static void lesson(
      LibraryMarkup page, int number, LessonSummary lesson, Set<Technique> fresh, Words words) {
    page.open("week", number, lesson.title());
    page.raw("<p class=\"file\">").raw(LibraryMarkup.foreign(lesson.file())).raw("</p>\n");
    page.facts(facts(lesson, words));
    page.list("goals", text(words, "library.goals"), lesson.goals());
    page.raw("<ul class=\"what\" aria-label=\"" + text(words, "library.contents") + "\">\n");
    for (LessonSummary.Line line : lesson.sections()) {
      page.raw("<li>").raw(LibraryMarkup.foreign(line.caption()));
      page.raw(" <span class=\"kind\">" + text(words, "library." + line.kind()));
      page.raw("</span></li>\n");
    }
    page.raw("</ul>\n");
    Map<Technique.Kind, List<Technique>> kinds = new EnumMap<>(Technique.Kind.class);
    lesson
        .techniques()
        .keySet()
        .forEach(one -> kinds.computeIfAbsent(one.kind(), kind -> new ArrayList<>()).add(one));
    if (!kinds.isEmpty()) {
      page.raw("<dl class=\"uses\">\n");
      kinds.forEach(
          (kind, all) ->
              page.raw("<dt>" + text(words, "library." + Words.word(kind)) + "</dt><dd><ul>")
                  .raw(
                      all.stream()
                          .map(one -> item(one, fresh, words))
                          .collect(Collectors.joining()))
                  .raw("</ul></dd>\n"));
      page.raw("</dl>\n");
    }
    page.raw("</article>\n");
  }

  private static String item(Technique one, Set<Technique> fresh, Words words) {
    String name = Markup.text(one.words(words));
    return fresh.contains(one)
        ? "<li class=\"first\">"
            + name
            + "<span class=\"unseen\"> ("
            + text(words, "library.first-here")
            + ")</span></li>"
        : "<li>" + name + "</li>";
  }

  private static String text(Words words, String key) {
    return Markup.text(words.text(key));
  }

  private static List<String> facts(LessonSummary lesson, Words words) {
    List<String> facts = new ArrayList<>();
    Tempo slowest = lesson.slowest();
    Tempo fastest = lesson.fastest();
    if (slowest != null && fastest != null) {
      String from = PageWording.tempo(slowest, words);
      facts.add(
          slowest.equals(fastest)
              ? from
              : words.text("library.from-to", from, PageWording.tempo(fastest, words)));
    }
    LessonSummary.Hardest hardest = lesson.hardest();
    if (hardest != null) {
      facts.add(
          words.text(
              "library.hardest-in",
              words.limb(hardest.limb()),
              hardest.percent(),
              hardest.section()));
    }
    return facts;
  }
}
