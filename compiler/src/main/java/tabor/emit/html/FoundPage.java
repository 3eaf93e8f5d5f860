package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.cores.SpareCores;
import tabor.emit.engrave.Drawing;
import tabor.find.Found;
import tabor.find.Likeness;
import tabor.kit.Limb;
import tabor.words.Words;

/** What was found in a library of lessons, with a picture of each section. */
public final class FoundPage {
  private FoundPage() {}

  /** A section and its picture. */
  private record Shown(Found found, Pictures.@Nullable Score score) {}

  /**
   * One HTML file.
   *
   * @param asked what was looked for, a few words each
   * @param all in the order of the page, each section as it is printed
   * @param notes how many of them, from the first on, stand there with notes
   * @param drawing the notation of each; safe for several threads
   * @param words that the page is written in
   */
  public static String write(
      List<String> asked,
      List<Found> all,
      int notes,
      Function<Found, Pictures.Score> drawing,
      Words words) {
    List<Pictures.Score> scores = SpareCores.map(all.subList(0, notes), drawing);
    List<Shown> shown = new ArrayList<>();
    List<Drawing> drawings = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Pictures.Score score = i < notes ? scores.get(i) : null;
      shown.add(new Shown(all.get(i), score));
      if (score != null) {
        drawings.addAll(score.drawings());
      }
    }
    List<String> facts = new ArrayList<>(List.of(count(all, words)));
    if (notes < all.size()) {
      facts.add(words.text("library.drawn", notes));
    }
    facts.addAll(asked);
    LibraryMarkup page = new LibraryMarkup(words.text("library.what-was-found"), facts, words);
    DrawingsMarkup markup = DrawingsMarkup.of(drawings);
    page.raw(markup.shapes());
    int number = 0;
    for (Shown one : shown) {
      article(page, ++number, one, markup, words);
    }
    return page.close();
  }

  /** How many sections of how many lessons. */
  private static String count(List<Found> all, Words words) {
    long lessons = all.stream().map(Found::file).distinct().count();
    return all.isEmpty()
        ? words.text("library.nothing")
        : words.text(
            "library.sections-of",
            words.text("library.sections", all.size()),
            words.text("library.of-lessons", lessons));
  }

  private static void article(
      LibraryMarkup page, int number, Shown one, DrawingsMarkup markup, Words words) {
    Found found = one.found();
    page.open("found", number, found.groove().caption());
    page.raw("<p class=\"file\">")
        .raw(LibraryMarkup.foreign(found.lesson()))
        .raw(" · ")
        .raw(LibraryMarkup.foreign(found.file() + ", " + found.groove().name()))
        .raw("</p>\n");
    page.facts(facts(found, words));
    Pictures.Score score = one.score();
    if (score == null) {
      page.raw("</article>\n");
      return;
    }
    Pictures.Picture narrow = score.narrow();
    page.raw("<figure class=\"score\">\n");
    page.raw(markup.pair(score.wide().drawings(), narrow == null ? List.of() : narrow.drawings()));
    page.raw("<ol class=\"unseen\" aria-label=\"");
    page.raw(Markup.text(words.text("web.in-words"))).raw("\">\n");
    SpokenBars.of(found.groove()).forEach(bar -> page.raw("<li>" + Markup.text(bar) + "</li>\n"));
    page.raw("</ol>\n</figure>\n</article>\n");
  }

  private static List<String> facts(Found found, Words words) {
    List<String> facts = new ArrayList<>();
    String how = likeness(found.likeness(), words);
    if (!how.isEmpty()) {
      facts.add(how);
    }
    facts.add(words.meters(found.groove().meters()));
    facts.add(PageWording.tempo(found.groove().setting().tempo(), words));
    Limb hardest = found.difficulty().hardest();
    if (hardest != null) {
      facts.add(words.text("library.hardest", words.limb(hardest), found.difficulty().share()));
    }
    if (!found.groove().page().blankSticking()) {
      found.rudiments().forEach(name -> facts.add(name.replace('-', ' ')));
    }
    return facts;
  }

  /** How far a section is from what it was compared with; empty if it was not. */
  public static String likeness(Likeness likeness, Words words) {
    List<String> parts = new ArrayList<>(2);
    if (likeness.kick() != null) {
      parts.add(words.text("library.kick-off", likeness.kick()));
    }
    if (likeness.hands() != null) {
      parts.add(words.text("library.hands-off", likeness.hands()));
    }
    return words.list(parts);
  }
}
