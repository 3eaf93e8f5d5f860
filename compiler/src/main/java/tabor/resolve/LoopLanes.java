package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.diagnostic.Code;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** Writes the parts that go on until the section ends: ostinatos and played patterns. */
record LoopLanes(SectionFrame frame, Problems problems, SectionDraft draft, Line line) {
  /** The letters of whole bars, repeated over the section. */
  List<LaneWalker.Placed> ostinato(PartStatement.Lane lane, PartHints hints) {
    LaneWalker walker = new LaneWalker(frame, problems, draft.view(), line);
    int period = lane.bars().size();
    Map<Meter, LaneBar> latest = new HashMap<>();
    List<LaneBar> effective = new ArrayList<>();
    for (int i = 0; i < period; i++) {
      LaneBar written = lane.bars().get(i);
      Meter meter = frame.meters().of(i + 1);
      LaneBar bar = written.repeat() ? latest.get(meter) : written;
      if (bar == null) {
        nothingBefore(frame, problems, line, written, i + 1);
        return List.of();
      }
      latest.put(meter, bar);
      effective.add(bar);
    }
    Set<LaneBar> told = new HashSet<>();
    for (int bar = 1; bar <= draft.bars(); bar++) {
      LaneBar written = effective.get((bar - 1) % period);
      // Under meters in turn a bar may come to stand in another meter than its first.
      boolean first = bar <= period || frame.meters().size() > 1;
      int before = problems.found().size();
      walker.bar(bar, written, first && !told.contains(written));
      if (problems.found().size() > before) {
        told.add(written);
      }
      if (walker.placed().size() > SectionDraft.MOST_STROKES) {
        break;
      }
    }
    hints.held(walker, lane.subject(), draft, frame);
    return walker.placed();
  }

  /** The letters of a pattern, one place a note value, over and over. */
  List<LaneWalker.Placed> played(PartStatement.Played played) {
    List<Beat.Element> places = new Patterns(frame.scope()).of(played);
    if (places == null) {
      problems.incomplete(Gaps.of(played.subject(), frame.kit()));
      String name = Patterns.words(played.pattern());
      problems.unknown(
          line,
          name,
          played.pattern().span(),
          "pattern",
          frame.scope().near(Scope.Kind.PATTERN, name));
      return List.of();
    }
    List<Beat.Element> each = new ArrayList<>();
    for (Beat.Element element : places) {
      if (element instanceof Beat.Ghosts ghosts) {
        ghosts.elements().forEach(e -> each.add(new Beat.Ghosts(List.of(e), e.span())));
      } else {
        each.add(element);
      }
    }
    if (each.isEmpty()) {
      problems.incomplete(Gaps.of(played.subject(), frame.kit()));
      return List.of();
    }
    return pour(played, each);
  }

  /** Writes one place after another until the section ends. */
  private List<LaneWalker.Placed> pour(PartStatement.Played played, List<Beat.Element> places) {
    Time value = played.value().value().length();
    Time end = frame.meters().length(draft.bars());
    if (new LineContext(frame, problems, line).tooMany(draft, end.over(value).floor())) {
      return List.of();
    }
    LaneWalker walker = new LaneWalker(frame, problems, draft.view(), line);
    Map<Meter, ValueSlots> slots = new HashMap<>();
    int bar = 1;
    Time place = Time.ZERO;
    long count = 0;
    for (Time at = Time.ZERO; at.before(end); at = at.plus(value)) {
      while (place.compareTo(frame.meters().of(bar).bar()) >= 0) {
        place = place.minus(frame.meters().of(bar).bar());
        bar++;
      }
      int here = bar;
      ValueSlots inBar =
          slots.computeIfAbsent(
              frame.meters().of(bar), meter -> new ValueSlots(draft.view().grid(here), value));
      walker.place(bar, place, value, inBar.at(place), places.get((int) (count % places.size())));
      place = place.plus(value);
      count++;
    }
    if (!problems.isIncomplete() && (!end.over(value).isWhole() || count % places.size() != 0)) {
      problems.tell(
          Code.PATTERN_CUT,
          line,
          line.statement().span(),
          "the section ends in the middle of the pattern “"
              + Patterns.words(played.pattern())
              + "”",
          "give the section a length that the pattern fills, or leave its length open");
    }
    return walker.placed();
  }

  /** Says that {@code %} has nothing to repeat. */
  static void nothingBefore(
      SectionFrame frame, Problems problems, Line line, LaneBar written, int bar) {
    problems.incomplete();
    boolean meters = bar > 1;
    problems.tell(
        Code.NOTHING_THERE,
        line.spot(written.span()),
        bar,
        null,
        meters
            ? "there is no bar of "
                + frame.meters().of(bar).signature()
                + " before this one to repeat"
            : "there is no bar before this one to repeat",
        "write the bar out here; % repeats it from the next bar on");
  }
}
