package tabor.build;

import tabor.emit.font.OpenFont;
import tabor.emit.html.PageMaker;
import tabor.emit.html.PagePlayerParts;
import tabor.emit.html.PageWriter;
import tabor.groove.Lesson;

/** The practice page's players for a page that somebody else writes. */
public final class PagePlayers {
  private PagePlayers() {}

  /** A player for each section, in order; the sections may come from several lessons. */
  public static PagePlayerParts of(Lesson lesson) {
    PageDrawings drawings = new PageDrawings(lesson, false, OpenFont.get());
    return PageWriter.players(PageMaker.of(lesson, drawings, true, ""));
  }
}
