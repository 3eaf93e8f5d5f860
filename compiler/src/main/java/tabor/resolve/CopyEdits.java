package tabor.resolve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.Name;

/** The edits that copy strokes: {@code take}, {@code fill}, and {@code bars} in a step. */
record CopyEdits(LineContext context, SectionDraft draft) {
  /** The groove that a name means; null, and said so, if it means none. */
  private @Nullable Groove source(Name name) {
    Resolved found = context.frame().scope().section(name.text());
    if (found == null) {
      context.problems().incomplete();
      Scope scope = context.frame().scope();
      context
          .problems()
          .add(SheetNames.unknown(scope, context.problems(), context.line(), name, true));
      return null;
    }
    context.problems().incomplete(found.gaps());
    Section section = found.section();
    if (section instanceof Groove groove) {
      return groove;
    }
    context.problems().incomplete();
    if (section != null) {
      context
          .problems()
          .add(SheetNames.notOne(context.make(Code.UNKNOWN_NAME, name.span(), ""), section));
    }
    return null;
  }

  /** True if a bar of the source fits in a bar of this section; says so if not. */
  private boolean fits(Groove source, int from, int to, Span span) {
    Meter there = source.meter(from);
    Meter here = draft.view().meters().of(to);
    if (here.hasSameBeats(there)) {
      return true;
    }
    boolean beats = there.signature().equals(here.signature());
    context
        .problems()
        .tell(
            Code.BAR_LENGTH,
            context.line().spot(span),
            to,
            null,
            "“"
                + source.name()
                + "” is in "
                + (beats ? there.words() : there.signature())
                + ", bar "
                + to
                + " of this section in "
                + (beats ? here.words() : here.signature()),
            "strokes are copied only between bars of the same meter");
    return false;
  }

  /** The strokes of another section with this section's surfaces of the same names. */
  private @Nullable SectionView translated(Groove source, Span span) {
    List<Stroke> all = new ArrayList<>(source.written().size());
    for (Stroke stroke : source.written()) {
      Surface surface = context.kit().surface(stroke.surface().name());
      if (surface == null) {
        context.lost(
            Code.MISSING_SURFACE,
            span,
            "“"
                + source.name()
                + "” plays the "
                + stroke.surface().words()
                + ", which the kit “"
                + context.kit().name()
                + "” does not know",
            "play this section on the same kit");
        return null;
      }
      all.add(surface.equals(stroke.surface()) ? stroke : stroke.on(surface));
    }
    return SectionView.of(source).with(all).counted(draft.view().words());
  }

  private Stroke copied(Stroke stroke, int bar) {
    return stroke
        .moved(bar, stroke.at(), stroke.length(), stroke.slot())
        .from(context.line().spot());
  }

  SectionDraft take(Edit.Take edit) {
    LineContext.Targets targets = context.targets(edit.targets());
    Groove source = source(edit.section());
    if (targets == null || source == null) {
      return draft;
    }
    SectionView there = translated(source, edit.section().span());
    SectionDraft seen = Dealing.dealt(context.frame(), draft, targets.limbs());
    PlaceQuery.Bars bars = new PlaceQuery(seen.view(), targets.any()).bars(edit.at().bars());
    Span missing = bars.missing();
    if (missing != null) {
      context.say(seen.view(), targets, List.of(new Miss.NoBar(missing)));
    }
    if (there == null || missing != null) {
      return draft;
    }
    for (int bar : bars.numbers()) {
      if (!fits(source, sourceBar(source, bar), bar, edit.section().span())) {
        return draft;
      }
    }
    return new Taking(edit, targets, source, there, seen).take(bars.numbers());
  }

  private static int sourceBar(Groove source, int bar) {
    return bar == 0 ? 0 : (bar - 1) % source.bars() + 1;
  }

  /** One {@code take} at work. */
  private final class Taking {
    private final Edit.Take edit;
    private final LineContext.Targets targets;
    private final Groove source;
    private final SectionView there;
    private final SectionDraft seen;
    private final PlaceReader reader;
    private final Set<Stroke> gone = SectionDraft.identities(List.of());
    private final List<Stroke> taken = new ArrayList<>();

    Taking(
        Edit.Take edit,
        LineContext.Targets targets,
        Groove source,
        SectionView there,
        SectionDraft seen) {
      this.edit = edit;
      this.targets = targets;
      this.source = source;
      this.there = there;
      this.seen = seen;
      this.reader = new PlaceReader(there, targets.any(), false);
    }

    SectionDraft take(Collection<Integer> bars) {
      At.Places places = edit.at().places();
      if (places == null) {
        for (int bar : bars) {
          choose(bar, PlaceReading.of(List.of(), stroke -> true));
        }
      } else {
        for (At.Place place : places.items()) {
          if (!take(place, bars)) {
            return draft;
          }
        }
      }
      if (edit.at().where() != null
          && gone.isEmpty()
          && taken.isEmpty()
          && !context.problems().isIncomplete()) {
        nothing(edit.at().where().span(), "like this");
        return draft;
      }
      return context.tooMany(draft, taken.size())
          ? draft
          : seen.keep(stroke -> !gone.contains(stroke)).plus(taken);
    }

