package tabor.build;

import java.util.List;
import tabor.emit.font.OpenFont;
import tabor.emit.html.FoundPage;
import tabor.emit.html.OverviewPage;
import tabor.find.Found;
import tabor.find.Overview;
import tabor.words.Words;

/** Pages about many lessons. */
public final class LibraryPages {
  private LibraryPages() {}

  /**
   * What was found, with a picture of each section. It may be shown to students, so what a lesson
   * leaves blank for them stays blank. What comes after {@link DrawnSize#MOST_FOUND} strokes stands
   * without notes.
   *
   * @param asked what was looked for, a few words each
   * @param words that the page is written in
   */
  public static String found(List<String> asked, List<Found> all, Words words) {
    List<Found> printed =
        all.stream().map(one -> one.with(Printing.plain().printed(one.groove()))).toList();
    long size = 0;
    int drawn = 0;
    for (Found one : printed) {
      size += DrawnSize.IN_LINES.of(one.groove());
      if (size > DrawnSize.MOST_FOUND) {
        break;
      }
      drawn++;
    }
    return FoundPage.write(
        asked, printed, drawn, one -> PageDrawings.alone(one.groove(), OpenFont.get()), words);
  }

  /**
   * A term: every lesson, and what comes first when.
   *
   * @param words that the page is written in
   */
  public static String overview(String title, Overview overview, Words words) {
    return OverviewPage.write(title, overview, words);
  }
}
