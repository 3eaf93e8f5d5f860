package tabor.body;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.source.LineIndex;
import tabor.source.Passage;
import tabor.source.Spot;

/**
 * Turns findings into diagnostics: the same places in the source are told once with the bars that
 * they return in, and what a step inherited is told where it came from.
 */
final class Findings implements Consumer<Finding> {
  private final Groove groove;
  private final Passage own;
  private final Map<Object, Told> told = new LinkedHashMap<>();
  private final List<Finding> found = new ArrayList<>();
  private @Nullable LineIndex lines;

  Findings(Groove groove) {
    this.groove = groove;
    this.own = groove.heading().passage();
  }

  /** What is told as one diagnostic. */
  private static final class Told {
    Finding finding;
    final Spot spot;
    final Set<Integer> bars = new HashSet<>();
    int places = 0;

    Told(Finding finding, Spot spot) {
      this.finding = finding;
      this.spot = spot;
    }
  }

  @Override
  public void accept(Finding finding) {
    found.add(finding);
  }

  /**
   * The diagnostics, in order of time.
   *
   * @param base what the section came from is asked only when something was found: its findings,
   *     whatever their place in the source
   */
  List<Diagnostic> diagnostics(Supplier<List<Finding>> base) {
    if (found.isEmpty()) {
      return List.of();
    }
    Map<Object, Time> there = new HashMap<>();
    Set<Object> handedDown = new HashSet<>();
    for (Finding finding : base.get()) {
      there.merge(inTheMusic(finding), finding.weight(), Time::max);
      handedDown.add(inTheSource(finding));
    }
    for (Finding finding : found) {
      Spot spot = latest(finding.strokes());
      Time before = there.get(inTheMusic(finding));
      boolean inherited =
          (before != null && finding.weight().compareTo(before) <= 0)
              || (spot == null && handedDown.contains(inTheSource(finding)));
      if (!inherited) {
        tell(finding, spot == null ? groove.heading() : spot);
      }
    }
    return Lists.map(told.values(), this::diagnostic);
  }

  /** Limbs, surfaces and places in the music: the same problem, whatever line it comes from now. */
  private static Object inTheMusic(Finding finding) {
    List<Object> key = new ArrayList<>();
    key.add(finding.code());
    for (Stroke stroke : finding.strokes()) {
      key.addAll(List.of(stroke.limb(), stroke.surface(), stroke.bar(), stroke.at()));
    }
    return key;
  }

  /** Limbs and places in the source: the same problem, whatever bar it is repeated in. */
  private static Object inTheSource(Finding finding) {
    List<Object> key = new ArrayList<>();
    key.add(finding.code());
    for (Stroke stroke : finding.strokes()) {
      key.addAll(List.of(stroke.limb(), stroke.spot()));
    }
    return key;
  }

  private void tell(Finding finding, Spot spot) {
    Limb limb = finding.limb();
    Object key = limb == null ? inTheSource(finding) : List.of(finding.code(), limb, line(spot));
    Told group = told.computeIfAbsent(key, k -> new Told(finding, spot));
    group.bars.add(finding.at().bar());
    group.places++;
    if (finding.weight().compareTo(group.finding.weight()) > 0) {
      group.finding = finding;
    }
  }

  private int line(Spot spot) {
    if (spot.passage() != own) {
      return -1;
    }
    LineIndex index = lines;
    if (index == null) {
      index = new LineIndex(own.text());
      lines = index;
    }
    return index.lineOf(spot.span().start());
  }

  /** The latest place of the section's own; null if no stroke has one. */
  private @Nullable Spot latest(List<Stroke> strokes) {
    Spot latest = null;
    for (Stroke stroke : strokes) {
      Spot spot = stroke.spot();
      if (spot.passage() == own
          && (latest == null || spot.span().start() > latest.span().start())) {
        latest = spot;
      }
    }
    return latest;
  }

  private Diagnostic diagnostic(Told group) {
    Finding finding = group.finding;
    Spot latest = latest(finding.strokes());
    Spot spot = latest == null ? group.spot : latest;
    Diagnostic.Place place =
        new Diagnostic.Place(
            groove.name(), finding.at().bar(), FindingWords.count(groove, finding.at()));
    Diagnostic diagnostic =
        Diagnostic.of(finding.code(), spot, finding.message() + more(group))
            .in(place)
            .help(finding.help());
    Map<Spot, String> labels = new HashMap<>();
    for (Stroke stroke : finding.strokes()) {
      if (!stroke.spot().equals(spot) && labels.putIfAbsent(stroke.spot(), "") == null) {
        diagnostic = diagnostic.label(stroke.spot(), label(finding.code(), stroke));
      }
    }
    return diagnostic;
  }

  private String label(Code code, Stroke stroke) {
    String there = FindingWords.limb(stroke) + " on " + FindingWords.surface(stroke);
    return code == Code.TOO_FAST || code == Code.FAR_REACH
        ? there + " at " + FindingWords.count(groove, stroke)
        : there;
  }

  private static String more(Told group) {
    if (group.finding.limb() == null) {
      int more = group.bars.size() - 1;
      return more == 0 ? "" : " and in " + more + (more == 1 ? " more bar" : " more bars");
    }
    int more = group.places - 1;
    return more == 0 ? "" : "; the same at " + more + (more == 1 ? " more place" : " more places");
  }
}
