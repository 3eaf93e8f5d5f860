package tabor.body;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.Demands.Grade;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * What a section asks of the body at its tempo, in a few figures.
 *
 * @param perSecond strokes a second of each limb that plays, over the whole section; grace notes
 *     and both strokes of a diddle count
 * @param together at how many places two limbs or more strike at once
 * @param hardest the limb that is nearest to its comfortable limit; null if nothing is near any
 * @param share how near, in percent of the comfortable limit, rounded; above 100 it is beyond
 */
public record Difficulty(
    Map<Limb, Time> perSecond, int together, @Nullable Limb hardest, long share) {

  /** Copies the map, keeping the order of the limbs. */
  public Difficulty {
    Map<Limb, Time> copy = new EnumMap<>(Limb.class);
    copy.putAll(perSecond);
    perSecond = java.util.Collections.unmodifiableMap(copy);
  }

  /** How many limbs play. */
  public int limbs() {
    return perSecond.size();
  }

  /** The figures of a section at its own tempo, by the limits in force. */
  public static Difficulty of(Groove groove) {
    Tempo tempo = groove.setting().tempo();
    Time seconds = groove.length().times(tempo.secondsPerWhole());
    Map<Limb, Time> perSecond = new EnumMap<>(Limb.class);
    Movements.of(groove)
        .forEach(
            (limb, moves) -> {
              long hits = moves.stream().mapToLong(Difficulty::hits).sum();
              if (hits > 0) {
                perSecond.put(limb, Time.of(hits).over(seconds));
              }
            });
    Map<Limb, Time> shares = new EnumMap<>(Limb.class);
    Demands.each(
        groove,
        groove.setting().kit().limitsInForce(),
        Grade.COMFORTABLE,
        demand ->
            shares.merge(demand.limb(), demand.needs().over(demand.seconds(tempo)), Time::max));
    Limb hardest = null;
    for (Map.Entry<Limb, Time> entry : shares.entrySet()) {
      if (hardest == null || shares.get(hardest).before(entry.getValue())) {
        hardest = entry.getKey();
      }
    }
    long share = hardest == null ? 0 : shares.get(hardest).times(100).rounded();
    return new Difficulty(perSecond, together(groove.strokes()), hardest, share);
  }

  private static long hits(Movement move) {
    return move.inner().sign() > 0 || move.lead() > move.lastLead() ? 2 : 1;
  }

  private static int together(List<Stroke> strokes) {
    int places = 0;
    int from = 0;
    while (from < strokes.size()) {
      Stroke first = strokes.get(from);
      Set<Limb> limbs = new HashSet<>();
      int to = from;
      while (to < strokes.size()
          && strokes.get(to).bar() == first.bar()
          && strokes.get(to).at().equals(first.at())) {
        limbs.add(strokes.get(to++).limb());
      }
      places += limbs.size() > 1 ? 1 : 0;
      from = to;
    }
    return places;
  }
}
