package tabor.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.groove.Lesson;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Section;

/** What a lesson asks of the printed page that the page does not have yet. */
public final class NotYet {
  private NotYet() {}

  /** A sentence that names it; empty where nothing is left out. */
  public static Optional<String> of(Lesson lesson) {
    List<String> missing = new ArrayList<>();
    Lesson.Extras extras = lesson.extras();
    List<PageNotes> notes = lesson.sections().stream().map(Section::page).toList();
    boolean wishes =
        !extras.wishes().equals(PageWishes.NONE)
            || notes.stream().anyMatch(n -> n.newPage() || !n.wishes().equals(PageWishes.NONE));
    add(missing, wishes, "page");
    add(
        missing,
        !extras.goals().isEmpty() || notes.stream().anyMatch(n -> !n.goals().isEmpty()),
        "goal");
    add(missing, extras.log() != null, "log");
    add(missing, notes.stream().anyMatch(NotYet::blank), "blank");
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "the printed page does not show these lines yet: " + String.join(", ", missing));
  }

  private static boolean blank(PageNotes notes) {
    return notes.blankBars() > 0 || notes.blankSticking() || !notes.blankParts().isEmpty();
  }

  private static void add(List<String> words, boolean there, String word) {
    if (there) {
      words.add(word);
    }
  }
}
