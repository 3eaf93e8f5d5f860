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
   */
  public static String write(String title, Overview overview) {
    List<LessonSummary> lessons = overview.lessons();
    int sections = lessons.stream().mapToInt(lesson -> lesson.sections().size()).sum();
    LibraryMarkup page =
        new LibraryMarkup(
            title,
            List.of(
                lessons.size() == 1 ? "1 lesson" : lessons.size() + " lessons",
                sections == 1 ? "1 section" : sections + " sections",
                "bold: for the first time"));
    firsts(page, overview);
    for (int i = 0; i < lessons.size(); i++) {
      Set<Technique> fresh = new HashSet<>();
      overview.newIn(i).forEach(first -> fresh.add(first.technique()));
      lesson(page, i + 1, lessons.get(i), fresh);
    }
    return page.close();
  }

  /** What is new in which lesson. */
  private static void firsts(LibraryMarkup page, Overview overview) {
    page.raw("<table class=\"new\">\n<caption>What is new in each lesson</caption>\n");
    page.raw("<thead><tr><th scope=\"col\">Lesson</th><th scope=\"col\">For the first time</th>");
    page.raw("</tr></thead>\n<tbody>\n");
    for (int i = 0; i < overview.lessons().size(); i++) {
      page.raw("<tr><th scope=\"row\"><a href=\"#N" + (i + 1) + "\">");
      page.raw(LibraryMarkup.foreign(overview.lessons().get(i).title())).raw("</a></th><td>");
      List<Overview.First> fresh = overview.newIn(i);
      if (fresh.isEmpty()) {
        page.raw("nothing new: practice");
      } else {
        page.raw("<ul>");
        fresh.forEach(first -> page.raw("<li>" + Markup.text(first.technique().words()) + "</li>"));
        page.raw("</ul>");
      }
      page.raw("</td></tr>\n");
    }
    page.raw("</tbody>\n</table>\n");
  }

  private static void lesson(
      LibraryMarkup page, int number, LessonSummary lesson, Set<Technique> fresh) {
    page.open("week", number, lesson.title());
    page.raw("<p class=\"file\">").raw(LibraryMarkup.foreign(lesson.file())).raw("</p>\n");
    page.facts(facts(lesson));
    page.list("goals", "Goals", lesson.goals());
    page.raw("<ul class=\"what\" aria-label=\"Sections\">\n");
    for (LessonSummary.Line line : lesson.sections()) {
      page.raw("<li>").raw(LibraryMarkup.foreign(line.caption()));
      page.raw(" <span class=\"kind\">" + line.kind() + "</span></li>\n");
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
              page.raw("<dt>" + kind.heading() + "</dt><dd><ul>")
                  .raw(all.stream().map(one -> item(one, fresh)).collect(Collectors.joining()))
                  .raw("</ul></dd>\n"));
      page.raw("</dl>\n");
    }
    page.raw("</article>\n");
  }

  private static String item(Technique one, Set<Technique> fresh) {
    String name = Markup.text(one.words());
    return fresh.contains(one)
        ? "<li class=\"first\">" + name + "<span class=\"unseen\"> (for the first time)</span></li>"
        : "<li>" + name + "</li>";
  }

  private static List<String> facts(LessonSummary lesson) {
    List<String> facts = new ArrayList<>();
    Tempo slowest = lesson.slowest();
    Tempo fastest = lesson.fastest();
    if (slowest != null && fastest != null) {
      facts.add(
          slowest.equals(fastest)
              ? PageWording.tempo(slowest, Words.english())
              : PageWording.tempo(slowest, Words.english())
                  + " to "
                  + PageWording.tempo(fastest, Words.english()));
    }
    LessonSummary.Hardest hardest = lesson.hardest();
    if (hardest != null) {
      facts.add(
          "hardest limb: "
              + hardest.limb().words()
              + ", "
              + hardest.percent()
              + "\u00a0% of its comfortable limit, in "
              + hardest.section());
    }
    return facts;
  }
}
