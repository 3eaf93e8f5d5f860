package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.CountRef;
import tabor.syntax.Line;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/**
 * What a line of a section acts in: the section's frame, where problems go, and the line.
 *
 * @param frame what is settled
 * @param problems takes what is wrong
 * @param line the line
 */
record LineContext(SectionFrame frame, Problems problems, Line line) {

  Kit kit() {
    return frame.kit();
  }

  /** A diagnostic at a span of the line, not taken yet. */
  Diagnostic make(Code code, Span span, String message) {
    return problems.make(code, line, span, message);
  }

  /** Says what is wrong at a span of the line, and what helps. */
  void tell(Code code, Span span, String message, String help) {
    problems.tell(code, line, span, message, help);
  }

  /** {@linkplain Problems#lost Says the same} where strokes may be missing. */
  void lost(Code code, Span span, String message, String help) {
    problems.lost(code, line, span, message, help);
  }

  /** The surface of a name; null, and said so, if the kit has none. */
  @Nullable Surface surface(SurfaceRef named) {
    Surface surface = kit().surface(named.name());
    if (surface == null) {
      problems.incomplete();
      boolean pattern = frame.scope().pattern(named.name()) != null;
      SurfaceMessages.unknown(problems, line, named, kit(), pattern);
    }
    return surface;
  }

  /** True if the limb can play the surface; says so if it cannot. */
  boolean fits(Span span, Limb limb, Surface surface) {
    if (surface.isFoot() != limb.isHand()) {
      return true;
    }
    problems.incomplete();
    problems.add(
        SurfaceMessages.wrongLimb(line.spot(span), limb, surface)
            .in(new Diagnostic.Place(frame.name(), null, null)));
    return false;
  }

  /** What targets mean; null, and said so, if one names nothing. */
  @Nullable Targets targets(List<TargetRef> named) {
    List<TargetFilter> filters = new ArrayList<>();
    for (TargetRef target : named) {
      TargetFilter filter = TargetFilter.of(target, kit());
      if (filter == null) {
        problems.incomplete();
        SurfaceMessages.unknownTarget(problems, line, target, kit());
        return null;
      }
      filters.add(filter);
    }
    return new Targets(filters, words(named), span(named));
  }

  /**
   * Whose strokes an edit means.
   *
   * @param filters each target
   * @param words as written
   * @param span where
   */
  record Targets(List<TargetFilter> filters, String words, Span span) {
    Predicate<Stroke> any() {
      return TargetFilter.any(filters);
    }

    /** True if a single limb is among them, so that its strokes must be known. */
    boolean nameLimb() {
      return !limbs().isEmpty();
    }

    /** The single limbs among them. */
    List<Limb> limbs() {
      return Lists.filter(Lists.map(filters, TargetFilter::limb), Objects::nonNull);
    }

    /** True if a stroke is meant because a single limb is. */
    boolean byLimb(Stroke stroke) {
      return Lists.any(filters, filter -> filter.limb() != null && filter.test(stroke));
    }
  }

  private static String words(List<TargetRef> named) {
    return String.join(", ", Lists.map(named, TargetRef::words));
  }

  private static Span span(List<TargetRef> named) {
    return named.get(0).span().to(named.get(named.size() - 1).span());
  }

  /** True if so many strokes more would be too many; says so once, at this line. */
  boolean tooMany(SectionDraft draft, long more) {
    if (draft.strokes().size() + more <= SectionDraft.MOST_STROKES) {
      return false;
    }
    problems.incomplete();
    if (problems.isNew(Code.TOO_LONG)) {
      tell(
          Code.TOO_LONG,
          line.statement().span(),
          "here the section grows beyond " + SectionDraft.MOST_STROKES + " strokes",
          "make two sections of it, and play them one after another in a chart");
    }
    return true;
  }

  /** True if the lines so far have cost too much to go on, or too many are wrong; says so. */
  boolean tooMuch(SectionDraft draft) {
    if (problems.isFull()) {
      return true;
    }
    if (draft.effort() <= SectionDraft.MOST_EFFORT) {
      return false;
    }
    lost(
        Code.TOO_LONG,
        line.statement().span(),
        "from here on the section has too many changes of too many strokes",
        "make two sections of it, or write the parts out");
    return true;
  }

  /** Where a count of a bar is; null, and said so, if there is no such place. */
  @Nullable Time place(SectionView view, CountRef count, int bar) {
    PlaceReading reading = new PlaceQuery(view, stroke -> true).read(count, bar);
    Miss miss = reading.miss();
    if (miss != null) {
      say(view, stroke -> true, "", List.of(miss));
      return null;
    }
    return reading.readings().get(0).place();
  }

  /** Says what an edit speaks of that is not there. */
  void say(SectionView view, Predicate<Stroke> target, String words, List<Miss> misses) {
    MissMessages messages = new MissMessages(this, view, target, words, List.of());
    misses.forEach(messages::say);
  }

  /** The same of the strokes of some targets. */
  void say(SectionView view, Targets targets, List<Miss> misses) {
    MissMessages messages =
        new MissMessages(this, view, targets.any(), targets.words(), targets.filters());
    misses.forEach(messages::say);
  }
}
