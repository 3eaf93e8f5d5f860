package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.rhythm.Division;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Bar;
import tabor.syntax.Beat;
import tabor.syntax.Line;

/**
 * Walks along the words of one part and notes each letter with its place. Holds lengthen the letter
 * before them, across words and bar lines.
 */
final class LaneWalker implements Beat.Cases<@Nullable Void> {
  /** A letter at its place. */
  static final class Placed {
    final int bar;
    final Time at;
    Time length;
    final Slot slot;
    final Beat.Hit hit;
    final boolean ghost;
    final Line line;

    Placed(int bar, Time at, Time length, Slot slot, Beat.Hit hit, boolean ghost, Line line) {
      this.bar = bar;
      this.at = at;
      this.length = length;
      this.slot = slot;
      this.hit = hit;
      this.ghost = ghost;
      this.line = line;
    }
  }

  private final Work work;
  private final BarGrid grid;
  private final List<Placed> placed = new ArrayList<>();
  private Line line;

  // where the walk stands
  private int bar;
  private Time at = Time.ZERO;
  private Time length = Time.ZERO;
  private Division division = new Division(0, 1, 1);
  private int slot;
  private Slot whole = new Slot(division, 0, List.of());
  private List<Slot.Part> parts = List.of();
  private boolean ghost;
  private @Nullable Placed sounding;
  private boolean holdRefused;

  LaneWalker(Work work, Line line) {
    this.work = work;
    this.grid = work.grid;
    this.line = line;
  }

  List<Placed> placed() {
    return placed;
  }

  /** Goes on in another line of the same part. */
  void on(Line next) {
    line = next;
  }

  /** A bar in which the part is silent. */
  void silence() {
    sounding = null;
  }

  /** Walks through a bar, which must have as many beats as it has room for; says so if not. */
  void bar(int number, Bar written, boolean first) {
    bar = number;
    int beat = work.firstBeat(number);
    int room = grid.beats() - beat;
    long has = 0;
    for (Beat word : written.beats()) {
      has += beats(word);
    }
    if (has != room && first) {
      work.problems.add(wrongLength(written, has, room));
      work.partial = true;
    }
    for (Beat word : written.beats()) {
      int beats = beats(word);
      if (beat + beats > grid.beats()) {
        break;
      }
      word(word, beat, beats);
      beat += beats;
    }
    if (has != room) {
      sounding = null;
    }
  }

  private static int beats(Beat word) {
    return word.beats() == null ? 1 : Math.max(1, word.beats().whole());
  }

  private Diagnostic wrongLength(Bar written, long has, int room) {
    String name = bar == 0 ? "the pickup" : "bar " + bar;
    Diagnostic made =
        work.problems.make(
            Code.BAR_LENGTH,
            line.spot(written.span()),
            bar,
            null,
            name
                + " has "
                + beatsInWords(has)
                + ", but "
                + (bar == 0 ? "it" : work.meter())
                + (bar == 0 ? " has room for " : " has ")
                + beatsInWords(room));
    List<Beat> words = written.beats();
    if (has < room) {
      StringBuilder rests = new StringBuilder();
      for (long i = has; i < room; i++) {
        rests.append(" .");
      }
      Span end = new Span(written.span().end(), written.span().end());
      return made.help(
              "each word between spaces is one beat: write "
                  + (room - has == 1 ? "one more word" : (room - has) + " more words")
                  + ", a dot for a silent beat")
          .fix(Diagnostic.Fix.of("fill the bar with rests", line.spot(end), rests.toString()));
    }
    Diagnostic help =
        made.help(
            "each word between spaces is one beat: take "
                + (has - room == 1 ? "one word" : (has - room) + " beats")
                + " out, or set a bar line");
    long kept = 0;
    for (int i = 0; i < words.size(); i++) {
      kept += beats(words.get(i));
      if (kept == room && i + 1 < words.size()) {
        Span surplus =
            new Span(words.get(i).span().end(), words.get(words.size() - 1).span().end());
        return help.fix(Diagnostic.Fix.of("cut the surplus", line.spot(surplus), ""));
      }
    }
    return help;
  }

  private static String beatsInWords(long beats) {
    return beats == 1 ? "1 beat" : beats + " beats";
  }

  private void word(Beat word, int beat, int beats) {
    List<Beat.Element> slots = flat(word.elements());
    if (slots.isEmpty()) {
      return;
    }
    if (slots.size() > Work.FINEST) {
      tooFine(word.span());
      return;
    }
    division = new Division(beat, beats, slots.size());
    BarGrid.Word known = grid.word(division);
    for (int i = 0; i < slots.size(); i++) {
      slot = i;
      at = known.starts().get(i);
      length = known.length();
      whole = known.slots().get(i);
      slots.get(i).match(this);
    }
  }

