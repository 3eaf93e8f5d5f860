package tabor.ide;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tabor.groove.CountingWords;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.resolve.SaidCounts;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** What to say about the music that a word makes; null where there is nothing to say. */
record MusicNotes(Cursor cursor) {
  /** What the letter under the cursor sounds: who, on what, where, and what sounds with it. */
  @Nullable String strokes(SyntaxToken token) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null) {
      Surface surface = token.hit() == null ? null : cursor.kit().letter(token.hit().letter());
      return surface == null ? null : NameNotes.surface(surface, cursor.kit());
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
        + NoteText.code(
            BarPreview.beats(groove, first.bar(), beat, first.slot().division().beats()));
  }

  /** On a limb: what it plays here. */
  @Nullable String limb(SyntaxToken token) {
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

  /** On the heading of a part: the first bar that it writes. */
  @Nullable String part() {
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
    return groove.name() + ", bar " + bar + NoteText.code(BarPreview.bar(groove, bar));
  }

  /** The beat of a count, in the bar that the statement names, or the first that has a stroke. */
  @Nullable String count(Span span, CountRef written) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || cursor.line() == null) {
      return null;
    }
    CountingWords words = groove.setting().wording().read();
    List<Count> meant = SaidCounts.of(written, words, groove.meter());
    if (meant.isEmpty()) {
      return null;
    }
    Count full = meant.get(0);
    boolean said = !full.equals(written.count());
    Count count =
        said ? new Count(full.beat(), full.syllable(), full.places(), 0) : written.count();
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
    String shown = said ? written.words() + ", that is " + full + "," : count.toString();
    return shown
        + " in "
        + NamedBars.words(bars)
        + (bars.size() == 1 ? "" : ", here bar " + bar)
        + NoteText.code(BarPreview.beats(groove, bar, beat, 1));
  }

  /** On a word of the lesson after {@code every}: the counts that it means, in our syllables. */
  @Nullable String every(String word) {
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || !BarCounts.everySaid(groove).contains(word)) {
      return null;
    }
    String means =
        groove.setting().wording().read().meanings(word).stream()
            .map(
                one ->
                    IntStream.rangeClosed(1, groove.meter().beatCount())
                        .mapToObj(
                            beat -> new Count(beat, one.syllable(), List.of(), one.division()))
                        .map(Count::toString)
                        .collect(Collectors.joining(" ")))
            .collect(Collectors.joining(" or "));
    return "every " + word + ", that is " + means;
  }

  /** How the statement is written and what it does; below {@code follows} where it struck. */
  @Nullable String statement() {
    Line line = cursor.line();
    if (line == null) {
      return null;
    }
    String said = StatementRows.of(line).map(NoteText::row).orElse(null);
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
    return counts.isEmpty() ? said : NoteText.joined(said, "here it adds strokes at " + counts);
  }
}
