package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.lists.Lists;
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
record SignPainter(Canvas canvas, PlacedSystem line, Voice voice, boolean changes) {
  private static final double GAP = 0.3;

  /** Thickness of the bar that marks a change. */
  private static final double CHANGE_BAR = 0.2;

  /** How much shorter it is than its head on each side. */
  private static final double CHANGE_INSET = 0.05;

  void paint() {
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      List<Span> spans = plan.bar().repeat() ? List.of() : spans(plan);
      // A number at its beam stays there; a bracket goes round the accents.
      draw(bar, spans, false);
      for (int i = 0; i < plan.slices().size(); i++) {
        ChordShape chord = plan.slices().get(i).chord(voice);
        if (chord != null) {
          signs(chord, line.places().columns()[bar][i]);
        }
      }
      draw(bar, spans, true);
      if (changes) {
        changed(bar, plan);
      }
    }
  }

  private void draw(int bar, List<Span> spans, boolean brackets) {
    for (Span span : spans) {
      if (span.tuplet().bracket() == brackets) {
        tuplet(bar, span);
      }
    }
  }

  /** A bar outside the notes over or under what a step changed; one for neighbours. */
  private void changed(int bar, BarPlan plan) {
    double[] xs = line.places().columns()[bar];
    double from = Double.NaN;
    double to = 0;
    for (int i = 0; i < plan.slices().size(); i++) {
      ChordShape chord = plan.slices().get(i).chord(voice);
      if (chord != null && Lists.any(chord.chord().notes(), Note::changed)) {
        from = Double.isNaN(from) ? xs[i] + CHANGE_INSET : from;
        to = xs[i] + Rule.HEAD - CHANGE_INSET;
      } else if (!Double.isNaN(from)) {
        changeBar(from, to);
        from = Double.NaN;
      }
    }
    if (!Double.isNaN(from)) {
      changeBar(from, to);
    }
  }

  private void changeBar(double from, double to) {
    boolean up = voice == Voice.HANDS;
    double reach = (up ? canvas.above : canvas.below).reach(from, to) + 0.3 + CHANGE_BAR / 2;
    double y = up ? -reach : reach;
    canvas.marks.add(Mark.Group.of("change-bar", List.of(canvas.rule(from, y, to, y, CHANGE_BAR))));
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
    if (Lists.any(chord.chord().notes(), Note::choke)) {
      add("choke", "pictChokeCymbal", middle, stem);
    }
    if (Lists.any(chord.chord().notes(), n -> n.accent() && !n.tieIn())) {
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

  /** The tuplets of a bar that are drawn, inner ones first. */
  private List<Span> spans(BarPlan plan) {
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
    spans.sort((a, b) -> Integer.compare(b.depth(), a.depth()));
    spans.removeIf(span -> isSilent(plan, span));
    return spans;
  }

  /** A tuplet of hidden rests is not drawn: the other voice draws it. */
  private boolean isSilent(BarPlan plan, Span span) {
    Time end = span.last().end();
    for (Event event : plan.bar().events(voice)) {
      if (!event.start().before(span.first().start())
          && event.start().before(end)
          && !event.isHidden()) {
        return false;
      }
    }
    return true;
  }

  private void tuplet(int bar, Span span) {
    double left = line.x(bar, span.first().start()) - 0.1;
    double right = line.x(bar, span.last().start()) + Rule.HEAD + 0.1;
    List<Mark> marks = new ArrayList<>();
    List<Sign> digits = digits(span.tuplet().actual());
    double width = Lists.sum(digits, Sign::advance);
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
        marks.add(canvas.rule(left, y, middle - width / 2 - 0.3, y, Rule.BRACKET));
        marks.add(canvas.rule(middle + width / 2 + 0.3, y, right, y, Rule.BRACKET));
      }
      marks.add(canvas.rule(left + half, y, left + half, y + hook, Rule.BRACKET));
      marks.add(canvas.rule(right - half, y, right - half, y + hook, Rule.BRACKET));
    }
    canvas.marks.add(Mark.Group.of("tuplet", marks));
  }

  private static List<Sign> digits(long number) {
    List<Sign> digits = new ArrayList<>();
    for (char c : Long.toString(number).toCharArray()) {
      digits.add(Sign.of("tuplet" + c));
    }
    return digits;
  }
}
