package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Word;

/** The edits that copy strokes: {@code take}, {@code fill}, and {@code bars} in a step. */
final class CopyEdits {
  private final Work work;
  private final Line line;

  CopyEdits(Work work, Line line) {
    this.work = work;
    this.line = line;
  }

  /** The groove that a word names, in the section's own meter; null, and said so, if not. */
  private @Nullable Groove source(Word word) {
    Resolved found = work.scope.section(word.text());
    if (found == null) {
      work.partial = true;
      work.problems.unknown(
          line, word, "section above", work.scope.near(Scope.Kind.SECTION, word.text()));
      return null;
    }
    Section section = found.section();
    if (!(section instanceof Groove groove)) {
      work.partial = true;
      if (section != null) {
        work.problems.add(
            work.problems
                .make(
                    Code.UNKNOWN_NAME,
                    line,
                    word.span(),
                    "“" + word.text() + "” is a chart, not a groove or a step")
                .help("name a groove or a step"));
      }
      return null;
    }
    work.partial |= found.partial();
    if (!groove.meter().equals(work.meter())) {
      work.problems.add(
          work.problems
              .make(
                  Code.BAR_LENGTH,
                  line,
                  word.span(),
                  "“"
                      + word.text()
                      + "” is in "
                      + groove.meter()
                      + ", this section in "
                      + work.meter()
                      + (groove.meter().signature().equals(work.meter().signature())
                          ? " with other beats"
                          : ""))
              .help("strokes are copied only between sections of the same meter"));
      return null;
    }
    return groove;
  }

  /** The strokes of another section with this section's surfaces of the same names. */
  private @Nullable List<Stroke> translated(Groove source, Span span) {
    List<Stroke> all = new ArrayList<>(source.written().size());
    for (Stroke stroke : source.written()) {
      Surface surface = work.kit().surface(stroke.surface().name());
      if (surface == null) {
        work.partial = true;
        work.problems.add(
            work.problems
                .make(
                    Code.MISSING_SURFACE,
                    line,
                    span,
                    "“"
                        + source.name()
                        + "” plays the "
                        + stroke.surface().words()
                        + ", which the kit “"
                        + work.kit().name()
                        + "” does not know")
                .help("play this section on the same kit"));
        return null;
      }
      all.add(surface.equals(stroke.surface()) ? stroke : stroke.on(surface));
    }
    return all;
  }

  void take(Edit.Take edit) {
    Dealing.see(work, edit.targets());
    Predicate<Stroke> target = new Selector(work, line).target(edit.targets());
    Groove source = source(edit.section());
    if (target == null || source == null) {
      return;
    }
    List<Stroke> from = translated(source, edit.section().span());
    Set<Integer> bars = new Selector(work, line).bars(edit.at().bars());
    if (from == null || bars == null) {
      return;
    }
    Selector here = new Selector(work, line);
    Selector there = new Selector(work, line, from, source.bars());
    Level level = Selector.level(edit.at().where());
    List<Stroke> more = new ArrayList<>();
    boolean anywhere = false;
    At.Places places = edit.at().places();
    List<At.Place> items = new ArrayList<>();
    if (places == null) {
      items.add(null);
    } else {
      items.addAll(places.items());
    }
    Set<Stroke> gone = Edits.identities(List.of());
    for (At.Place place : items) {
      boolean found = false;
      boolean exists = place == null;
      int firstBar = bars.iterator().next();
      for (int bar : bars) {
        int sourceBar = bar == 0 ? 0 : (bar - 1) % source.bars() + 1;
        Places chosen = new Places(there, sourceBar, target, place);
        if (chosen.ambiguous) {
          return;
        }
        exists |= chosen.exists;
        for (Stroke stroke : here.inBar(bar)) {
          if (target.test(stroke) && chosen.holds(stroke, here) && at(stroke, level)) {
            gone.add(stroke);
            found = true;
          }
        }
        for (Stroke stroke : there.inBar(sourceBar)) {
          if (target.test(stroke) && chosen.holds(stroke, there) && at(stroke, level)) {
            Stroke moved = stroke.moved(bar, stroke.at(), stroke.length(), stroke.slot());
            boolean fixed = Dealing.byLimb(stroke, edit.targets());
            more.add(Work.from(fixed ? moved.fixed() : moved, line.spot()));
            found = true;
          }
        }
      }
      anywhere |= found;
      if (place != null && !exists) {
        there.misses().outsideBar(place, firstBar);
        return;
      }
      if (place != null && !found && !work.partial) {
        nothing(place.span(), edit, "at this place");
        return;
      }
    }
    if (!anywhere && level != null && !work.partial) {
      nothing(
          edit.at().where() == null ? edit.span() : edit.at().where().span(), edit, "like this");
      return;
    }
    if (work.tooMany(more.size(), line.spot())) {
      return;
    }
    work.keep(stroke -> !gone.contains(stroke));
    work.add(more);
  }

