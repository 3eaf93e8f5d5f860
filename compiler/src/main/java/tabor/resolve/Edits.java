package tabor.resolve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Word;

/** Applies the edits of one section, each to the strokes above its line. */
final class Edits implements Edit.Cases<@Nullable Void> {
  private final Work work;
  private Line line;

  Edits(Work work, Line first) {
    this.work = work;
    this.line = first;
  }

  /** Applies one edit. */
  void apply(Line at, Edit edit) {
    line = at;
    edit.match(this);
  }

  /** The surface that a word names; null, and said so, if it names none. */
  static @Nullable Surface surface(Work work, Line line, Word word) {
    Surface surface = work.kit().surface(word.text());
    if (surface == null) {
      work.partial = true;
      work.problems.unknown(
          line, word, "surface", Near.find(word.text(), work.kit().surfaceNames()));
    }
    return surface;
  }

  /** The limb that a word names; null, and said so, if it names none. */
  static @Nullable Limb limb(Work work, Line line, Word word) {
    Limb limb = Subject.limb(word.text());
    if (limb == null) {
      work.partial = true;
      work.problems.unknown(
          line,
          word,
          "limb",
          Near.find(word.text(), List.of("right", "left", "right foot", "left foot")));
    }
    return limb;
  }

  /** True if the limb can play the surface; says so if it cannot. */
  static boolean fits(Work work, Line line, Span span, Limb limb, Surface surface) {
    if (surface.isFoot() != limb.isHand()) {
      return true;
    }
    work.partial = true;
    work.problems.add(
        Letters.wrongLimb(line.spot(span), limb, surface)
            .in(new tabor.diagnostic.Diagnostic.Place(work.name, null, null)));
    return false;
  }

  private static Span span(List<Word> words) {
    return words.get(0).span().to(words.get(words.size() - 1).span());
  }

  private @Nullable List<Stroke> chosen(List<Word> targets, At at) {
    Dealing.see(work, targets);
    Selector selector = new Selector(work, line);
    Predicate<Stroke> target = selector.target(targets);
    List<Stroke> chosen = target == null ? null : selector.select(target, at, span(targets));
    return chosen == null ? null : Dealing.fix(work, chosen, targets);
  }

  /** Replaces the chosen strokes by what {@code change} makes of them. */
  private void change(@Nullable List<Stroke> chosen, UnaryOperator<Stroke> change) {
    if (chosen == null || chosen.isEmpty()) {
      return;
    }
    // The chosen stand in the order of the strokes: one walk finds them all.
    List<Stroke> all = new ArrayList<>(work.strokes().size());
    int next = 0;
    for (Stroke stroke : work.strokes()) {
      boolean meant = next < chosen.size() && chosen.get(next) == stroke;
      next += meant ? 1 : 0;
      all.add(meant ? change.apply(stroke) : stroke);
    }
    work.strokes(all);
  }

  static Set<Stroke> identities(List<Stroke> strokes) {
    Set<Stroke> set = Collections.newSetFromMap(new IdentityHashMap<>(strokes.size() * 2));
    set.addAll(strokes);
    return set;
  }

  static @Nullable Level written(@Nullable Word level) {
    return Selector.level(level);
  }

  /** The level after {@code plays} and {@code split}: {@code ghosted} leaves accents alone. */
  private static Stroke levelled(Stroke stroke, @Nullable Level level) {
    if (level == null || (level == Level.GHOST && stroke.level() != Level.PLAIN)) {
      return stroke;
    }
    return stroke.at(level);
  }

  @Override
  public @Nullable Void plays(Edit.Plays edit) {
    Limb limb = limb(work, line, edit.limb());
    Surface surface = surface(work, line, edit.surface());
    if (limb == null
        || surface == null
        || !fits(work, line, edit.surface().span(), limb, surface)) {
      return null;
    }
    Level level = written(edit.level());
    UnaryOperator<Stroke> change =
        s -> Work.from(levelled(Work.on(s, surface), level), line.spot());
    if (edit.at().equals(At.EVERYWHERE)) {
      work.plays.put(limb, surface);
      Dealing.see(work, limb);
      List<Stroke> all = new ArrayList<>(work.strokes().size());
      for (Stroke stroke : work.strokes()) {
        all.add(stroke.limb() == limb && stroke.hasLimb() ? change.apply(stroke).fixed() : stroke);
      }
      work.strokes(all);
    } else {
      change(Dealing.chosen(work, line, limb, edit.at(), edit.limb().span()), change);
    }
    return null;
  }

  @Override
  public @Nullable Void split(Edit.Split edit) {
    Limb limb = limb(work, line, edit.limb());
    List<Surface> surfaces = new ArrayList<>();
    for (Word word : edit.surfaces()) {
      Surface surface = surface(work, line, word);
      if (surface == null || (limb != null && !fits(work, line, word.span(), limb, surface))) {
        return null;
      }
      surfaces.add(surface);
    }
    if (limb == null) {
      return null;
    }
    List<Stroke> chosen = Dealing.chosen(work, line, limb, edit.at(), edit.limb().span());
    Level level = written(edit.level());
    int[] turn = new int[1];
    change(
        chosen,
        s ->
            Work.from(
                levelled(Work.on(s, surfaces.get(turn[0]++ % surfaces.size())), level),
                line.spot()));
    return null;
  }

