package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.source.Spot;

/**
 * A page of small variations on one section, each numbered.
 *
 * @param name unique among the file's sections; variation 3 of {@code kicks} is {@code kicks-3}
 * @param title as written; null if it has none
 * @param heading where it stands in the source
 * @param base the section that it varies, as it was then
 * @param variations in order, 1 to 64
 * @param prose the texts in the order written
 * @param page what it says for the printed page; its variations say nothing of their own
 */
public record Sheet(
    String name,
    @Nullable String title,
    Spot heading,
    Groove base,
    List<Variation> variations,
    List<String> prose,
    PageNotes page)
    implements Section {
  /** Most variations of a sheet, counted before equal ones are left out. */
  public static final int MOST = 64;

  /**
   * One variation.
   *
   * @param number from 1
   * @param caption what its line says that it shows; null for nothing
   * @param groove its strokes, as of a step from the sheet's base; its name is the sheet's with the
   *     number, its title the caption or, without one, what the sheet is called with the number
   * @param coincided numbers, as counted before equal ones were left out, of later variations that
   *     came to the same strokes
   */
  public record Variation(
      int number, @Nullable String caption, Groove groove, List<Integer> coincided) {
    /** Copies the list. */
    public Variation {
      coincided = List.copyOf(coincided);
    }
  }

  /** Copies the lists. */
  public Sheet {
    variations = List.copyOf(variations);
    prose = List.copyOf(prose);
  }

  /** The variations as sections, in order. */
  public List<Groove> grooves() {
    return Lists.map(variations, Variation::groove);
  }

  /**
   * The whole sheet as it is played: after so many bars of count-in, 0 for none, each variation so
   * often before the next.
   */
  public Chart inTurn(int countIn, int times) {
    List<Chart.Item> items = new ArrayList<>();
    Groove first = variations.get(0).groove();
    if (countIn > 0) {
      items.add(new Chart.CountIn(countIn, first, first.setting().tempo()));
    }
    for (Groove groove : grooves()) {
      Groove.Setting setting = groove.setting();
      Chart.Turn turn = new Chart.Turn(groove, setting.tempo(), setting.feel());
      items.add(new Chart.Play(List.of(turn), times));
    }
    return new Chart(name, title, heading, items, prose, page);
  }

  /**
   * Sections with the variations in place of their sheets, those that {@code chosen} picks: a sheet
   * with all of its variations, or variations one by one.
   */
  public static List<Section> apart(List<Section> sections, Predicate<Section> chosen) {
    List<Section> found = new ArrayList<>();
    for (Section section : sections) {
      if (section instanceof Sheet sheet) {
        boolean all = chosen.test(sheet);
        found.addAll(Lists.filter(sheet.grooves(), one -> all || chosen.test(one)));
      } else if (chosen.test(section)) {
        found.add(section);
      }
    }
    return found;
  }
}
