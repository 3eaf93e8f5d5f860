package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
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
   * @param title of the page
   * @param asked what was looked for, a few words each
   * @param all in the order of the page
   * @param drawing the notation of each; null for one that stands there without
   */
  public static String write(
      String title,
      List<String> asked,
      List<Found> all,
      Function<Found, Pictures.@Nullable Score> drawing) {
    List<Shown> shown = new ArrayList<>();
    SymbolTable symbols = new SymbolTable();
    for (Found found : all) {
      Pictures.Score score = drawing.apply(found);
      shown.add(new Shown(found, score));
      if (score != null) {
        drawings(score.wide()).forEach(symbols::count);
        drawings(score.narrow()).forEach(symbols::count);
      }
    }
    List<String> facts = new ArrayList<>(List.of(count(all)));
    long drawn = shown.stream().filter(one -> one.score() != null).count();
    if (drawn < all.size()) {
      facts.add("too many to draw them all: notes for " + drawn);
    }
    facts.addAll(asked);
    LibraryMarkup page = new LibraryMarkup(title, facts);
    page.raw(symbols.markup());
    int number = 0;
    for (Shown one : shown) {
      article(page, ++number, one, symbols);
    }
    return page.close();
  }

  /** How many sections of how many lessons. */
  static String count(List<Found> all) {
    long lessons = all.stream().map(Found::file).distinct().count();
    return all.isEmpty()
        ? "nothing found"
        : (all.size() == 1 ? "1 section" : all.size() + " sections")
            + (lessons == 1 ? " of 1 lesson" : " of " + lessons + " lessons");
  }

  private static void article(LibraryMarkup page, int number, Shown one, SymbolTable symbols) {
    Found found = one.found();
    page.open("found", number, found.groove().caption());
    page.raw("<p class=\"file\">")
        .raw(LibraryMarkup.foreign(found.lesson()))
        .raw(" · ")
        .raw(LibraryMarkup.foreign(found.file() + ", " + found.groove().name()))
        .raw("</p>\n");
    page.facts(facts(found));
    Pictures.Score score = one.score();
    if (score == null) {
      page.raw("</article>\n");
      return;
    }
    Pictures.Picture narrow = score.narrow();
    page.raw("<figure class=\"score\">\n");
    page.raw(narrow == null ? "<div class=\"drawn\">" : "<div class=\"drawn wide\">");
    drawings(score.wide()).forEach(d -> page.raw(DrawingMarkup.of(d, symbols)));
    if (narrow != null) {
      page.raw("</div>\n<div class=\"drawn narrow\">");
      drawings(narrow).forEach(d -> page.raw(DrawingMarkup.of(d, symbols)));
    }
    page.raw("</div>\n<ol class=\"unseen\" aria-label=\"The notation in words\">\n");
    SpokenBars.of(found.groove()).forEach(bar -> page.raw("<li>" + Markup.text(bar) + "</li>\n"));
    page.raw("</ol>\n</figure>\n</article>\n");
  }

  private static List<String> facts(Found found) {
    List<String> facts = new ArrayList<>();
    String how = likeness(found.likeness());
    if (!how.isEmpty()) {
      facts.add(how);
    }
    facts.add(found.groove().meters().inWords());
    facts.add(PageWording.tempo(found.groove().setting().tempo(), Words.english()));
    Limb hardest = found.difficulty().hardest();
    if (hardest != null) {
      facts.add("hardest limb: " + hardest.words() + ", " + found.difficulty().share() + "\u00a0%");
    }
    found.rudiments().forEach(name -> facts.add(name.replace('-', ' ')));
    return facts;
  }

  /** How far a section is from what it was compared with; empty if it was not. */
  public static String likeness(Likeness likeness) {
    String kick = strokes("kick", likeness.kick());
    String hands = strokes("hands", likeness.hands());
    return kick + (kick.isEmpty() || hands.isEmpty() ? "" : ", ") + hands;
  }

  private static String strokes(String part, @Nullable Integer count) {
    if (count == null) {
      return "";
    }
    return part
        + (count == 0 ? " the same" : count == 1 ? " 1 stroke off" : " " + count + " strokes off");
  }

  private static List<Drawing> drawings(Pictures.@Nullable Picture picture) {
    return picture == null
        ? List.of()
        : picture.systems().stream().map(Pictures.StaffRow::drawing).toList();
  }
}
