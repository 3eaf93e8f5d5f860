package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Ref;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/** Applies one edit to the strokes above its line. */
record EditLine(LineContext context, SectionDraft draft) implements Edit.Cases<SectionDraft> {
  private SectionFrame frame() {
    return context.frame();
  }

  /**
   * What an edit chooses.
   *
   * @param draft the strokes as the edit sees them: with limbs where a limb is named
   * @param strokes the chosen ones, in order
   */
  private record Chosen(SectionDraft draft, List<Stroke> strokes) {}

  /** The strokes that targets and clauses choose; null, and said so, where something is missing. */
  private @Nullable Chosen choose(List<TargetRef> named, At at) {
    LineContext.Targets targets = context.targets(named);
    if (targets == null) {
      return null;
    }
    SectionDraft seen = Dealing.dealt(frame(), draft, targets.limbs());
    PlaceQuery.Found found =
        new PlaceQuery(seen.view(), targets.any()).find(at, targets.span(), frame().lenient());
    if (!found.misses().isEmpty()) {
      context.say(seen.view(), targets, found.misses());
      if (found.strokes().isEmpty()) {
        return null;
      }
    }
    if (!targets.nameLimb()) {
      return new Chosen(seen, found.strokes());
    }
    // What was chosen by its limb keeps it.
    List<Stroke> fixed = new ArrayList<>(found.strokes().size());
    for (Stroke stroke : found.strokes()) {
      fixed.add(targets.byLimb(stroke) ? fixed(stroke) : stroke);
    }
    List<Stroke> all = new ArrayList<>(seen.strokes());
    int next = 0;
    for (int i = 0; i < all.size() && next < fixed.size(); i++) {
      if (all.get(i) == found.strokes().get(next)) {
        all.set(i, fixed.get(next++));
      }
    }
    return new Chosen(seen.dealt() ? seen.dealt(all, 0) : seen.with(all), fixed);
  }

  /** The stroke with the limb that it has, for good. */
  static Stroke fixed(Stroke stroke) {
    return stroke.hasLimb() ? stroke.fixed() : stroke;
  }

  private SectionDraft change(@Nullable Chosen chosen, UnaryOperator<Stroke> change) {
    return chosen == null ? draft : chosen.draft().change(chosen.strokes(), change);
  }

  /** The level after {@code plays} and {@code split}: {@code ghosted} leaves accents alone. */
  private static Stroke levelled(Stroke stroke, @Nullable Ref<Level> level) {
    if (level == null || (level.value() == Level.GHOST && stroke.level() != Level.PLAIN)) {
      return stroke;
    }
    return stroke.at(level.value());
  }

  @Override
  public SectionDraft plays(Edit.Plays edit) {
    Surface surface = context.surface(edit.surface());
    if (surface == null) {
      return draft;
    }
    List<Limb> limbs = limbs(edit.who());
    if (!context.fits(edit.surface().span(), limbs.get(0), surface)) {
      return draft;
    }
    boolean everywhere = edit.at().isEverywhere();
    boolean single = limbs.size() == 1;
    Chosen chosen;
    if (everywhere) {
      SectionDraft seen = Dealing.dealt(frame(), draft, limbs);
      List<Stroke> all = new ArrayList<>(seen.strokes());
      all.removeIf(stroke -> !limbs.contains(stroke.limb()));
      chosen = new Chosen(seen, all);
    } else {
      chosen = choose(List.of(edit.who()), edit.at());
    }
    if (chosen == null) {
      return draft;
    }
    Set<Stroke> crowded = single ? Set.of() : crowded(chosen.strokes());
    SectionDraft done =
        change(
            chosen,
            stroke -> {
              Stroke kept = single || crowded.contains(stroke) ? fixed(stroke) : stroke;
              return levelled(SignRules.on(kept, surface), edit.level())
                  .from(context.line().spot());
            });
    if (everywhere) {
      for (Limb limb : limbs) {
        done = done.plays(limb, surface);
      }
    }
    return done;
  }

  /** The strokes that share their place with another: on one surface each needs its own limb. */
  private static Set<Stroke> crowded(List<Stroke> strokes) {
    Set<Stroke> crowded = new HashSet<>();
    for (int i = 1; i < strokes.size(); i++) {
      if (Stroke.areTogether(strokes.get(i - 1), strokes.get(i))) {
        crowded.add(strokes.get(i - 1));
        crowded.add(strokes.get(i));
      }
    }
    return crowded;
  }

