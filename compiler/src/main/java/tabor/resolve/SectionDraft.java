package tabor.resolve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import tabor.groove.Loudness;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;

/**
 * A section after some of its lines: its strokes as edited so far, and what each limb plays from
 * here on. Each line makes a new one.
 *
 * @param view the strokes
 * @param plays what each limb strikes where nothing else is said
 * @param marks dynamics, in the order written
 * @param hairpins in the order written
 * @param repeats bars that were written as repeats of the bar before
 * @param dealt true if its open strokes have the limbs that they would have if the section ended
 * @param effort what the lines so far have cost, about the number of strokes looked at
 */
record SectionDraft(
    SectionView view,
    Map<Limb, Surface> plays,
    List<Loudness.Mark> marks,
    List<Loudness.Hairpin> hairpins,
    Set<Integer> repeats,
    boolean dealt,
    long effort) {
  /** Most strokes of one section; more are {@code too-long}. */
  static final int MOST_STROKES = 40_000;

  /** Most bars of one section. */
  static final int MOST_BARS = 512;

  /** Finest division of a beat, groups multiplied out; finer ones are {@code too-deep}. */
  static final int FINEST = 1024;

  /** What the lines of one section may cost together; more is {@code too-long}. */
  static final long MOST_EFFORT = 500_000;

  /** Copies the collections, the strokes excepted. */
  SectionDraft {
    plays = Map.copyOf(plays);
    marks = List.copyOf(marks);
    hairpins = List.copyOf(hairpins);
    repeats = Set.copyOf(repeats);
  }

  /** Nothing played yet. */
  static SectionDraft empty(SectionFrame frame, int bars, Map<Limb, Surface> plays) {
    return new SectionDraft(
        SectionView.of(
            frame.meters(),
            frame.setting().feel(),
            frame.setting().wording().read(),
            frame.pickupBeats(),
            bars,
            List.of()),
        plays,
        List.of(),
        List.of(),
        Set.of(),
        true,
        0);
  }

  List<Stroke> strokes() {
    return view.strokes();
  }

  int bars() {
    return view.bars();
  }

  /** The same with other strokes, put in order; strokes that are one become one. */
  SectionDraft with(List<Stroke> others) {
    return inOrder(StrokeOrder.tidy(others));
  }

  /** The same with other strokes that are in order. */
  SectionDraft inOrder(List<Stroke> others) {
    return new SectionDraft(
        view.with(others), plays, marks, hairpins, repeats, dealt && others == strokes(), effort);
  }

  /** The same with strokes that are dealt, at a cost. */
  SectionDraft dealt(List<Stroke> others, long cost) {
    return new SectionDraft(
        view.with(StrokeOrder.tidy(others)), plays, marks, hairpins, repeats, true, effort + cost);
  }

  /** The same after one more line has looked at its strokes. */
  SectionDraft looked() {
    return new SectionDraft(
        view, plays, marks, hairpins, repeats, dealt, effort + 1 + strokes().size());
  }

  /** The same with more strokes. */
  SectionDraft plus(List<Stroke> more) {
    if (more.isEmpty()) {
      return this;
    }
    List<Stroke> all = new ArrayList<>(strokes().size() + more.size());
    all.addAll(strokes());
    all.addAll(more);
    return with(all);
  }

  /** The same with only the strokes that pass. */
  SectionDraft keep(Predicate<Stroke> test) {
    List<Stroke> kept = new ArrayList<>(strokes().size());
    for (Stroke stroke : strokes()) {
      if (test.test(stroke)) {
        kept.add(stroke);
      }
    }
    return kept.size() == strokes().size() ? this : inOrder(kept);
  }

  /** The same with some strokes, given in order, replaced by what {@code change} makes of them. */
  SectionDraft change(List<Stroke> chosen, UnaryOperator<Stroke> change) {
    if (chosen.isEmpty()) {
      return this;
    }
    List<Stroke> all = new ArrayList<>(strokes());
    boolean moved = false;
    boolean dealtAnew = false;
    int next = 0;
    for (int i = 0; i < all.size() && next < chosen.size(); i++) {
      Stroke before = all.get(i);
      if (chosen.get(next) == before) {
        Stroke after = change.apply(before);
        next++;
        all.set(i, after);
        moved |= Stroke.ORDER.compare(before, after) != 0;
        dealtAnew |= !before.ornaments().equals(after.ornaments());
      }
    }
    List<Stroke> ordered = moved ? StrokeOrder.tidy(all) : all;
    return new SectionDraft(
        view.with(ordered), plays, marks, hairpins, repeats, dealt && !moved && !dealtAnew, effort);
  }

  /** The same without some strokes. */
  SectionDraft without(List<Stroke> chosen) {
    Set<Stroke> gone = identities(chosen);
    return keep(stroke -> !gone.contains(stroke));
  }

  /** The same with another number of bars. */
  SectionDraft bars(int bars, List<Stroke> others) {
    return new SectionDraft(
        view.with(bars, StrokeOrder.tidy(others)),
        plays,
        Lists.filter(marks, mark -> mark.bar() <= bars),
        Lists.filter(hairpins, hairpin -> hairpin.toBar() <= bars),
        repeats,
        false,
        effort);
  }

  /** The same with a limb that plays something else from here on. */
  SectionDraft plays(Limb limb, Surface surface) {
    Map<Limb, Surface> all = new EnumMap<>(Limb.class);
    all.putAll(plays);
    all.put(limb, surface);
    return new SectionDraft(view, all, marks, hairpins, repeats, dealt, effort);
  }

  SectionDraft marks(List<Loudness.Mark> others) {
    return new SectionDraft(view, plays, others, hairpins, repeats, dealt, effort);
  }

  SectionDraft hairpins(List<Loudness.Hairpin> others) {
    return new SectionDraft(view, plays, marks, others, repeats, dealt, effort);
  }

  SectionDraft repeats(Set<Integer> others) {
    return new SectionDraft(view, plays, marks, hairpins, others, dealt, effort);
  }

  /** What a limb plays where nothing else is said. */
  @Nullable Surface plays(Limb limb) {
    return plays.get(limb);
  }

  static Set<Stroke> identities(List<Stroke> strokes) {
    Set<Stroke> set = Collections.newSetFromMap(new IdentityHashMap<>());
    set.addAll(strokes);
    return set;
  }
}