    private boolean take(At.Place place, Collection<Integer> bars) {
      boolean found = false;
      boolean exists = false;
      Miss miss = null;
      for (int bar : bars) {
        PlaceReading reading = reader.read(place, sourceBar(source, bar));
        if (reading.isUnclear() && reading.miss() != null) {
          say(reading.miss());
          return false;
        }
        exists |= reading.miss() == null;
        miss = miss == null ? reading.miss() : miss;
        found |= choose(bar, reading);
      }
      if (!exists && miss != null) {
        say(miss);
        return false;
      }
      if (!found && !context.problems().isIncomplete()) {
        nothing(place.span(), "at this place");
        return false;
      }
      return true;
    }

    /** Notes what goes and what comes in a bar; true if there is a stroke in either section. */
    private boolean choose(int bar, PlaceReading reading) {
      boolean found = false;
      for (Stroke stroke : seen.view().inBar(bar)) {
        if (targets.any().test(stroke) && reading.chosen().test(stroke)) {
          found = true;
          if (isWanted(stroke)) {
            gone.add(stroke);
          }
        }
      }
      for (Stroke stroke : there.inBar(sourceBar(source, bar))) {
        if (targets.any().test(stroke) && reading.chosen().test(stroke)) {
          found = true;
          if (isWanted(stroke)) {
            Stroke kept = targets.byLimb(stroke) ? EditLine.fixed(stroke) : stroke;
            taken.add(copied(kept, bar));
          }
        }
      }
      return found;
    }

    private boolean isWanted(Stroke stroke) {
      Level level = edit.at().where() == null ? null : edit.at().where().value();
      return level == null || stroke.level() == level;
    }

    private void say(Miss miss) {
      context.say(there, targets, List.of(miss));
    }

    private void nothing(Span span, String where) {
      context.tell(
          Code.NOTHING_THERE,
          span,
          "neither this section nor “" + edit.section().text() + "” has such a stroke " + where,
          "name a place where one of the two has one");
    }
  }

  SectionDraft fill(Edit.Fill edit) {
    Groove source = source(edit.section());
    PlaceQuery query = new PlaceQuery(draft.view(), stroke -> true);
    PlaceQuery.Bars bars = query.bars(edit.bars());
    Span missing = bars.missing();
    if (missing != null) {
      context.say(draft.view(), stroke -> true, "", List.of(new Miss.NoBar(missing)));
    }
    if (source == null || missing != null) {
      return draft;
    }
    SectionView there = translated(source, edit.section().span());
    if (there == null) {
      return draft;
    }
    boolean brief = source.isPickupOnly();
    Map<Integer, Time> cuts = new HashMap<>();
    List<Stroke> more = new ArrayList<>();
    int turn = 0;
    for (int bar : bars.numbers()) {
      int fillBar = brief ? 0 : turn++ % source.bars() + 1;
      Time cut =
          fits(source, fillBar, bar, edit.section().span())
              ? cut(edit.from(), there, fillBar)
              : null;
      if (cut == null) {
        return draft;
      }
      cuts.put(bar, cut);
      for (Stroke stroke : there.inBar(fillBar)) {
        if (!stroke.at().before(cut)) {
          more.add(copied(stroke, bar));
        }
      }
    }
    if (context.tooMany(draft, more.size())) {
      return draft;
    }
    return draft
        .keep(
            stroke -> {
              Time cut = cuts.get(stroke.bar());
              return cut == null || stroke.at().before(cut);
            })
        .plus(more);
  }

  /** From which place on a bar of the fill counts; null, and said so, if there is none such. */
  private @Nullable Time cut(@Nullable CountRef from, SectionView there, int bar) {
    return from == null
        ? there.grid(bar).start(there.firstBeat(bar))
        : context.place(there, from, bar);
  }

  /** {@code bars N} in a step: the bars so far are repeated from the first, or cut. */
  SectionDraft bars(int bars, Span span) {
    int before = draft.bars();
    if (bars < before) {
      return draft.bars(bars, draft.keep(stroke -> stroke.bar() <= bars).strokes());
    }
    List<Stroke> all = new ArrayList<>(draft.strokes());
    for (int bar = before + 1; bar <= bars; bar++) {
      int from = (bar - 1) % before + 1;
      Meter meter = draft.view().meters().of(bar);
      if (!meter.hasSameBeats(draft.view().meters().of(from))) {
        context
            .problems()
            .tell(
                Code.BAR_LENGTH,
                context.line().spot(span),
                bar,
                null,
                "bar "
                    + bar
                    + " is in "
                    + meter
                    + ", but would repeat bar "
                    + from
                    + " in "
                    + draft.view().meters().of(from),
                "repeat whole rounds of the meters");
        return draft;
      }
      for (Stroke stroke : draft.view().inBar(from)) {
        all.add(stroke.moved(bar, stroke.at(), stroke.length(), stroke.slot()));
      }
      if (context.tooMany(draft, all.size() - (long) draft.strokes().size())) {
        return draft;
      }
    }
    return draft.bars(bars, all);
  }
}
