package tabor.resolve;

import java.util.List;
import tabor.groove.CountingWords;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Feel;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/** The strokes of a section by bars, with what it takes to read counts among them. */
public final class SectionView {
  private final Meters meters;
  private final Feel feel;
  private final CountingWords words;
  private final int pickupBeats;
  private final int bars;
  private final List<Stroke> strokes;
  private final BarGrid[] grids;
  private int[] starts = {};

  private SectionView(
      Meters meters,
      Feel feel,
      CountingWords words,
      int pickupBeats,
      int bars,
      List<Stroke> strokes,
      BarGrid[] grids) {
    this.meters = meters;
    this.feel = feel;
    this.words = words;
    this.pickupBeats = pickupBeats;
    this.bars = bars;
    this.strokes = strokes;
    this.grids = grids;
  }

  /**
   * A section of strokes.
   *
   * @param words what is counted with besides our own syllables
   * @param pickupBeats how many beats bar 0 has; 0 where there is none
   * @param bars whole bars
   * @param strokes in the order of {@link Stroke#ORDER}; not changed afterwards
   */
  static SectionView of(
      Meters meters,
      Feel feel,
      CountingWords words,
      int pickupBeats,
      int bars,
      List<Stroke> strokes) {
    BarGrid[] grids = new BarGrid[meters.size()];
    for (int i = 0; i < grids.length; i++) {
      grids[i] = BarGrid.of(meters.cycle().get(i));
    }
    return new SectionView(meters, feel, words, pickupBeats, bars, strokes, grids);
  }

  /** A finished section's strokes as its source names them. */
  public static SectionView of(Groove groove) {
    return of(
        groove.setting().meters(),
        groove.setting().feel(),
        groove.setting().wording().read(),
        pickupBeats(groove),
        groove.bars(),
        groove.written());
  }

  private static int pickupBeats(Groove groove) {
    int beats = 0;
    Time left = groove.pickup();
    for (int beat = groove.meter().beatCount() - 1; left.sign() > 0 && beat > 0; beat--) {
      left = left.minus(groove.meter().beat(beat));
      beats++;
    }
    return beats;
  }

  /** The same section, its places read with other words. */
  SectionView counted(CountingWords others) {
    return new SectionView(meters, feel, others, pickupBeats, bars, strokes, grids);
  }

  /** The same section with other strokes. */
  SectionView with(List<Stroke> others) {
    return others == strokes
        ? this
        : new SectionView(meters, feel, words, pickupBeats, bars, others, grids);
  }

  /** The same section with another number of bars. */
  SectionView with(int otherBars, List<Stroke> others) {
    return new SectionView(meters, feel, words, pickupBeats, otherBars, others, grids);
  }

  /** All strokes in order. */
  public List<Stroke> strokes() {
    return strokes;
  }

  /** All strokes of a bar, in order. */
  public List<Stroke> inBar(int bar) {
    if (bar < 0 || bar > bars) {
      return List.of();
    }
    if (starts.length == 0) {
      starts = starts();
    }
    return strokes.subList(starts[bar], starts[bar + 1]);
  }

  private int[] starts() {
    int[] found = new int[bars + 2];
    int at = 0;
    for (int bar = 0; bar <= bars; bar++) {
      found[bar] = at;
      while (at < strokes.size() && strokes.get(at).bar() == bar) {
        at++;
      }
    }
    found[bars + 1] = at;
    return found;
  }

  /** The meters of its bars. */
  public Meters meters() {
    return meters;
  }

  Feel feel() {
    return feel;
  }

  /** What its places are counted with besides our own syllables. */
  public CountingWords words() {
    return words;
  }

  /** The beats of a bar. */
  BarGrid grid(int bar) {
    return grids[bar <= 1 ? 0 : (bar - 1) % grids.length];
  }

  /** Number of whole bars. */
  public int bars() {
    return bars;
  }

  int pickupBeats() {
    return pickupBeats;
  }

  /** 0 with a pickup, else 1. */
  public int firstBar() {
    return pickupBeats > 0 ? 0 : 1;
  }

  /** The first 0-based beat that exists in a bar: a pickup has only its last beats. */
  int firstBeat(int bar) {
    return bar == 0 ? grid(0).beats() - pickupBeats : 0;
  }
}
