package tabor.resolve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.OpenHanded;
import tabor.diagnostic.Code;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.CountNames;

/**
 * What the person at the command line asked for over the file, done to a finished section, and what
 * that changed. What a step inherits is told at the section it comes from.
 */
record OptionEffects(SectionFrame frame, Problems problems) {
  private static final int MOST_COUNTS = 8;

  /** The strokes of an open-handed player, if one is asked for. */
  static List<Stroke> openHanded(
      SectionFrame frame, Problems problems, int bars, List<Stroke> strokes) {
    if (!frame.scope().options().openHanded()) {
      return strokes;
    }
    List<Stroke> dealt = OpenHanded.deal(frame.setting(), bars, frame.pickup(), strokes);
    new OptionEffects(frame, problems).limbs(strokes, dealt);
    return dealt;
  }

  /** Says what another kit moved: each pair is a stroke as written and as struck. */
  static void moved(
      SectionFrame frame, Problems problems, List<Stroke> written, List<Stroke> struck) {
    if (frame.scope().options().on() != null) {
      new OptionEffects(frame, problems).surfaces(written, struck);
    }
  }

  private void limbs(List<Stroke> before, List<Stroke> after) {
    Map<String, List<Stroke>> groups = new LinkedHashMap<>();
    for (int i = 0; i < before.size(); i++) {
      Stroke stroke = after.get(i);
      if (frame.owns(stroke.spot()) && stroke.limb() != before.get(i).limb()) {
        Limb limb = frame.kit().leftHanded() ? stroke.limb().other() : stroke.limb();
        String words = stroke.surface().words() + " now with the " + limb.words();
        groups.computeIfAbsent(words, w -> new ArrayList<>()).add(stroke);
      }
    }
    say(groups, "open-handed: ", null);
  }

  private void surfaces(List<Stroke> before, List<Stroke> after) {
    Map<String, List<Stroke>> groups = new LinkedHashMap<>();
    for (int i = 0; i < before.size(); i++) {
      Stroke stroke = after.get(i);
      if (frame.owns(stroke.spot()) && !stroke.surface().equals(before.get(i).surface())) {
        String words = before.get(i).surface().words() + " now on the " + stroke.surface().words();
        groups.computeIfAbsent(words, w -> new ArrayList<>()).add(stroke);
      }
    }
    say(
        groups,
        "on the kit “" + frame.kit().name() + "”: ",
        "a kit of your own says where it goes instead: without SURFACE plays SURFACE");
  }

  private void say(Map<String, List<Stroke>> groups, String start, @Nullable String help) {
    if (groups.isEmpty()) {
      return;
    }
    List<String> parts = new ArrayList<>();
    groups.forEach((words, strokes) -> parts.add(words + " " + where(strokes)));
    problems.tell(
        Code.PLAYED_DIFFERENTLY,
        frame.heading().spot(),
        null,
        null,
        start + String.join("; ", parts),
        help);
  }

  /** {@code at 1 1& 2}, or how many places it is. */
  private String where(List<Stroke> strokes) {
    Set<String> counts = new LinkedHashSet<>();
    for (Stroke stroke : strokes) {
      counts.add(CountNames.of(stroke.slot(), frame.meters().of(stroke.bar())).toString());
    }
    return counts.size() <= MOST_COUNTS
        ? "at " + String.join(" ", counts)
        : "at " + counts.size() + " counts";
  }
}
