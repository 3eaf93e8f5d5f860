package tabor.ide;

import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** What to say about a sign in a part; null where there is nothing to say. */
record SignNotes(Cursor cursor) {
  /** The sign of a stroke that the cursor stands on: a grace note or a suffix. */
  @Nullable String sign(SyntaxToken token) {
    Beat.Hit hit = token.hit();
    Line line = cursor.line();
    if (hit == null || line == null) {
      return null;
    }
    Span letter = token.letterSpan(line);
    int at = cursor.offset() - cursor.start() - line.start();
    if (at < letter.start()) {
      return NoteText.row(StatementRows.sign("'".repeat(hit.grace()) + "x"));
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
        return NoteText.row(StatementRows.sign("x" + suffix.sign()));
      }
      from += suffix.sign().length();
    }
    return null;
  }

  /** On {@code %}: what it repeats, and the bars that it stands for. */
  @Nullable String beatSign() {
    Groove groove = cursor.groove().orElse(null);
    Line line = cursor.line();
    if (line == null) {
      return null;
    }
    if (!(line.statement() instanceof PartStatement.Lane lane)) {
      return StatementRows.of(line).map(NoteText::row).orElse(null);
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
        String said = NoteText.row(StatementRows.sign("%"));
        return bars.isEmpty() || groove == null
            ? said
            : NoteText.joined(
                said,
                groove.name()
                    + ", "
                    + NamedBars.words(bars)
                    + NoteText.code(BarPreview.bar(groove, bars.iterator().next())));
      }
    }
    return null;
  }

  /** On {@code :2} behind a word: what it says, and the beats that the word takes. */
  @Nullable String spread(SyntaxToken token) {
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
          String said = NoteText.row(StatementRows.sign("x:2"));
          return groove == null || first + i > groove.bars()
              ? said
              : NoteText.joined(
                  said,
                  groove.name()
                      + ", bar "
                      + (first + i)
                      + NoteText.code(BarPreview.beats(groove, first + i, beat, beats)));
        }
        beat += beats;
      }
    }
    return null;
  }
}
