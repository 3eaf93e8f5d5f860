package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Level;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.LimbRef;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/** The edits that bring new strokes: {@code add} and {@code follows}. */
final class AddEdits {
  private final LineContext context;
  private final SectionDraft draft;
  private final List<Stroke> known;
  private final List<Stroke> added = new ArrayList<>();
  private boolean changed;

  AddEdits(LineContext context, SectionDraft draft) {
    this.context = context;
    this.draft = draft;
    this.known = new ArrayList<>(draft.strokes());
  }

  /** What is added: on which surface, by whom if that is said, how loud if that is said. */
  private record What(
      Surface surface, @Nullable Limb limb, @Nullable Level level, Predicate<Stroke> target) {}

  SectionDraft add(Edit.Add edit) {
    What what = what(edit);
    if (what == null) {
      return draft;
    }
    // A limb's strokes are known only once they are dealt.
    SectionView view =
        edit.what() instanceof TargetRef.OfLimb named
            ? Dealing.dealt(context.frame(), draft, List.of(named.limb().limb())).view()
            : draft.view();
    PlaceQuery.Bars bars = new PlaceQuery(view, what.target()).bars(edit.bars());
    Span missing = bars.missing();
    if (missing != null) {
      say(view, edit, what, new Miss.NoBar(missing));
      return draft;
    }
    PlaceReader reader = new PlaceReader(view, what.target(), true);
    for (At.Place place : edit.places().items()) {
      boolean found = false;
      Miss outside = null;
      for (int bar : bars.numbers()) {
        PlaceReading reading = reader.read(place, bar);
        if (reading.isUnclear()) {
          say(view, edit, what, reading.miss());
          return draft;
        }
        for (CountReading one : reading.readings()) {
          put(bar, one.place(), one.length(), one.slot(), what);
        }
        found |= !reading.readings().isEmpty();
        outside = outside == null ? reading.miss() : outside;
        if (context.tooMany(draft, added.size())) {
          return draft;
        }
      }
      boolean each = edit.bars() != null && place instanceof At.One;
      if (outside != null && (each || !found)) {
        say(view, edit, what, outside);
        return draft;
      }
    }
    if (!changed) {
      context
          .problems()
          .add(
              context.make(
                  Code.ALREADY_THERE, edit.span(), "what this line adds is there already"));
      return draft;
    }
    return finished();
  }

  private void say(SectionView view, Edit.Add edit, What what, @Nullable Miss miss) {
    if (miss != null) {
      context.say(view, what.target(), edit.what().words(), List.of(miss));
    }
  }

  private SectionDraft finished() {
    known.addAll(added);
    return draft.with(known);
  }

  private @Nullable What what(Edit.Add edit) {
    Level level = edit.level() == null ? null : edit.level().value();
    return edit.what()
        .match(
            new TargetRef.Cases<@Nullable What>() {
              @Override
              public @Nullable What limb(LimbRef limb) {
                Surface plays = draft.plays(limb.limb());
                return plays == null
                    ? null
                    : new What(plays, limb.limb(), level, TargetFilter.of(limb.limb()));
              }

              @Override
              public @Nullable What group(TargetRef.Group group) {
                return null;
              }

              @Override
              public @Nullable What surface(SurfaceRef named) {
                Surface surface = context.surface(named);
                if (surface == null) {
                  return null;
                }
                TargetFilter filter = TargetFilter.of(edit.what(), context.kit());
                Predicate<Stroke> target = filter == null ? stroke -> false : filter;
                LimbRef with = edit.with();
                if (with == null) {
                  return new What(surface, null, level, target);
                }
                Limb limb = meant(with, surface);
                return context.fits(with.span(), limb, surface)
                    ? new What(surface, limb, level, target)
                    : null;
              }
            });
  }

  /** A bare {@code right} after {@code with} is a foot for a foot surface. */
  private static Limb meant(LimbRef with, Surface surface) {
    if (with.spelledOut() || !surface.isFoot()) {
      return with.limb();
    }
    return with.limb().isRight() ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT;
  }

  /** Adds one stroke, or sets limb and level of one that is there. */
  private void put(int bar, Time at, Time length, Slot slot, What what) {
    Limb limb = what.limb();
    Level level = what.level();
    int there = find(bar, at, what.surface(), limb);
    if (there >= 0) {
      Stroke old = known.get(there);
      Stroke stroke = limb != null && old.open() ? old.by(limb, false).fixed() : old;
      stroke = level == null || old.level() == level ? stroke : stroke.at(level);
      changed |= stroke != old;
      known.set(there, stroke);
      return;
    }
    changed = true;
    added.add(
        new Stroke(
            bar,
            at,
            length,
            limb != null ? limb : first(what.surface()),
            what.surface(),
            level == null ? Level.PLAIN : level,
            Ornaments.NONE,
            slot,
            context.line().spot(),
            false,
            limb == null,
            joinsLine(what.surface()),
            null));
  }

  /**
   * True if a stroke of this surface goes into the line: the line has the hands to itself, or the
   * foot's surface has strokes in the line and nowhere else.
   */
  private boolean joinsLine(Surface surface) {
    boolean foot = surface.isFoot();
    boolean some = false;
    for (Stroke stroke : draft.strokes()) {
      boolean alike =
          foot ? stroke.surface().name().equals(surface.name()) : stroke.limb().isHand();
      if (alike && !stroke.inLine()) {
        return false;
      }
      some |= stroke.inLine() && (alike || !foot);
    }
    return some;
  }

  private static Limb first(Surface surface) {
    return surface.isFoot() ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND;
  }

  /** The stroke that an added one would fall on: by that limb, or by any where none is named. */
  private int find(int bar, Time at, Surface surface, @Nullable Limb limb) {
    int low = 0;
    int high = known.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      Stroke one = known.get(middle);
      if (one.bar() < bar || (one.bar() == bar && one.at().before(at))) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    for (int i = low; i < known.size(); i++) {
      Stroke one = known.get(i);
      if (one.bar() != bar || !one.at().equals(at)) {
        return -1;
      }
      if (one.surface().name().equals(surface.name())
          && (limb == null || one.open() || one.limb() == limb)) {
        return i;
      }
    }
    return -1;
  }

  /** Adds a stroke of a surface wherever the leaders are, where it is not struck already. */
  SectionDraft follow(Surface surface, List<Stroke> leaders) {
    if (context.tooMany(draft, leaders.size())) {
      return draft;
    }
    What what = new What(surface, null, null, stroke -> false);
    for (Stroke leader : leaders) {
      Time length = draft.view().grid(leader.bar()).placeLength(leader.slot());
      put(leader.bar(), leader.at(), length, leader.slot(), what);
    }
    return finished();
  }
}