  /** Takes ghost parentheses off, marking what they hold. */
  private static List<Beat.Element> flat(List<Beat.Element> elements) {
    boolean any = false;
    for (Beat.Element element : elements) {
      any |= element instanceof Beat.Ghosts;
    }
    if (!any) {
      return elements;
    }
    List<Beat.Element> all = new ArrayList<>();
    for (Beat.Element element : elements) {
      if (element instanceof Beat.Ghosts ghosts) {
        for (Beat.Element inner : flat(ghosts.elements())) {
          all.add(new Beat.Ghosts(List.of(inner), inner.span()));
        }
      } else {
        all.add(element);
      }
    }
    return all;
  }

  /** Places one element of a played pattern. */
  void place(int number, Time place, Time lasts, Slot where, Beat.Element element) {
    bar = number;
    at = place;
    length = lasts;
    division = where.division();
    slot = where.index();
    whole = where;
    parts = where.parts();
    element.match(this);
    parts = List.of();
  }

  @Override
  public @Nullable Void hit(Beat.Hit hit) {
    Slot where = parts.isEmpty() ? whole : new Slot(division, slot, parts);
    int number = bar;
    Time place = at;
    Time end = work.meter().bar();
    if (!place.before(end)) {
      // A group in a slot of a played pattern that crosses the bar line: the rest is in the next
      // bar.
      number++;
      place = place.minus(end);
      where = grid.fewest(place);
      if (number > work.bars) {
        sounding = null;
        return null;
      }
    }
    sounding = new Placed(number, place, length, where, hit, ghost, line);
    placed.add(sounding);
    holdRefused = false;
    return null;
  }

  @Override
  public @Nullable Void rest(Beat.Rest rest) {
    sounding = null;
    holdRefused = false;
    return null;
  }

  @Override
  public @Nullable Void hold(Beat.Hold hold) {
    Placed before = sounding;
    if (before != null) {
      before.length = before.length.plus(length);
      hintHeldDrum(hold);
    } else if (!holdRefused && !work.partial) {
      holdRefused = true;
      work.problems.add(
          work.problems
              .make(
                  Code.NOTHING_THERE,
                  line.spot(hold.span()),
                  bar,
                  null,
                  "there is no stroke before this hold to go on")
              .help("write a dot for silence, or a stroke before the hold"));
    }
    return null;
  }

  private void hintHeldDrum(Beat.Hold hold) {
    Placed before = sounding;
    if (before == null || before.line != line) {
      return;
    }
    heldAfter.add(new Held(before, hold.span()));
  }

  /** A hold and the letter that it lengthens. */
  record Held(Placed stroke, Span hold) {}

  private final List<Held> heldAfter = new ArrayList<>();

  /** The holds of the walk, for those who know what is struck. */
  List<Held> holds() {
    return heldAfter;
  }

  @Override
  public @Nullable Void group(Beat.Group group) {
    List<Beat.Element> inner = flat(group.elements());
    if (inner.isEmpty()) {
      return null;
    }
    long fineness = (long) division.slots() * inner.size();
    for (Slot.Part part : parts) {
      fineness *= part.of();
    }
    if (fineness > Work.FINEST) {
      tooFine(group.span());
      return null;
    }
    List<Slot.Part> outer = parts;
    Time from = at;
    Time whole = length;
    Time one = whole.over(inner.size());
    for (int i = 0; i < inner.size(); i++) {
      List<Slot.Part> path = new ArrayList<>(outer);
      path.add(new Slot.Part(i, inner.size()));
      parts = path;
      at = from.plus(one.times(i));
      length = one;
      inner.get(i).match(this);
    }
    parts = outer;
    at = from;
    length = whole;
    return null;
  }

  @Override
  public @Nullable Void ghosts(Beat.Ghosts ghosts) {
    boolean before = ghost;
    ghost = true;
    for (Beat.Element element : ghosts.elements()) {
      element.match(this);
    }
    ghost = before;
    return null;
  }

  private void tooFine(Span span) {
    work.partial = true;
    work.problems.add(
        work.problems
            .make(
                Code.TOO_DEEP,
                line,
                span,
                "a beat is divided into more than " + Work.FINEST + " places here")
            .help("write fewer strokes in one word"));
  }
}
