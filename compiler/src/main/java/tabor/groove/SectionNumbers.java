package tabor.groove;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What stands before the titles of sections: grooves, steps and sheets are counted from 1 in the
 * order of the lesson, variations within their sheet. Charts have no number.
 *
 * @param byName such as {@code 4}, or {@code 4.2} for the second variation of a sheet
 */
public record SectionNumbers(Map<String, String> byName) {
  /** Copies the map. */
  public SectionNumbers {
    byName = Map.copyOf(byName);
  }

  /** The numbers of sections that stand in this order. */
  static SectionNumbers of(List<Section> sections) {
    Map<String, String> numbers = new HashMap<>();
    int number = 0;
    for (Section section : sections) {
      if (section instanceof Chart) {
        continue;
      }
      number++;
      numbers.put(section.name(), Integer.toString(number));
      if (section instanceof Sheet sheet) {
        int variation = 0;
        for (Groove groove : sheet.grooves()) {
          numbers.putIfAbsent(groove.name(), number + "." + ++variation);
        }
      }
    }
    return new SectionNumbers(numbers);
  }

  /** The number of a section; empty for a chart, and for what is no section of the lesson. */
  public String of(Section section) {
    return byName.getOrDefault(section.name(), "");
  }
}
