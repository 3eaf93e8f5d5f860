package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.rhythm.Meter;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** Says that a bar has too few or too many beats, and what was probably meant. */
record BarLengths(SectionFrame frame, Problems problems, Line line) {
  /** Over how many beats a word spreads. */
  static int beats(Beat word) {
    return word.beats() == null ? 1 : Math.max(1, word.beats().whole());
  }

  /** {@code 1 beat}, {@code 3 beats}. */
  static String inWords(long beats) {
    return beats == 1 ? "1 beat" : beats + " beats";
  }

  /**
   * A diagnostic on a bar that has so many beats and room for so many others; null where an earlier
   * bar of the part has told it for all.
   */
  @Nullable Diagnostic wrong(LaneBar written, int bar, Meter meter, long has, int room) {
    List<LaneBar> single = bar == 0 ? List.of() : barForEachBeat(room);
    if (!single.isEmpty() && written != single.get(0)) {
      return null;
    }
    Diagnostic made =
        problems.make(
            Code.BAR_LENGTH,
            line.spot(written.span()),
            bar,
            null,
            bar == 0
                ? "the pickup has " + inWords(has) + ", but it has room for " + inWords(room)
                : "bar "
                    + bar
                    + " has "
                    + inWords(has)
                    + ", but "
                    + meter.words()
                    + " has "
                    + inWords(room));
    Diagnostic unit = longBeats(made, bar, meter, has);
    if (unit != null) {
      return unit;
    }
    if (!single.isEmpty()) {
      return barLinesOut(made, single, room);
    }
    String regrouped = regrouped(written, room);
    if (regrouped != null) {
      made =
          made.help("each word between spaces is one beat: " + regrouped)
              .fix("write “" + regrouped + "”", line.spot(written.span()), regrouped);
    }
    return has < room ? tooShort(made, written, has, room) : tooLong(made, written, bar, has, room);
  }

  /** The bars of a part that has a bar line after each beat; empty for any other. */
  private List<LaneBar> barForEachBeat(int room) {
    List<LaneBar> bars =
        line.statement() instanceof PartStatement.Lane lane ? lane.bars() : List.of();
    boolean single = room > 1 && !bars.isEmpty() && bars.size() % room == 0;
    for (LaneBar bar : bars) {
      single &= !bar.repeat() && bar.beats().size() == 1 && bar.beats().get(0).beats() == null;
    }
    return single && frame.meters().size() == 1 ? bars : List.of();
  }

  private Diagnostic barLinesOut(Diagnostic made, List<LaneBar> bars, int room) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < bars.size(); i++) {
      text.append(i == 0 ? "" : i % room == 0 ? " | " : " ");
      text.append(line.spot(bars.get(i).span()).text());
    }
    Span all = bars.get(0).span().to(bars.get(bars.size() - 1).span());
    return made.help("bar lines stand between bars, not between beats: " + text)
        .fix("write “" + text + "”", line.spot(all), text.toString());
  }

  /** A word for each unit where {@code in} made longer beats of them. */
  private @Nullable Diagnostic longBeats(Diagnostic made, int bar, Meter meter, long has) {
    Meter usual = Meter.of(meter.count(), meter.unit());
    if (bar == 0
        || has != usual.beatCount()
        || usual.beatCount() <= meter.beatCount()
        || meter.isEven()) {
      return null;
    }
    String in = meter.words().substring(meter.signature().length() + 1);
    String grouped = in.replace("in ", "grouped ");
    Diagnostic told =
        made.help(
            "“"
                + in
                + "” makes "
                + meter.beatCount()
                + " long beats of the bar; “"
                + grouped
                + "” leaves "
                + has
                + " beats and groups them");
    return frame.meterIn() == null
        ? told
        : told.fix("write “" + grouped + "”", frame.meterIn(), " grouped ");
  }

  /**
   * The bar in the right number of words, where it was written stroke by stroke or in one word;
   * null where it was not.
   */
  private @Nullable String regrouped(LaneBar written, int room) {
    List<Beat.Element> slots = new ArrayList<>();
    for (Beat word : written.beats()) {
      if (word.beats() != null || (word.elements().size() != 1 && written.beats().size() != 1)) {
        return null;
      }
      slots.addAll(word.elements());
    }
    int each = room == 0 ? 0 : slots.size() / room;
    if (each < 2 || slots.size() % room != 0) {
      return null;
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < slots.size(); i++) {
      text.append(i > 0 && i % each == 0 ? " " : "").append(line.spot(slots.get(i).span()).text());
    }
    return text.toString();
  }

  private Diagnostic tooShort(Diagnostic made, LaneBar written, long has, int room) {
    Span end = new Span(written.span().end(), written.span().end());
    Diagnostic told =
        made.help() != null
            ? made
            : made.help(
                "each word between spaces is one beat: write "
                    + (room - has == 1 ? "one more word" : (room - has) + " more words")
                    + ", a dot for a silent beat");
    return told.fix("fill the bar with rests", line.spot(end), " .".repeat((int) (room - has)));
  }

  private Diagnostic tooLong(Diagnostic made, LaneBar written, int bar, long has, int room) {
    Diagnostic told =
        made.help() != null
            ? made
            : made.help(
                "each word between spaces is one beat: take "
                    + (has - room == 1 ? "one word" : inWords(has - room))
                    + " out, or set a bar line");
    List<Beat> words = written.beats();
    List<Diagnostic.Edit> barLines = new ArrayList<>();
    Span surplus = null;
    int next = bar;
    long full = room; // beats from the beginning to the end of the bar that is being filled
    long kept = 0;
    for (int i = 0; i + 1 < words.size(); i++) {
      kept += beats(words.get(i));
      if (kept == full) {
        full += frame.meters().of(++next).beatCount();
        Span end = new Span(words.get(i).span().end(), words.get(i).span().end());
        barLines.add(new Diagnostic.Edit(line.spot(end), " |"));
        surplus =
            surplus == null
                ? new Span(end.start(), words.get(words.size() - 1).span().end())
                : surplus;
      }
    }
    if (!barLines.isEmpty() && has == full) {
      String title = barLines.size() == 1 ? "set the bar line" : "set the bar lines";
      told = told.fix(new Diagnostic.Fix(title, barLines));
    }
    return surplus == null ? told : told.fix("cut the surplus", line.spot(surplus), "");
  }
}
