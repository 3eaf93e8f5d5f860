package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.cores.SpareCores;
import tabor.lists.Lists;
import tabor.notation.Score;

/**
 * Lays scores out on staves: bars are measured, broken into systems, spaced to fill the width, and
 * drawn from the notes outwards, each sign taking the nearest free room.
 */
public final class Engraver {
  /** Sections that could be broken alike are, as long as none loses more by it. */
  private static final double SHARED_LOSS = 1;

  private Engraver() {}

  /** Engraves a section; throws {@link IllegalArgumentException} for a score without bars. */
  public static Engraving engrave(Score score, Look look, TextMetrics font) {
    return engrave(List.of(score), List.of(look), font).get(0);
  }

  /**
   * Engraves sections that are read together: those of the same meter and number of bars break
   * their lines alike where they can.
   *
   * @param looks one for each score
   * @return one for each score
   */
  public static List<Engraving> engrave(List<Score> scores, List<Look> looks, TextMetrics font) {
    List<MeasuredScore> measured = new ArrayList<>();
    for (int i = 0; i < scores.size(); i++) {
      measured.add(MeasuredScore.of(scores.get(i), looks.get(i), font));
    }
    return engrave(measured);
  }

  /** The same for scores that have been measured; they are drawn on all cores. */
  public static List<Engraving> engrave(List<MeasuredScore> scores) {
    List<SectionPlan> plans = Lists.map(scores, MeasuredScore::plan);
    Map<Object, List<SectionPlan>> families = new LinkedHashMap<>();
    for (SectionPlan plan : plans) {
      families.computeIfAbsent(plan.family(), none -> new ArrayList<>()).add(plan);
    }
    IdentityHashMap<SectionPlan, List<Integer>> breaks = new IdentityHashMap<>();
    for (List<SectionPlan> family : families.values()) {
      LineWishes wishes = family.get(0).look().lines();
      List<LineBreaks.Measured> measured = Lists.map(family, SectionPlan::measured);
      List<Integer> shared = new LineBreaks(measured, wishes).best();
      for (int i = 0; i < family.size(); i++) {
        LineBreaks own = new LineBreaks(List.of(measured.get(i)), wishes);
        List<Integer> best = family.size() == 1 ? shared : own.best();
        boolean alike = own.cost(shared) <= own.cost(best) + SHARED_LOSS;
        breaks.put(family.get(i), alike ? shared : best);
      }
    }
    return SpareCores.map(
        plans, plan -> plan.engrave(java.util.Objects.requireNonNull(breaks.get(plan))));
  }
}
