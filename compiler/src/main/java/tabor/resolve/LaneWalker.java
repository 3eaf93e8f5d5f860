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
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

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

  /**
   * A hold and the letter that it lengthens.
   *
   * @param stroke the letter
   * @param hold where the hold is written
   * @param length how long the letter lasts with it
   */
  record Held(Placed stroke, Span hold, Time length) {}

  private final SectionFrame frame;
  private final Problems problems;
  private final SectionView view;
  private final List<Placed> placed = new ArrayList<>();
  private final List<Held> holds = new ArrayList<>();
  private Line line;

  // where the walk stands
  private int bar;
  private BarGrid grid;
  private Time at = Time.ZERO;
  private Time length = Time.ZERO;
  private Division division = new Division(0, 1, 1);
  private Slot whole = new Slot(division, 0, List.of());
  private List<Slot.Part> parts = List.of();
  private boolean ghost;
  private @Nullable Placed sounding;
  private boolean holdRefused;

  LaneWalker(SectionFrame frame, Problems problems, SectionView view, Line line) {
    this.frame = frame;
    this.problems = problems;
    this.view = view;
    this.line = line;
    this.grid = view.grid(1);
  }

  List<Placed> placed() {
    return placed;
  }

  /** The holds of the walk, for those who know what is struck. */
  List<Held> holds() {
    return holds;
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
  void bar(int number, LaneBar written, boolean first) {
    bar = number;
    grid = view.grid(number);
    int beat = view.firstBeat(number);
    int room = grid.beats() - beat;
    long has = 0;
    for (Beat word : written.beats()) {
      has += BarLengths.beats(word);
    }
    if (has != room && first) {
      Diagnostic told =
          new BarLengths(frame, problems, line).wrong(written, number, grid.meter(), has, room);
      if (told != null) {
        problems.add(told);
      }
      problems.incomplete(
          line.statement() instanceof PartStatement.Lane lane
              ? Gaps.of(lane.subject(), frame.kit())
              : Gaps.ALL);
    }
    for (Beat word : written.beats()) {
      int beats = BarLengths.beats(word);
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

  private void word(Beat word, int beat, int beats) {
    List<Beat.Element> slots = flat(word.elements());
    if (slots.isEmpty()) {
      return;
    }
    if (slots.size() > SectionDraft.FINEST) {
      tooFine(word.span());
      return;
    }
    division = new Division(beat, beats, slots.size());
    BarGrid.Word known = grid.word(division);
    for (int i = 0; i < slots.size(); i++) {
      at = known.starts().get(i);
      length = known.length();
      whole = known.slots().get(i);
      slots.get(i).match(this);
    }
  }

  /** Takes ghost parentheses off, marking what they hold. */
  private static List<Beat.Element> flat(List<Beat.Element> elements) {
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
    grid = view.grid(number);
    at = place;
    length = lasts;
    division = where.division();
    whole = where;
    parts = where.parts();
    element.match(this);
    parts = List.of();
  }

  @Override
  public @Nullable Void hit(Beat.Hit hit) {
    Slot where = parts.isEmpty() ? whole : new Slot(division, whole.index(), parts);
    int number = bar;
    Time place = at;
    Time end = grid.meter().bar();
    if (!place.before(end)) {
      // A group in a slot of a played pattern that crosses the bar line: the rest is in the next
      // bar.
      number++;
      place = place.minus(end);
      if (number > view.bars()) {
        sounding = null;
        return null;
      }
      where = view.grid(number).fewest(place);
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
      if (before.line == line) {
        holds.add(new Held(before, hold.span(), before.length));
      }
    } else if (!holdRefused && !problems.isIncomplete()) {
      holdRefused = true;
      problems.tell(
          Code.NOTHING_THERE,
          line.spot(hold.span()),
          bar,
          null,
          "there is no stroke before this hold to go on",
          "write a dot for silence, or a stroke before the hold");
    }
    return null;
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
    if (fineness > SectionDraft.FINEST) {
      tooFine(group.span());
      return null;
    }
    List<Slot.Part> outer = parts;
    Time from = at;
    Time lasts = length;
    Time one = lasts.over(inner.size());
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
    length = lasts;
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
    problems.lost(
        Code.TOO_DEEP,
        line,
        span,
        "a beat is divided into more than " + SectionDraft.FINEST + " places here",
        "write fewer strokes in one word");
  }
}
