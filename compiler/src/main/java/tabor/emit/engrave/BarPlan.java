package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.Voice;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * A bar, measured.
 *
 * @param bar what it shows
 * @param slices its columns in order of time; none for a repeat sign and for an empty bar
 * @param wholeRests rests that stand in the middle of the bar
 * @param opening room at its start for the sign that a repeat begins here; 0 for none
 * @param least width that it has at least if it has no columns
 * @param meters printed at its start; none in a section's first bar, before which they stand
 */
record BarPlan(
    Bar bar,
    List<Slice> slices,
    List<RestShape> wholeRests,
    double opening,
    double least,
    List<Meter> meters) {
  BarPlan {
    slices = List.copyOf(slices);
    wholeRests = List.copyOf(wholeRests);
    meters = List.copyOf(meters);
  }

  BarPlan(Bar bar, List<Slice> slices, List<RestShape> wholeRests) {
    this(bar, slices, wholeRests, 0, 0, List.of());
  }

  /** The same bar with these meters at its start. */
  BarPlan under(List<Meter> printed) {
    return new BarPlan(bar, slices, wholeRests, opening, least, printed);
  }

  /** Room at its start for signs that are not its columns. */
  double room() {
    return opening + MeterSigns.room(meters);
  }

  /** Where the bar ends, in whole notes from its barline. */
  Time end() {
    return bar.start().plus(bar.length());
  }

  /** The same bar, at least so wide if it has no columns. */
  BarPlan widened(double width) {
    return new BarPlan(bar, slices, wholeRests, opening, width, meters);
  }

  /** The same bar with room at its start. */
  BarPlan opened(double room) {
    return new BarPlan(bar, slices, wholeRests, room, least, meters);
  }

  static BarPlan of(Bar bar, boolean counts, boolean sticking, boolean boxes, TextMetrics font) {
    if (bar.repeat()) {
      return new BarPlan(bar, List.of(), List.of());
    }
    TreeMap<Time, Here> places = new TreeMap<>();
    List<RestShape> whole = new ArrayList<>();
    for (Voice voice : Voice.values()) {
      for (Event event : bar.events(voice)) {
        if (event instanceof Event.Chord chord) {
          places.computeIfAbsent(chord.start(), t -> new Here()).chords[voice.ordinal()] = chord;
        } else if (event instanceof Event.Rest rest && !rest.isHidden()) {
          RestShape shape = RestShape.of(rest, voice);
          if (rest.wholeBar()) {
            whole.add(shape);
          } else {
            places.computeIfAbsent(rest.start(), t -> new Here()).rests.add(shape);
          }
        }
      }
    }
    List<Slice> slices = new ArrayList<>();
    for (Map.Entry<Time, Here> place : places.entrySet()) {
      Time next = places.higherKey(place.getKey());
      Time end = next == null ? bar.start().plus(bar.length()) : next;
      List<String> said = new ArrayList<>();
      for (Map<Time, String> row : counts ? bar.counts() : List.<Map<Time, String>>of()) {
        said.add(row.getOrDefault(place.getKey(), ""));
      }
      slices.add(
          place
              .getValue()
              .slice(place.getKey(), end.minus(place.getKey()), said, sticking, boxes, font));
    }
    return new BarPlan(bar, slices, whole);
  }

  /** An empty bar to write on, with a column for each beat under its count. */
  static BarPlan blank(Bar bar, Meter meter, boolean counts, TextMetrics font) {
    List<Slice> slices = new ArrayList<>();
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      Time at = meter.beatStart(beat);
      if (at.before(bar.start())) {
        continue;
      }
      String count = counts ? Integer.toString(beat + 1) : "";
      slices.add(
          new Slice(
              at,
              meter.beat(beat),
              null,
              null,
              List.of(),
              List.of(count),
              List.of("", ""),
              List.of(font.width(count, Rule.COUNT_SIZE)),
              List.of(0.0, 0.0),
              0,
              Rule.HEAD));
    }
    return new BarPlan(bar, slices, List.of());
  }

  private static final class Here {
    final Event.@Nullable Chord[] chords = new Event.Chord[Voice.values().length];
    final List<RestShape> rests = new ArrayList<>();

    Slice slice(
        Time at,
        Time length,
        List<String> counts,
        boolean sticking,
        boolean boxes,
        TextMetrics font) {
      Event.Chord upper = chords[Voice.HANDS.ordinal()];
      Event.Chord lower = chords[Voice.FEET.ordinal()];
      ChordShape hands = upper == null ? null : ChordShape.of(upper, 0);
      ChordShape feet =
          lower == null ? null : ChordShape.of(lower, upper == null ? 0 : shift(upper, lower));
      List<RestShape> clear = new ArrayList<>();
      for (RestShape rest : rests) {
        RestShape moved = clear(clear(rest, hands, -1), feet, 1);
        for (RestShape above : clear) {
          while (moved.box().top() < above.box().bottom() + 0.2) {
            moved = moved.lowered(1);
          }
        }
        clear.add(moved);
      }
      List<String> hits = new ArrayList<>();
      for (Event.Chord chord : chords) {
        String hit = chord == null || !sticking ? "" : chord.sticking();
        hits.add(!boxes || hit.isEmpty() ? hit : isHands(chord) ? RowPainter.BOX : "");
      }
      List<String> wide = new ArrayList<>(hits);
      wide.replaceAll(hit -> hit.equals(RowPainter.BOX) ? "B" : hit);
      double left = 0;
      double right = 0;
      for (ChordShape shape : new ChordShape[] {hands, feet}) {
        if (shape != null) {
          left = Math.min(left, shape.left());
          right = Math.max(right, shape.right());
        }
      }
      for (RestShape rest : clear) {
        left = Math.min(left, rest.box().left());
        right = Math.max(right, rest.box().right());
      }
      return new Slice(
          at,
          length,
          hands,
          feet,
          clear,
          counts,
          hits,
          widths(counts, Rule.COUNT_SIZE, font),
          widths(wide, Rule.STICKING_SIZE, font),
          left,
          right);
    }

    private static List<Double> widths(List<String> texts, double size, TextMetrics font) {
      List<Double> widths = new ArrayList<>(texts.size());
      for (String text : texts) {
        widths.add(font.width(text, size));
      }
      return widths;
    }

    private static boolean isHands(Event.@Nullable Chord chord) {
      return chord != null
          && Lists.any(
              chord.notes(), note -> Lists.any(note.strokes(), stroke -> stroke.limb().isHand()));
    }

    /** Heads of two voices that would touch or cross stand side by side, the lower voice right. */
    private static double shift(Event.Chord upper, Event.Chord lower) {
      int lowest = Integer.MAX_VALUE;
      for (Note note : upper.notes()) {
        lowest = Math.min(lowest, note.place().halfSpaces());
      }
      int highest = Integer.MIN_VALUE;
      for (Note note : lower.notes()) {
        highest = Math.max(highest, note.place().halfSpaces());
      }
      if (lowest - highest > 1) {
        return 0;
      }
      double room = ChordShape.of(upper, 0).right();
      double own = -ChordShape.of(lower, 0).left();
      return Math.max(Rule.HEAD, room) + own + 0.15;
    }

    /** Moves a rest by whole spaces until it is clear of the heads of a chord. */
    private static RestShape clear(RestShape rest, @Nullable ChordShape chord, int away) {
      RestShape moved = rest;
      if (chord == null) {
        return moved;
      }
      // A rest above the chord moves up, one below it down.
      for (int step = 0; step < 12 && touches(moved, chord); step++) {
        moved = moved.lowered(-away);
      }
      return moved;
    }

    private static boolean touches(RestShape rest, ChordShape chord) {
      Box box = rest.box();
      return Lists.any(chord.heads(), h -> box.bottom() > h.y() - 0.75 && box.top() < h.y() + 0.75);
    }
  }
}