  private static List<Limb> limbs(TargetRef who) {
    if (who instanceof TargetRef.OfLimb one) {
      return List.of(one.limb().limb());
    }
    return who instanceof TargetRef.OfGroup group && group.group() == TargetRef.Group.FEET
        ? List.of(Limb.RIGHT_FOOT, Limb.LEFT_FOOT)
        : List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND);
  }

  @Override
  public SectionDraft split(Edit.Split edit) {
    List<Surface> surfaces = new ArrayList<>();
    for (SurfaceRef named : edit.surfaces()) {
      Surface surface = context.surface(named);
      if (surface == null || !context.fits(named.span(), edit.limb().limb(), surface)) {
        return draft;
      }
      surfaces.add(surface);
    }
    int[] turn = new int[1];
    return change(
        choose(List.of(new TargetRef.OfLimb(edit.limb())), edit.at()),
        stroke ->
            levelled(SignRules.on(stroke, surfaces.get(turn[0]++ % surfaces.size())), edit.level())
                .from(context.line().spot()));
  }

  @Override
  public SectionDraft add(Edit.Add edit) {
    return new AddEdits(context, draft).add(edit);
  }

  @Override
  public SectionDraft follows(Edit.Follows edit) {
    Surface surface = context.surface(edit.surface());
    Chosen leaders = choose(List.of(new TargetRef.OfLimb(edit.limb())), edit.at());
    if (context.problems().gaps().hide(List.of(TargetFilter.of(edit.limb().limb())), null)) {
      // What it would follow may be missing, and with it what this line adds.
      context.problems().incomplete();
    }
    return surface == null || leaders == null
        ? draft
        : new AddEdits(context, leaders.draft()).follow(surface, leaders.strokes());
  }

  @Override
  public SectionDraft change(Edit.Change edit) {
    Chosen chosen = choose(edit.targets(), edit.at());
    if (chosen == null) {
      return draft;
    }
    return switch (edit.verb().kind()) {
      case DROP -> chosen.draft().without(chosen.strokes());
      case LEVEL -> {
        Level level = Objects.requireNonNull(edit.verb().level());
        yield change(chosen, stroke -> stroke.at(level));
      }
      case STROKES -> new TimeEdits(context, chosen.draft()).multiply(edit, chosen.strokes());
      case ORNAMENT, OPEN -> adorn(edit, chosen);
    };
  }

  private SectionDraft adorn(Edit.Change edit, Chosen chosen) {
    LineContext.Targets targets = context.targets(edit.targets());
    return change(
        chosen,
        stroke -> {
          Stroke done = SignRules.with(stroke, edit.verb(), frame());
          if (done != null) {
            return done.from(context.line().spot());
          }
          boolean named = targets == null || !isOnlyZone(targets, stroke);
          if (named && context.problems().isNew(edit)) {
            Span span = edit.span();
            context
                .problems()
                .add(
                    SignRules.refusal(edit.verb())
                        .at(
                            context
                                .line()
                                .spot(
                                    new Span(
                                        span.start(), span.start() + edit.verb().word().length())),
                            stroke.surface())
                        .in(
                            new tabor.diagnostic.Diagnostic.Place(
                                frame().name(),
                                stroke.bar(),
                                tabor.rhythm.CountNames.of(
                                        stroke.slot(), frame().meters().of(stroke.bar()))
                                    .toString())));
          }
          return stroke;
        });
  }

  /** True if a stroke is meant only because the piece is that its surface is a zone of. */
  private static boolean isOnlyZone(LineContext.Targets targets, Stroke stroke) {
    return targets.filters().stream()
        .filter(filter -> filter.test(stroke))
        .allMatch(
            filter ->
                filter.wholePiece()
                    && filter.surface() != null
                    && !filter.surface().name().equals(stroke.surface().name()));
  }

  @Override
  public SectionDraft move(Edit.Move edit) {
    At.Places from = new At.Places(List.of(new At.One(edit.from())), edit.from().span());
    Chosen chosen = choose(edit.targets(), new At(from, edit.bars(), null));
    LineContext.Targets targets = chosen == null ? null : context.targets(edit.targets());
    return chosen == null || targets == null
        ? draft
        : new TimeEdits(context, chosen.draft()).move(edit, chosen.strokes(), targets.any());
  }

  @Override
  public SectionDraft shift(Edit.Shift edit) {
    Chosen chosen = choose(edit.targets(), At.EVERYWHERE);
    return chosen == null
        ? draft
        : new TimeEdits(context, chosen.draft()).shift(edit, chosen.strokes());
  }

  @Override
  public SectionDraft swapHands(Edit.SwapHands edit) {
    SectionDraft seen = Dealing.dealt(frame(), draft, List.of(Limb.RIGHT_HAND));
    List<Stroke> all = new ArrayList<>(seen.strokes().size());
    for (Stroke stroke : seen.strokes()) {
      Stroke kept = fixed(stroke);
      all.add(
          stroke.limb().isHand() && stroke.hasLimb()
              ? kept.by(stroke.limb().other(), kept.dealt()).from(context.line().spot())
              : stroke);
    }
    SectionDraft done = seen.with(all);
    Surface right = draft.plays(Limb.RIGHT_HAND);
    Surface left = draft.plays(Limb.LEFT_HAND);
    return right == null || left == null
        ? done
        : done.plays(Limb.RIGHT_HAND, left).plays(Limb.LEFT_HAND, right);
  }

  @Override
  public SectionDraft only(Edit.Only edit) {
    Chosen chosen = choose(edit.targets(), At.EVERYWHERE);
    return chosen == null ? draft : chosen.draft().inOrder(chosen.strokes());
  }

  @Override
  public SectionDraft take(Edit.Take edit) {
    return new CopyEdits(context, draft).take(edit);
  }

  @Override
  public SectionDraft fill(Edit.Fill edit) {
    return new CopyEdits(context, draft).fill(edit);
  }

  @Override
  public SectionDraft dynamic(Edit.Dynamic edit) {
    return new DynamicEdits(context, draft).dynamic(edit);
  }

  @Override
  public SectionDraft hairpin(Edit.Hairpin edit) {
    return new DynamicEdits(context, draft).hairpin(edit);
  }
}
