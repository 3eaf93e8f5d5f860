package tabor.groove;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Spot;

/**
 * A groove or a step, finished: every stroke has its limb.
 *
 * @param name unique among the file's sections
 * @param title as written; null if it has none
 * @param heading where it stands in the source
 * @param base the section that a step was made from, as it was then; null for a groove
 * @param setting meter, kit, tempo and the like
 * @param bars number of whole bars, 1 to 512; the pickup is not one
 * @param pickup length of bar 0 in whole notes, zero without one
 * @param strokes what is heard and shown, in the order of {@link Stroke#ORDER}: stand-ins applied,
 *     a left-handed player mirrored
 * @param written the strokes as the source names them, in the same order: what steps start from
 * @param plays what each limb strikes where nothing else is said, as the source names it
 * @param marks dynamics in order of time
 * @param hairpins in order of time
 * @param prose the texts in the order written
 * @param repeats the bars that the source writes as a repeat of the bar before and that still are
 * @param page what it says for the printed page
 */
public record Groove(
    String name,
    @Nullable String title,
    Spot heading,
    @Nullable Groove base,
    Setting setting,
    int bars,
    Time pickup,
    List<Stroke> strokes,
    List<Stroke> written,
    Map<Limb, Surface> plays,
    List<Loudness.Mark> marks,
    List<Loudness.Hairpin> hairpins,
    List<String> prose,
    Set<Integer> repeats,
    PageNotes page)
    implements Section {
  /** Without the section that it starts from, which would go down a chain of steps to its first. */
  @Override
  public int hashCode() {
    return Objects.hash(name, title, bars, strokes.size());
  }

  /**
   * What a section is played with and how.
   *
   * @param meters time signature and beats of each bar
   * @param kit the kit it is played on
   * @param tempo its own tempo
   * @param feel where off-beats sound
   * @param levels velocities
   * @param showCounts counts are printed above the notes
   * @param showSticking the sticking is printed below
   * @param showChanges what a step changed is marked
   * @param wording what it is counted and printed with
   */
  public record Setting(
      Meters meters,
      Kit kit,
      Tempo tempo,
      Feel feel,
      Levels levels,
      boolean showCounts,
      boolean showSticking,
      boolean showChanges,
      SectionWords wording) {
    /** Time signature and beats of bar 1. */
    public Meter meter() {
      return meters.first();
    }
  }

  /** Copies the lists and checks the ranges. */
  public Groove {
    strokes = List.copyOf(strokes);
    written = List.copyOf(written);
    plays = Map.copyOf(plays);
    marks = List.copyOf(marks);
    hairpins = List.copyOf(hairpins);
    prose = List.copyOf(prose);
    repeats = Set.copyOf(repeats);
    if (bars < 1) {
      throw new IllegalArgumentException("bars " + bars);
    }
  }

  /** The same by another name and title. */
  public Groove named(String other, @Nullable String called) {
    return new Groove(
        other, called, heading, base, setting, bars, pickup, strokes, written, plays, marks,
        hairpins, prose, repeats, page);
  }

  /** The same with something else said for the printed page. */
  public Groove on(PageNotes other) {
    return new Groove(
        name, title, heading, base, setting, bars, pickup, strokes, written, plays, marks, hairpins,
        prose, repeats, other);
  }

  /** The same with other strokes, and bars that repeat the one before. */
  public Groove playing(List<Stroke> heard, List<Stroke> named, Set<Integer> again) {
    return new Groove(
        name, title, heading, base, setting, bars, pickup, heard, named, plays, marks, hairpins,
        prose, again, page);
  }

  /** The same as a step of another section; null for none. */
  public Groove from(@Nullable Groove other) {
    return new Groove(
        name, title, heading, other, setting, bars, pickup, strokes, written, plays, marks,
        hairpins, prose, repeats, page);
  }

  /** True for a step. */
  public boolean isStep() {
    return base != null;
  }

  /** True if it has nothing but its pickup: a short fill. */
  public boolean isPickupOnly() {
    return pickup.sign() > 0
        && bars == 1
        && Lists.all(strokes, stroke -> stroke.bar() == 0)
        && Lists.all(written, stroke -> stroke.bar() == 0);
  }

  /** Time signature and beats of bar 1. */
  public Meter meter() {
    return setting.meter();
  }

  /** Time signature and beats of each bar. */
  public Meters meters() {
    return setting.meters();
  }

  /** Time signature and beats of a bar; 0 is the pickup. */
  public Meter meter(int bar) {
    return setting.meters().of(bar);
  }

  /** The number of the first bar: 0 with a pickup, else 1. */
  public int firstBar() {
    return pickup.sign() > 0 ? 0 : 1;
  }

  /**
   * Distance of a place from the first sound of the section, in whole notes. The pickup counts with
   * its own length; {@code at} in it is measured from where its barline would be.
   */
  public Time position(int bar, Time at) {
    return pickup.plus(setting.meters().start(bar)).plus(at);
  }

  /** Distance of a stroke from the start of the section, in whole notes. */
  public Time position(Stroke stroke) {
    return position(stroke.bar(), stroke.at());
  }

  /** Length of the whole section in whole notes, the pickup included. */
  public Time length() {
    return pickup.plus(setting.meters().length(bars));
  }
}
