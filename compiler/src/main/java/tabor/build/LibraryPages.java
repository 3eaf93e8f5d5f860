package tabor.build;

import java.util.List;
import tabor.emit.font.OpenFont;
import tabor.emit.html.FoundPage;
import tabor.emit.html.OverviewPage;
import tabor.find.Found;
import tabor.find.Overview;

/** Pages about many lessons. */
public final class LibraryPages {
  private LibraryPages() {}

  /**
   * What was found, with a picture of each section, as long as there is room for them: what comes
   * after {@link DrawnSize#MOST} strokes stands there without.
   *
   * @param asked what was looked for, a few words each
   */
  public static String found(String title, List<String> asked, List<Found> all) {
    long[] drawn = {0};
    return FoundPage.write(
        title,
        asked,
        all,
        one -> {
          drawn[0] += DrawnSize.of(one.groove());
          return drawn[0] > DrawnSize.MOST
              ? null
              : PageDrawings.alone(one.groove(), OpenFont.get());
        });
  }

  /** A term: every lesson, and what comes first when. */
  public static String overview(String title, Overview overview) {
    return OverviewPage.write(title, overview);
  }
}
