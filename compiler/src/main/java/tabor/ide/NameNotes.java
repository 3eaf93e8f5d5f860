package tabor.ide;

import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.ide.Definitions.Definition;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;

/** What to say about a name: of a surface, a pattern, a section or a kit; null where it is none. */
record NameNotes(Cursor cursor, Library library) {
  /** A surface of the kit in force. */
  @Nullable String surface(String name) {
    Surface surface = cursor.kit().surface(name);
    return surface == null ? null : surface(surface, cursor.kit());
  }

  /** A surface on a kit: its words, its letter, its place and its key. */
  static String surface(Surface surface, Kit kit) {
    StringBuilder text = new StringBuilder("**").append(surface.name()).append("**: ");
    text.append(surface.words());
    char letter = kit.letterOf(surface);
    if (letter != 0) {
      text.append(", letter `").append(letter).append('`');
    }
    text.append("  \nstaff: ").append(staff(surface)).append("  \nMIDI key ").append(surface.key());
    Surface struck = kit.struck(surface);
    if (struck == null) {
      text.append("  \n").append(kit.name()).append(" lacks it");
    } else if (struck != surface) {
      text.append("  \non ").append(kit.name()).append(" the ").append(struck.words());
      text.append(" stands in");
    }
    return text.toString();
  }

  private static String staff(Surface surface) {
    int half = surface.place().halfSpaces();
    String where =
        half < 0
            ? (half == -1 ? "below the first line" : "under the staff")
            : half > 8
                ? (half == 9 ? "above the fifth line" : "over the staff")
                : (half % 2 == 0 ? "line " : "space ") + (half / 2 + 1);
    String head = surface.head() == Surface.Head.NORMAL ? "" : ", head " + surface.head().word();
    return where + " (" + surface.place() + ")" + head;
  }

  /** A pattern of the file or of those it uses, a rudiment or a timeline. */
  @Nullable String pattern(String name) {
    Optional<Definition> written = find(NameKind.PATTERN, name);
    if (written.isPresent()) {
      return "pattern **"
          + name
          + "**"
          + NoteText.code(written.get().section().passage().text().strip());
    }
    return Rudiments.named(name)
        .map(
            r ->
                "rudiment "
                    + r.number()
                    + ", **"
                    + r.name()
                    + "**"
                    + NoteText.code(PatternText.of(r.places())))
        .or(
            () ->
                Timelines.named(name)
                    .map(p -> "timeline **" + name + "**" + NoteText.code(PatternText.of(p))))
        .orElse(null);
  }

  private Optional<Definition> find(NameKind kind, String name) {
    return Definitions.find(cursor.compiled(), library, kind, name);
  }

  /** A groove or step: its title, its length, what it changes. */
  @Nullable String section(String name) {
    Definition found = find(NameKind.SECTION, name).orElse(null);
    if (found == null) {
      return null;
    }
    StringBuilder text = new StringBuilder("**").append(name).append("**");
    if (found.title() != null) {
      text.append(": ").append(found.title());
    }
    Sheet sheet = Cursor.sheetOf(found.compiled(), found.section().passage()).orElse(null);
    Groove groove = Cursor.grooveOf(found.compiled(), found.section().passage()).orElse(null);
    if (sheet != null) {
      groove = found.compiled().lesson().section(name).map(NameNotes::groove).orElse(null);
      int count = sheet.variations().size();
      text.append("  \n").append(count).append(count == 1 ? " variation" : " variations");
      text.append(" of ").append(sheet.base().name());
    }
    if (groove != null) {
      text.append("  \n").append(groove.bars()).append(groove.bars() == 1 ? " bar" : " bars");
      text.append(" of ").append(groove.setting().meters());
      if (groove.isStep()) {
        Changes.of(groove).words().forEach(word -> text.append("\n- ").append(word));
      }
    }
    return text.toString();
  }

  private static @Nullable Groove groove(Section section) {
    return section instanceof Groove groove ? groove : null;
  }

  /** A kit: its pieces, or as the file writes it. */
  @Nullable String kit(String name) {
    if (Kits.named(name).isPresent()) {
      Kit kit = Kits.named(name).get();
      String pieces =
          kit.surfaces().values().stream()
              .filter(surface -> !kit.lacks(surface.name()))
              .map(Surface::name)
              .collect(Collectors.joining(", "));
      return "kit **" + name + "**: " + pieces;
    }
    return find(NameKind.KIT, name)
        .map(
            found ->
                "kit **" + name + "**" + NoteText.code(found.section().passage().text().strip()))
        .orElse(null);
  }
}