  private static boolean at(Stroke stroke, @Nullable Level level) {
    return level == null || stroke.level() == level;
  }

  private void nothing(Span span, Edit.Take edit, String where) {
    work.problems.add(
        work.problems
            .make(
                Code.NOTHING_THERE,
                line,
                span,
                "neither this section nor “"
                    + edit.section().text()
                    + "” has such a stroke "
                    + where)
            .help("name a place where one of the two has one"));
  }

  /** The places of a source bar that a clause means. */
  private static final class Places {
    private final At.@Nullable Place place;
    private final List<Stroke> strokes;
    private CountReader.@Nullable Reading from;
    private CountReader.@Nullable Reading to;
    boolean exists = true;
    boolean ambiguous;

    Places(Selector there, int bar, Predicate<Stroke> target, At.@Nullable Place place) {
      this.place = place;
      this.strokes = there.inBar(bar);
      if (place instanceof At.One one) {
        from = read(there, one.count(), bar, target);
        exists = from != null;
      } else if (place instanceof At.Range range) {
        from = read(there, range.from(), bar, target);
        to = read(there, range.to(), bar, target);
        exists = from != null && to != null;
      }
    }

    private CountReader.@Nullable Reading read(
        Selector there, CountWord word, int bar, Predicate<Stroke> target) {
      List<CountReader.Reading> readings = there.reader().read(word.count(), bar, strokes, target);
      if (readings.size() > 1) {
        List<CountReader.Reading> meeting =
            readings.stream()
                .filter(
                    r ->
                        strokes.stream()
                            .anyMatch(s -> target.test(s) && there.reader().meets(s, r)))
                .toList();
        if (meeting.size() > 1) {
          ambiguous = true;
          there.misses().ambiguous(word, bar, meeting);
          return null;
        }
        return meeting.isEmpty() ? readings.get(0) : meeting.get(0);
      }
      return readings.isEmpty() ? null : readings.get(0);
    }

    boolean holds(Stroke stroke, Selector selector) {
      if (place == null) {
        return true;
      }
      CountReader reader = selector.reader();
      if (place instanceof At.Every every) {
        return reader.hasSyllable(stroke, every.syllable());
      }
      CountReader.Reading first = from;
      if (first == null) {
        return false;
      }
      if (place instanceof At.Range) {
        CountReader.Reading last = to;
        Time start = reader.slotStart(stroke);
        return last != null
            && start.compareTo(first.place()) >= 0
            && start.compareTo(last.place()) <= 0;
      }
      return reader.meets(stroke, first);
    }
  }

  void fill(Edit.Fill edit) {
    Groove source = source(edit.section());
    Selector here = new Selector(work, line);
    Set<Integer> bars = here.bars(edit.bars());
    if (source == null || bars == null) {
      return;
    }
    List<Stroke> from = translated(source, edit.section().span());
    if (from == null) {
      return;
    }
    Selector there = new Selector(work, line, from, source.bars());
    CountWord count = edit.from();
    Map<Integer, Time> cuts = new HashMap<>();
    List<Stroke> more = new ArrayList<>();
    int turn = 0;
    for (int bar : bars) {
      int fillBar = turn++ % source.bars() + 1;
      Time cut = Time.ZERO;
      if (count != null) {
        Places place = new Places(there, fillBar, stroke -> true, new At.One(count));
        CountReader.Reading reading = place.from;
        if (place.ambiguous) {
          return;
        }
        if (reading == null) {
          there.misses().outsideBar(count.span(), count.count(), fillBar);
          return;
        }
        cut = reading.place();
      }
      cuts.put(bar, cut);
      for (Stroke stroke : there.inBar(fillBar)) {
        if (stroke.at().compareTo(cut) >= 0) {
          more.add(
              Work.from(
                  stroke.moved(bar, stroke.at(), stroke.length(), stroke.slot()), line.spot()));
        }
      }
    }
    if (work.tooMany(more.size(), line.spot())) {
      return;
    }
    work.keep(
        stroke -> {
          Time cut = cuts.get(stroke.bar());
          return cut == null || stroke.at().before(cut);
        });
    work.add(more);
  }

  /** {@code bars N} in a step: the bars so far are repeated from the first, or cut. */
  void bars(int bars) {
    int before = work.bars;
    if (bars < before) {
      work.keep(stroke -> stroke.bar() <= bars);
      work.marks.removeIf(mark -> mark.bar() > bars);
      work.hairpins.removeIf(hairpin -> hairpin.toBar() > bars);
    } else {
      Selector here = new Selector(work, line);
      List<Stroke> more = new ArrayList<>();
      for (int bar = before + 1; bar <= bars; bar++) {
        for (Stroke stroke : here.inBar((bar - 1) % before + 1)) {
          more.add(stroke.moved(bar, stroke.at(), stroke.length(), stroke.slot()));
        }
        if (work.tooMany(more.size(), line.spot())) {
          return;
        }
      }
      work.add(more);
    }
    work.bars = bars;
  }
}
