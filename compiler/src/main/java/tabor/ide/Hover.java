package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Explanation;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.ide.Definitions.Definition;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.Edit;
import tabor.syntax.LaneBar;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.StatementRow;

/** What to say about the thing under the cursor. */
public final class Hover {
  private final Cursor cursor;
  private final Library library;

  private Hover(Cursor cursor, Library library) {
    this.cursor = cursor;
    this.library = library;
  }

  /**
   * A text beside the cursor.
   *
   * @param markdown what it says
   * @param span what it is about
   */
  public record Note(String markdown, Span span) {
    /** The same for who cannot show Markdown. */
    public String plain() {
      return markdown
          .replaceAll("(?m)^```.*\\R?", "")
          .replace("**", "")
          .replace("`", "")
          .replace("  \n", "\n")
          .strip();
    }
  }

  /** The note for an offset; empty where there is nothing to say. */
  public static Optional<Note> at(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<String> parts = new ArrayList<>();
    SyntaxToken token = cursor.token();
    if (token != null) {
      new Hover(cursor, library).about(token).ifPresent(parts::add);
    }
    Span about = token == null ? new Span(offset, offset) : cursor.inFile(token.span());
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      Span span = compiled.span(diagnostic.spot());
      if (span.touches(offset)) {
        parts.add(
            "**" + diagnostic.code().word() + "**: " + Explanation.of(diagnostic.code()).summary());
        about = token == null ? span : about;
      }
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Note(String.join("\n\n---\n\n", parts), about));
  }

  private Optional<String> about(SyntaxToken token) {
    return Optional.ofNullable(
        switch (token.role()) {
          case HIT, SILENCE, HOLD -> joined(sign(token), strokes(token));
          case LIMB -> joined(limb(token), partOrStatement());
          case SURFACE, SURFACE_NAME -> joined(surface(token.text()), part());
          case PATTERN, PATTERN_NAME -> pattern(token.text());
          case SECTION, SECTION_NAME -> section(token.text());
          case KIT, KIT_NAME -> kit(token.text());
          case COUNT ->
              token.count() == null ? statement() : count(token.span(), token.count().count());
          case KEYWORD -> statement();
          case NUMBER, SIGN -> joined(beatSign(), spread(token));
          case VALUE, LEVEL, PLAYER, PLAYER_NAME -> statement();
          case LETTER_NAME, TEXT, FILE -> null;
        });
  }

  private static @Nullable String joined(@Nullable String one, @Nullable String other) {
    return one == null ? other : other == null ? one : one + "\n\n" + other;
  }

  /** What the letter under the cursor sounds: who, on what, where, and what sounds with it. */
  private @Nullable String strokes(SyntaxToken token) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null) {
      Surface surface = token.hit() == null ? null : cursor.kit().letter(token.hit().letter());
      return surface == null ? null : surface(surface, cursor.kit());
    }
    List<Stroke> struck = Simultaneous.struckBy(groove, cursor);
    if (struck.isEmpty()) {
      return null;
    }
    Stroke first = struck.get(0);
    int beat = first.slot().division().beat();
    Set<Integer> bars =
        struck.stream().map(Stroke::bar).collect(Collectors.toCollection(TreeSet::new));
    String who = first.limb().words() + ", " + first.surface().words();
    String chosen =
        first.dealt() ? " (Tabor chose the " + (first.limb().isHand() ? "hand" : "foot") + ")" : "";
    return who
        + chosen
        + "  \n"
        + groove.name()
        + ", "
        + NamedBars.words(bars)
        + ", count "
        + BarCounts.of(groove, first)
        + code(BarPreview.beats(groove, first.bar(), beat, first.slot().division().beats()));
  }

  /** The sign of a stroke that the cursor stands on: a grace note or a suffix. */
  private @Nullable String sign(SyntaxToken token) {
    Beat.Hit hit = token.hit();
    Line line = cursor.line();
    if (hit == null || line == null) {
      return null;
    }
    Span letter = token.letterSpan(line);
    int at = cursor.offset() - cursor.start() - line.start();
    if (at < letter.start()) {
      return row(StatementRows.grace(hit.grace()));
    }
    String text = line.passage().text();
    int end = line.start() + token.span().end();
    int from = line.start() + letter.end();
    for (Beat.Suffix suffix : hit.suffixes()) {
      from = text.indexOf(suffix.sign(), from);
      if (from < 0 || from >= end) {
        return null;
      }
      if (cursor.offset() - cursor.start() < from + suffix.sign().length() + 1
          && at >= letter.end()) {
        return row(StatementRows.suffix(suffix));
      }
      from += suffix.sign().length();
    }
    return null;
  }

  /** On {@code %}: what it repeats, and the bars that it stands for. */
  private @Nullable String beatSign() {
    Groove groove = cursor.groove().orElse(null);
    Line line = cursor.line();
    if (line == null || !(line.statement() instanceof PartStatement.Lane lane)) {
      return statement();
    }
    int at = cursor.offset() - cursor.start() - line.start();
    int first = groove == null ? 1 : NamedBars.first(cursor.section(), line, groove);
    for (int i = 0; i < lane.bars().size(); i++) {
      LaneBar bar = lane.bars().get(i);
      if (bar.repeat() && bar.span().touches(at)) {
        Set<Integer> bars = new TreeSet<>();
        int last = groove == null ? 0 : groove.bars();
        for (int n = first + i; n <= last; n += lane.ostinato() ? lane.bars().size() : last + 1) {
          bars.add(n);
        }
        String said = row(StatementRows.repeat());
        return bars.isEmpty() || groove == null
            ? said
            : joined(
                said,
                groove.name()
                    + ", "
                    + NamedBars.words(bars)
                    + code(BarPreview.bar(groove, bars.iterator().next())));
      }
    }
    return null;
  }

  /** On {@code :2} behind a word: what it says, and the beats that the word takes. */
  private @Nullable String spread(SyntaxToken token) {
    Line line = cursor.line();
    Groove groove = cursor.groove().orElse(null);
    if (line == null || !(line.statement() instanceof PartStatement.Lane lane)) {
      return null;
    }
    int first = groove == null ? 1 : NamedBars.first(cursor.section(), line, groove);
    for (int i = 0; i < lane.bars().size(); i++) {
      int beat = 0;
      for (Beat word : lane.bars().get(i).beats()) {
        int beats = word.beats() == null ? 1 : word.beats().whole();
        boolean here =
            word.beats() != null
                && token.span().end() >= word.beats().span().start()
                && token.span().end() <= word.beats().span().end();
        if (here) {
          String said = row(StatementRows.spread());
          return groove == null || first + i > groove.bars()
              ? said
              : joined(
                  said,
                  groove.name()
                      + ", bar "
                      + (first + i)
                      + code(BarPreview.beats(groove, first + i, beat, beats)));
        }
        beat += beats;
      }
    }
    return null;
  }

  private @Nullable String limb(SyntaxToken token) {
    Groove groove = cursor.groove().orElse(null);
    Limb limb = null;
    if (cursor.line() != null) {
      for (LimbRef named : SyntaxNodes.all(cursor.line().statement(), LimbRef.class)) {
        limb = named.span().equals(token.span()) ? named.limb() : limb;
      }
    }
    if (groove == null || limb == null) {
      return null;
    }
    Surface plays = groove.plays().get(limb);
    return plays == null ? null : "the " + limb.words() + " plays the " + plays.words();
  }

  private @Nullable String partOrStatement() {
    String part = part();
    return part == null ? statement() : part;
  }

  /** On the heading of a part: the first bar that it writes. */
  private @Nullable String part() {
    Line line = cursor.line();
    Groove groove = cursor.groove().orElse(null);
    boolean part =
        line != null
            && (line.statement() instanceof PartStatement.Lane
                || line.statement() instanceof PartStatement.Played);
    if (!part || line == null || groove == null) {
      return null;
    }
    int bar = Math.min(NamedBars.first(cursor.section(), line, groove), groove.bars());
    return groove.name() + ", bar " + bar + code(BarPreview.bar(groove, bar));
  }

  private @Nullable String surface(String name) {
    Surface surface = cursor.kit().surface(name);
    return surface == null ? null : surface(surface, cursor.kit());
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

  private @Nullable String pattern(String name) {
    Optional<Definition> written = find(NameKind.PATTERN, name);
    if (written.isPresent()) {
      return "pattern **" + name + "**" + code(written.get().section().passage().text().strip());
    }
    return Rudiments.named(name)
        .map(
            r ->
                "rudiment "
                    + r.number()
                    + ", **"
                    + r.name()
                    + "**"
                    + code(PatternText.of(r.places())))
        .or(
            () ->
                Timelines.named(name)
                    .map(p -> "timeline **" + name + "**" + code(PatternText.of(p))))
        .orElse(null);
  }

  private Optional<Definition> find(NameKind kind, String name) {
    return Definitions.find(cursor.compiled(), library, kind, name);
  }

  private @Nullable String section(String name) {
    Definition found = find(NameKind.SECTION, name).orElse(null);
    if (found == null) {
      return null;
    }
    StringBuilder text = new StringBuilder("**").append(name).append("**");
    if (found.title() != null) {
      text.append(": ").append(found.title());
    }
    Groove groove = Cursor.grooveOf(found.compiled(), found.section().passage()).orElse(null);
    if (groove != null) {
      text.append("  \n").append(groove.bars()).append(groove.bars() == 1 ? " bar" : " bars");
      text.append(" of ").append(groove.setting().meters());
      if (groove.isStep()) {
        Changes.of(groove).words().forEach(word -> text.append("\n- ").append(word));
      }
    }
    return text.toString();
  }

  private @Nullable String kit(String name) {
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
        .map(found -> "kit **" + name + "**" + code(found.section().passage().text().strip()))
        .orElse(null);
  }

  /** The beat of a count, in the bar that the statement names, or the first that has a stroke. */
  private @Nullable String count(Span span, Count count) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || cursor.line() == null) {
      return null;
    }
    Set<Integer> bars = NamedBars.of(cursor.line().statement(), span, groove);
    int beat = count.beat() - 1;
    List<Integer> having =
        bars.stream().filter(bar -> beat < groove.meter(bar).beatCount()).toList();
    if (having.isEmpty() || beat < 0) {
      return null;
    }
    int bar =
        groove.written().stream()
            .filter(s -> having.contains(s.bar()) && BarCounts.of(groove, s).equals(count))
            .mapToInt(Stroke::bar)
            .min()
            .orElse(having.get(0));
    return count
        + " in "
        + NamedBars.words(bars)
        + (bars.size() == 1 ? "" : ", here bar " + bar)
        + code(BarPreview.beats(groove, bar, beat, 1));
  }

  /** How the statement is written and what it does; below {@code follows} where it struck. */
  private @Nullable String statement() {
    Line line = cursor.line();
    if (line == null) {
      return null;
    }
    String said = StatementRows.of(line).map(Hover::row).orElse(null);
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || !(line.statement() instanceof Edit.Follows)) {
      return said;
    }
    String counts =
        groove.written().stream()
            .filter(stroke -> stroke.spot().equals(line.spot()))
            .map(stroke -> BarCounts.of(groove, stroke).toString())
            .distinct()
            .collect(Collectors.joining(" "));
    return counts.isEmpty() ? said : joined(said, "here it adds strokes at " + counts);
  }

  private static String row(StatementRow row) {
    return "`" + row.usage() + "`\n\n" + row.meaning() + code(row.example());
  }

  private static String code(String text) {
    return "\n\n```text\n" + text + "\n```";
  }
}
