package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Explanation;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.ide.Catalog.Entry;
import tabor.ide.Catalog.Kind;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.pattern.Place;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.PartStatement;

/** What to say about the thing under the cursor. */
public final class Hover {
  private Hover() {}

  /**
   * A text beside the cursor.
   *
   * @param markdown what it says
   * @param span what it is about
   */
  public record Note(String markdown, Span span) {}

  /** The note for an offset; empty where there is nothing to say. */
  public static Optional<Note> at(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<String> parts = new ArrayList<>();
    Leaf leaf = cursor.leaf();
    if (leaf != null) {
      String said = leaf(cursor, leaf, library);
      if (said != null) {
        parts.add(said);
      }
    }
    Span about = leaf == null ? new Span(offset, offset) : cursor.inFile(leaf.span());
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      Span span = compiled.span(diagnostic.spot());
      if (span.touches(offset)) {
        parts.add(
            "**" + diagnostic.code().word() + "**: " + Explanation.of(diagnostic.code()).summary());
        about = leaf == null ? span : about;
      }
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Note(String.join("\n\n---\n\n", parts), about));
  }

  private static @Nullable String leaf(Cursor cursor, Leaf leaf, Library library) {
    return switch (leaf.role()) {
      case HIT, REST, HOLD -> stroke(cursor, leaf, library);
      case LIMB -> laneOr(cursor, limb(cursor, leaf));
      case SURFACE, SURFACE_NAME -> laneOr(cursor, surface(kit(cursor, library), leaf.text()));
      case LETTER_NAME -> null;
      case PATTERN, PATTERN_NAME -> pattern(cursor, leaf.text(), library);
      case SECTION, SECTION_NAME -> section(cursor, leaf.text(), library);
      case KIT, KIT_NAME -> kit(cursor, leaf.text(), library);
      case COUNT -> count(cursor, leaf);
      case KEYWORD -> keyword(cursor, leaf);
      case VALUE, LEVEL, NUMBER, TEXT, FILE, SIGN, COMMENT -> null;
    };
  }

  private static Kit kit(Cursor cursor, Library library) {
    return Situation.at(cursor.compiled(), cursor.offset(), library).kit();
  }

  private static @Nullable String stroke(Cursor cursor, Leaf leaf, Library library) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null) {
      Surface surface =
          leaf.hit() == null ? null : kit(cursor, library).letter(leaf.hit().letter());
      return surface == null ? null : surface(surface, kit(cursor, library));
    }
    List<Stroke> struck = Slices.struckBy(groove, cursor);
    if (struck.isEmpty()) {
      return null;
    }
    Stroke first = struck.get(0);
    int beat = groove.meter().beatAt(first.at());
    String who = first.limb().words() + ", " + first.surface().words();
    return who
        + (first.dealt() ? " (the hand is the compiler's choice)" : "")
        + "  \n"
        + groove.name()
        + ", bar "
        + first.bar()
        + ", beat "
        + (beat + 1)
        + code(Grid.beat(groove, first.bar(), beat));
  }

  private static @Nullable String limb(Cursor cursor, Leaf leaf) {
    return cursor
        .groove()
        .flatMap(
            groove ->
                groove.plays().entrySet().stream()
                    .filter(
                        entry ->
                            entry.getKey().words().equals(leaf.text())
                                || entry.getKey().words().equals(leaf.text() + " hand"))
                    .findFirst())
        .map(entry -> entry.getKey().words() + ": plays the " + entry.getValue().words())
        .orElse(null);
  }

  /** On the heading of a part: what was said, and the section's first bar as a grid. */
  private static @Nullable String laneOr(Cursor cursor, @Nullable String said) {
    boolean part =
        cursor.line() != null
            && (cursor.line().statement() instanceof PartStatement.Lane
                || cursor.line().statement() instanceof PartStatement.Played);
    Groove groove = cursor.groove().orElse(null);
    if (!part || groove == null) {
      return said;
    }
    String grid =
        groove.name() + ", bar " + groove.firstBar() + code(Grid.bar(groove, groove.firstBar()));
    return said == null ? grid : said + "\n\n" + grid;
  }

  private static @Nullable String surface(Kit kit, String name) {
    Surface surface = kit.surface(name);
    return surface == null ? null : surface(surface, kit);
  }

  private static String surface(Surface surface, Kit kit) {
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

  private static @Nullable String pattern(Cursor cursor, String name, Library library) {
    Optional<Entry> written = Catalog.find(cursor.compiled(), library, Kind.PATTERN, name);
    if (written.isPresent()) {
      String text = written.get().section().passage().text();
      return "pattern **" + name + "**" + code(text.strip());
    }
    return Rudiments.named(name)
        .map(
            rudiment ->
                "rudiment "
                    + rudiment.number()
                    + ", **"
                    + rudiment.name()
                    + "**"
                    + code(sticking(rudiment.places())))
        .or(() -> Timelines.named(name).map(p -> "timeline **" + name + "**" + code(sticking(p))))
        .orElse(null);
  }

  /** The places of a pattern as they would be written. */
  static String sticking(List<Place> places) {
    StringBuilder text = new StringBuilder();
    for (Place place : places) {
      char letter = place.accent() ? Character.toUpperCase(place.letter()) : place.letter();
      text.append("'".repeat(place.small())).append(letter);
      text.append(place.diddle() ? "/" : "").append(place.buzz() ? "~" : "");
    }
    return text.toString();
  }

  private static @Nullable String section(Cursor cursor, String name, Library library) {
    Entry entry = Catalog.find(cursor.compiled(), library, Kind.SECTION, name).orElse(null);
    if (entry == null) {
      return null;
    }
    StringBuilder text = new StringBuilder("**").append(name).append("**");
    if (entry.title() != null) {
      text.append(": ").append(entry.title());
    }
    Groove groove = Cursor.grooveOf(entry.compiled(), entry.section().passage()).orElse(null);
    if (groove != null) {
      text.append("  \n").append(groove.bars()).append(groove.bars() == 1 ? " bar" : " bars");
      text.append(" of ").append(groove.meter().signature());
      if (groove.isStep()) {
        text.append("\n\n").append(changes(groove));
      }
    }
    return text.toString();
  }

  private static String changes(Groove step) {
    Changes changes = Changes.of(step);
    return changes.words().stream().map(word -> "- " + word).collect(Collectors.joining("\n"));
  }

  private static @Nullable String kit(Cursor cursor, String name, Library library) {
    if (Kits.named(name).isPresent()) {
      Kit kit = Kits.named(name).get();
      String pieces =
          kit.surfaces().values().stream()
              .filter(surface -> !kit.lacks(surface.name()))
              .map(Surface::name)
              .collect(Collectors.joining(", "));
      return "kit **" + name + "**: " + pieces;
    }
    return Catalog.find(cursor.compiled(), library, Kind.KIT, name)
        .map(entry -> "kit **" + name + "**" + code(entry.section().passage().text().strip()))
        .orElse(null);
  }

  private static @Nullable String count(Cursor cursor, Leaf leaf) {
    Groove groove = cursor.groove().orElse(null);
    Count count = leaf.count();
    if (groove == null || count == null || count.beat() > groove.meter().beatCount()) {
      return null;
    }
    Map<String, List<Stroke>> struck =
        BarCounts.struck(groove, s -> groove.meter().beatAt(s.at()) == count.beat() - 1);
    int bar =
        struck.values().stream()
            .flatMap(List::stream)
            .mapToInt(Stroke::bar)
            .min()
            .orElse(groove.firstBar());
    return "bar " + bar + ", beat " + count.beat() + code(Grid.beat(groove, bar, count.beat() - 1));
  }

  private static @Nullable String keyword(Cursor cursor, Leaf leaf) {
    if (cursor.line() == null) {
      return null;
    }
    for (Phrase phrase : Phrase.ALL) {
      if (phrase.keyword().equals(leaf.text())
          && phrase.rooms().contains(Situation.room(cursor.section()))) {
        return "`" + phrase.form().shown() + "`\n\n" + phrase.meaning();
      }
    }
    return null;
  }

  private static String code(String text) {
    return "\n\n```text\n" + text + "\n```";
  }
}
