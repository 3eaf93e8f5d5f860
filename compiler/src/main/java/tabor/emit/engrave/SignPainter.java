package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.Tuplet;
import tabor.notation.TupletPlace;
import tabor.notation.Voice;
import tabor.rhythm.Time;

/**
 * Draws what stands outside the notes of one voice: hi-hat signs, chokes, accents and tuplets,
 * nearest first, above the hands and below the feet.
 */
final class SignPainter {
  private static final double GAP = 0.3;

  private final Canvas canvas;
  private final PlacedSystem line;
  private final Voice voice;

  SignPainter(Canvas canvas, PlacedSystem line, Voice voice) {
    this.canvas = canvas;
    this.line = line;
    this.voice = voice;
  }

  void paint() {
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      for (int i = 0; i < plan.slices().size(); i++) {
        ChordShape chord = plan.slices().get(i).chord(voice);
        if (chord != null) {
          signs(chord, line.places().columns()[bar][i]);
        }
      }
      if (!plan.bar().repeat()) {
        tuplets(bar, plan);
      }
    }
  }

  private void signs(ChordShape chord, double x) {
    // A sign stands over its heads, not over the stem.
    double stem = x + chord.stemX();
    double middle = stem + (chord.up() ? -1 : 1) * (Rule.HEAD - Rule.STEM) / 2;
    for (Note note : chord.chord().notes()) {
      if (!note.tieIn()) {
        switch (note.hihat()) {
          case NONE -> {}
          case OPEN -> add("open", "pictOpen", middle, stem);
          case HALF -> add("half-open", "pictHalfOpen2", middle, stem);
          case CLOSED -> add("closed", "brassMuteClosed", middle, stem);
        }
      }
    }
    if (chord.chord().notes().stream().anyMatch(Note::choke)) {
      add("choke", "pictChokeCymbal", middle, stem);
    }
    if (chord.chord().notes().stream().anyMatch(n -> n.accent() && !n.tieIn())) {
      add("accent", "articAccentAbove", middle, stem);
    }
  }

  private void add(String name, String sign, double x, double stem) {
    Sign drawn = Sign.of(sign);
    Mark mark =
        voice == Voice.HANDS
            ? canvas.onTop(drawn, x, stem, GAP)
            : canvas.underneath(drawn, x, stem, GAP);
    canvas.marks.add(new Mark.Group(List.of("sign", name), java.util.Map.of(), List.of(mark)));
  }

  // ---- tuplets ----

  private record Span(Tuplet tuplet, int depth, Event first, Event last) {}

  private void tuplets(int bar, BarPlan plan) {
    List<Span> spans = new ArrayList<>();
    List<Event> open = new ArrayList<>();
    for (Event event : plan.bar().events(voice)) {
      List<TupletPlace> places = event.tuplets();
      for (int depth = 0; depth < places.size(); depth++) {
        TupletPlace place = places.get(depth);
        if (place.first()) {
          while (open.size() > depth) {
            open.remove(open.size() - 1);
          }
          open.add(event);
        }
        if (place.last() && depth < open.size()) {
          spans.add(new Span(place.tuplet(), depth, open.get(depth), event));
        }
      }
    }
    spans.sort(Comparator.comparingInt((Span s) -> s.depth()).reversed());
    for (Span span : spans) {
      if (!isSilent(plan, span)) {
        tuplet(bar, span);
      }
    }
  }

  /** A tuplet of hidden rests is not drawn: the other voice draws it. */
  private boolean isSilent(BarPlan plan, Span span) {
    Time end = span.last().end();
    for (Event event : plan.bar().events(voice)) {
      if (!event.start().before(span.first().start())
          && event.start().before(end)
          && event.match(DRAWN)) {
        return false;
      }
    }
    return true;
  }

  private static final Event.Cases<Boolean> DRAWN =
      new Event.Cases<>() {
        @Override
        public Boolean chord(Event.Chord chord) {
          return true;
        }

        @Override
        public Boolean rest(Event.Rest rest) {
          return rest.show() != Event.Rest.Show.HIDDEN;
        }
      };

  private void tuplet(int bar, Span span) {
    double left = line.x(bar, span.first().start()) - 0.1;
    double right = line.x(bar, span.last().start()) + Rule.HEAD + 0.1;
    List<Mark> marks = new ArrayList<>();
    List<Sign> digits = digits(span.tuplet().actual());
    double width = digits.stream().mapToDouble(Sign::advance).sum();
    double height = Sign.of("tuplet3").box().height();
    double middle = (left + right) / 2;
    boolean up = voice == Voice.HANDS;
    if (!span.tuplet().bracket()) {
      double stems = up ? Rule.HEAD / 2 - 0.1 : -Rule.HEAD / 2 + 0.1;
      middle += stems;
    }
    middle = Math.min(middle, line.places().end() - width / 2 - 0.1);
    double from = middle - width / 2 - 0.1;
    double to = middle + width / 2 + 0.1;
    if (span.tuplet().bracket()) {
      from = Math.min(from, left);
      to = Math.max(to, right);
    }
    Skyline sky = up ? canvas.above : canvas.below;
    double near = sky.reach(from, to) + 0.35;
    // The number's middle, which is also the bracket's height, counted away from the staff.
    double axis = near + height / 2;
    double y = up ? -axis : axis;
    double x = middle - width / 2;
    for (Sign digit : digits) {
      marks.add(canvas.sign(digit, x - digit.box().left(), y + height / 2));
      x += digit.advance();
    }
    if (span.tuplet().bracket()) {
      double hook = up ? 0.6 : -0.6;
      double half = Rule.BRACKET / 2;
      if (middle - width / 2 - 0.3 - left > 0.2) {
        marks.add(canvas.ink(Contour.stroke(left, y, middle - width / 2 - 0.3, y, Rule.BRACKET)));
        marks.add(canvas.ink(Contour.stroke(middle + width / 2 + 0.3, y, right, y, Rule.BRACKET)));
      }
      marks.add(canvas.ink(Contour.stroke(left + half, y, left + half, y + hook, Rule.BRACKET)));
      marks.add(canvas.ink(Contour.stroke(right - half, y, right - half, y + hook, Rule.BRACKET)));
    }
    canvas.marks.add(Mark.Group.of("tuplet", marks));
  }

  private static List<Sign> digits(long number) {
    return Long.toString(number).chars().mapToObj(c -> Sign.of("tuplet" + (char) c)).toList();
  }
}