  @Override
  public @Nullable Void add(Edit.Add edit) {
    new AddEdits(work, line).add(edit);
    return null;
  }

  @Override
  public @Nullable Void follows(Edit.Follows edit) {
    new AddEdits(work, line).follows(edit);
    return null;
  }

  @Override
  public @Nullable Void drop(Edit.Drop edit) {
    List<Stroke> chosen = chosen(edit.targets(), edit.at());
    if (chosen != null) {
      Set<Stroke> gone = identities(chosen);
      work.keep(stroke -> !gone.contains(stroke));
    }
    return null;
  }

  @Override
  public @Nullable Void level(Edit.SetLevel edit) {
    Level level =
        switch (edit.verb().text()) {
          case "ghost" -> Level.GHOST;
          case "plain" -> Level.PLAIN;
          default -> Level.ACCENT;
        };
    change(chosen(edit.targets(), edit.at()), s -> s.at(level));
    return null;
  }

  @Override
  public @Nullable Void multiply(Edit.Multiply edit) {
    List<Stroke> chosen = chosen(edit.targets(), edit.at());
    if (chosen != null) {
      new TimeEdits(work, line).multiply(edit, chosen);
    }
    return null;
  }

  private static final Map<String, Ornament> ORNAMENTS =
      Map.of(
          "flam", Ornament.FLAM,
          "drag", Ornament.DRAG,
          "ruff", Ornament.RUFF,
          "buzz", Ornament.BUZZ,
          "diddle", Ornament.DIDDLE);

  @Override
  public @Nullable Void adorn(Edit.Adorn edit) {
    List<Stroke> chosen = chosen(edit.targets(), edit.at());
    if (chosen == null) {
      return null;
    }
    String verb = edit.verb().text();
    boolean[] refused = new boolean[1];
    change(
        chosen,
        stroke -> {
          Ornament ornament = ORNAMENTS.get(verb);
          Stroke done =
              ornament != null
                  ? stroke.with(stroke.ornaments().with(ornament))
                  : switch (verb) {
                    case "open" -> Letters.opened(stroke, work.kit());
                    case "choke" -> Letters.choked(stroke);
                    default -> Letters.rimshot(stroke);
                  };
          if (done != null) {
            return Work.from(done, line.spot());
          }
          if (!refused[0]) {
            refused[0] = true;
            work.problems.add(
                Letters.cannotTake(work, line.spot(edit.verb().span()), stroke, verb));
          }
          return stroke;
        });
    return null;
  }

  @Override
  public @Nullable Void move(Edit.Move edit) {
    Dealing.see(work, edit.targets());
    Selector selector = new Selector(work, line);
    Predicate<Stroke> target = selector.target(edit.targets());
    if (target != null) {
      new TimeEdits(work, line).move(edit, selector, target, span(edit.targets()));
    }
    return null;
  }

  @Override
  public @Nullable Void shift(Edit.Shift edit) {
    List<Stroke> chosen = chosen(edit.targets(), At.EVERYWHERE);
    if (chosen != null) {
      new TimeEdits(work, line).shift(edit, chosen);
    }
    return null;
  }

  @Override
  public @Nullable Void swapHands(Edit.SwapHands edit) {
    Dealing.see(work, Limb.RIGHT_HAND);
    List<Stroke> all = new ArrayList<>(work.strokes().size());
    for (Stroke stroke : work.strokes()) {
      boolean swaps = stroke.limb().isHand() && stroke.hasLimb();
      Stroke other = stroke.by(stroke.limb().other(), stroke.dealt()).fixed();
      all.add(swaps ? Work.from(other, line.spot()) : stroke);
    }
    work.strokes(all);
    Surface right = work.plays(Limb.RIGHT_HAND);
    Surface left = work.plays(Limb.LEFT_HAND);
    if (right != null && left != null) {
      work.plays.put(Limb.RIGHT_HAND, left);
      work.plays.put(Limb.LEFT_HAND, right);
    }
    return null;
  }

  @Override
  public @Nullable Void only(Edit.Only edit) {
    List<Stroke> chosen = chosen(edit.targets(), At.EVERYWHERE);
    if (chosen != null) {
      work.strokes(chosen);
    }
    return null;
  }

  @Override
  public @Nullable Void take(Edit.Take edit) {
    new CopyEdits(work, line).take(edit);
    return null;
  }

  @Override
  public @Nullable Void fill(Edit.Fill edit) {
    new CopyEdits(work, line).fill(edit);
    return null;
  }

  @Override
  public @Nullable Void dynamic(Edit.Dynamic edit) {
    new DynamicEdits(work, line).dynamic(edit);
    return null;
  }

  @Override
  public @Nullable Void hairpin(Edit.Hairpin edit) {
    new DynamicEdits(work, line).hairpin(edit);
    return null;
  }
}
