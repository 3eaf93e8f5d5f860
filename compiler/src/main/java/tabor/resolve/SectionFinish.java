package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.body.BodyChecks;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;

/**
 * Ends a section: stand-ins, the mirrored player, repeated bars, and the checks on the body.
 *
 * @param lineStarts the bars before which the writer began a line
 */
record SectionFinish(
    SectionFrame frame, Problems problems, SectionSyntax syntax, List<Integer> lineStarts) {
  /** The finished section; what is wrong with it goes to the problems. */
  Groove finish(SectionDraft dealt) {
    List<Stroke> written = new ArrayList<>(dealt.strokes().size());
    for (Stroke stroke : dealt.strokes()) {
      written.add(stroke.ended());
    }
    List<Stroke> struck =
        OptionEffects.openHanded(frame, problems, dealt.bars(), struck(playable(written)));
    if (frame.kit().leftHanded()) {
      List<Stroke> other = new ArrayList<>(struck.size());
      for (Stroke stroke : struck) {
        other.add(stroke.by(stroke.limb().other(), stroke.dealt()));
      }
      struck = other;
    }
    List<Loudness.Mark> marks = new ArrayList<>(dealt.marks());
    marks.sort((a, b) -> byTime(a.bar(), a.at(), b.bar(), b.at()));
    List<Loudness.Hairpin> hairpins = new ArrayList<>(dealt.hairpins());
    hairpins.sort((a, b) -> byTime(a.fromBar(), a.from(), b.fromBar(), b.from()));
    Groove groove =
        new Groove(
            frame.name(),
            frame.title(),
            frame.heading().spot(),
            frame.base(),
            frame.setting(),
            dealt.bars(),
            frame.pickup(),
            Snap.strokes(frame.setting(), StrokeOrder.tidy(struck)),
            written,
            dealt.plays(),
            marks,
            hairpins,
            hands().prose(syntax),
            repeats(dealt),
            page());
    if (problems.isNew(Code.TOO_LONG)) {
      problems.addAll(BodyChecks.check(groove)); // a part of a section says nothing of the body
    }
    return groove;
  }

  private PageNotes page() {
    Groove base = frame.base();
    PageWishes from = base == null ? PageWishes.NONE : base.page().wishes();
    return PageReader.of(syntax, from, frame.kit(), hands(), lineStarts, problems);
  }

  private HandWords hands() {
    return HandWords.of(frame.kit().leftHanded(), frame.scope());
  }

  private static int byTime(int barA, Time atA, int barB, Time atB) {
    return barA == barB ? atA.compareTo(atB) : Integer.compare(barA, barB);
  }

  /** The strokes that some limb plays. */
  private static List<Stroke> playable(List<Stroke> strokes) {
    List<Stroke> playable = new ArrayList<>(strokes);
    playable.removeIf(stroke -> !stroke.hasLimb());
    return playable;
  }

  private static Set<Integer> repeats(SectionDraft dealt) {
    Set<Integer> repeats = new HashSet<>();
    for (int bar : dealt.repeats()) {
      if (bar > 1
          && bar <= dealt.bars()
          && isRepeat(dealt.view().inBar(bar - 1), dealt.view().inBar(bar))) {
        repeats.add(bar);
      }
    }
    return repeats;
  }

  private static boolean isRepeat(List<Stroke> one, List<Stroke> two) {
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

  /** The strokes with what is struck instead where the kit lacks the surface that is written. */
  private List<Stroke> struck(List<Stroke> written) {
    Kit kit = frame.kit();
    if (kit.standIns().isEmpty()) {
      return written;
    }
    List<Stroke> all = new ArrayList<>(written.size());
    List<Stroke> named = new ArrayList<>(written.size());
    for (Stroke stroke : written) {
      Surface surface = kit.struck(stroke.surface());
      if (surface == null) {
        missing(stroke);
      } else {
        named.add(stroke);
        all.add(surface.equals(stroke.surface()) ? stroke : SignRules.on(stroke, surface));
      }
    }
    OptionEffects.moved(frame, problems, named, all);
    return all;
  }

  /** Says, once a line, that nothing stands in for a surface. */
  private void missing(Stroke stroke) {
    Groove base = frame.base();
    boolean own = frame.owns(stroke.spot());
    if (!own && base != null && base.setting().kit().equals(frame.kit())) {
      return;
    }
    // A stroke that was inherited is missed because of the kit that this section chose.
    Spot at = own ? stroke.spot() : frame.heading().spot();
    record Told(String surface, int line) {}
    if (!problems.isNew(new Told(stroke.surface().name(), own ? line(at) : -1))) {
      return;
    }
    problems.tell(
        Code.MISSING_SURFACE,
        at,
        stroke.bar(),
        CountNames.of(stroke.slot(), frame.meters().of(stroke.bar())).toString(),
        "the kit “"
            + frame.kit().name()
            + "” has no "
            + stroke.surface().words()
            + ", and nothing stands in for it",
        "play something else, or let something stand in: without "
            + stroke.surface().name()
            + " plays …");
  }

  /** Where the line starts that a spot of the section is in. */
  private int line(Spot spot) {
    int start = 0;
    for (Line line : syntax.lines()) {
      if (line.start() > spot.span().start()) {
        break;
      }
      start = line.start();
    }
    return start;
  }
}
