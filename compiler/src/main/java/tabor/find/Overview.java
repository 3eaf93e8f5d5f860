package tabor.find;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.lists.Lists;

/**
 * A term: lessons in the order in which they are taught, and what is new when.
 *
 * @param lessons in that order
 * @param firsts every technique once, in the order in which they first come
 */
public record Overview(List<LessonSummary> lessons, List<First> firsts) {
  /** Copies the lists. */
  public Overview {
    lessons = List.copyOf(lessons);
    firsts = List.copyOf(firsts);
  }

  /**
   * Where a technique comes for the first time.
   *
   * @param lesson its index among the lessons, from 0
   * @param section caption of the section
   */
  public record First(Technique technique, int lesson, String section) {}

  /** The overview of lessons in the order given. */
  public static Overview of(List<LessonSummary> lessons) {
    Set<Technique> seen = new HashSet<>();
    List<First> firsts = new ArrayList<>();
    for (int i = 0; i < lessons.size(); i++) {
      for (Map.Entry<Technique, String> one : lessons.get(i).techniques().entrySet()) {
        if (seen.add(one.getKey())) {
          firsts.add(new First(one.getKey(), i, one.getValue()));
        }
      }
    }
    return new Overview(lessons, firsts);
  }

  /** What is new in a lesson. */
  public List<First> newIn(int lesson) {
    return Lists.filter(firsts, first -> first.lesson() == lesson);
  }
}
