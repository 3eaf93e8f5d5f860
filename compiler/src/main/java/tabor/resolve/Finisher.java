package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.BodyChecks;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.source.Spot;
import tabor.syntax.Line;

/** Ends a section: stand-ins, the mirrored player, repeated bars, and the checks on the body. */
final class Finisher {
  private Finisher() {}

  static Groove finish(Work work, @Nullable String title, Line heading, @Nullable Groove base) {
    Dealing.finish(work);
    List<Stroke> written = work.strokes();
    List<Stroke> played = written.stream().filter(Stroke::hasLimb).toList();
    List<Stroke> struck = AskedFor.openHanded(work, heading, struck(work, played, heading, base));
    if (work.kit().leftHanded()) {
      List<Stroke> other = new ArrayList<>(struck.size());
      for (Stroke stroke : struck) {
        other.add(stroke.by(stroke.limb().other(), stroke.dealt()));
      }
      struck = Work.tidy(other);
    }
    work.marks.sort(Comparator.comparingInt(Loudness.Mark::bar).thenComparing(Loudness.Mark::at));
    work.hairpins.sort(
        Comparator.comparingInt(Loudness.Hairpin::fromBar).thenComparing(Loudness.Hairpin::from));
    Set<Integer> repeats = new HashSet<>();
    for (int bar : work.repeats) {
      if (bar > 1 && bar <= work.bars && sameBars(written, bar)) {
        repeats.add(bar);
      }
    }
    Groove groove =
        new Groove(
            work.name,
            title,
            heading.spot(),
            base,
            work.setting,
            work.bars,
            work.pickup(),
            struck,
            written,
            work.plays,
            work.marks,
            work.hairpins,
            work.prose,
            repeats);
    work.problems.addAll(BodyChecks.check(groove));
    return groove;
  }

  /** The strokes with what is struck instead where the kit lacks the surface that is written. */
  private static List<Stroke> struck(
      Work work, List<Stroke> written, Line heading, @Nullable Groove base) {
    Kit kit = work.kit();
    if (kit.standIns().isEmpty()) {
      return written;
    }
    boolean ownKit = base == null || !base.setting().kit().equals(kit);
    List<Stroke> all = new ArrayList<>(written.size());
    List<Stroke> named = new ArrayList<>(written.size());
    Set<String> said = new HashSet<>();
    boolean changed = false;
    for (Stroke stroke : written) {
      Surface surface = kit.struck(stroke.surface());
      if (surface == null) {
        changed = true;
        missing(work, stroke, heading, ownKit, said);
      } else if (surface.equals(stroke.surface())) {
        named.add(stroke);
        all.add(stroke);
      } else {
        changed = true;
        named.add(stroke);
        all.add(Work.on(stroke, surface));
      }
    }
    AskedFor.moved(work, heading, named, all);
    return changed ? Work.tidy(all) : written;
  }

  private static void missing(
      Work work, Stroke stroke, Line heading, boolean ownKit, Set<String> said) {
    Spot spot = stroke.spot();
    boolean own = spot.passage() == heading.passage();
    if (!own && !ownKit) {
      return;
    }
    // A stroke that was inherited is missed because of the kit that this section chose.
    Spot at = own ? spot : heading.spot();
    if (!said.add(stroke.surface().name() + (own ? spot.span().start() : -1))) {
      return;
    }
    work.problems.add(
        work.problems
            .make(
                Code.MISSING_SURFACE,
                at,
                stroke.bar(),
                CountNames.of(stroke.slot(), work.meter()).toString(),
                "the kit “"
                    + work.kit().name()
                    + "” has no "
                    + stroke.surface().words()
                    + ", and nothing stands in for it")
            .help(
                "play something else, or let something stand in: without "
                    + stroke.surface().name()
                    + " plays …"));
  }

  /** True if a bar has the same strokes as the one before. */
  private static boolean sameBars(List<Stroke> strokes, int bar) {
    List<Stroke> one = inBar(strokes, bar - 1);
    List<Stroke> two = inBar(strokes, bar);
    if (one.size() != two.size()) {
      return false;
    }
    for (int i = 0; i < one.size(); i++) {
      Stroke a = one.get(i);
      Stroke b = two.get(i);
      if (!a.at().equals(b.at())
          || !a.length().equals(b.length())
          || a.limb() != b.limb()
          || !a.surface().equals(b.surface())
          || a.level() != b.level()
          || !a.ornaments().equals(b.ornaments())) {
        return false;
      }
    }
    return true;
  }

  private static List<Stroke> inBar(List<Stroke> strokes, int bar) {
    List<Stroke> found = new ArrayList<>();
    for (Stroke stroke : strokes) {
      if (stroke.bar() == bar) {
        found.add(stroke);
      }
    }
    return found;
  }
}
