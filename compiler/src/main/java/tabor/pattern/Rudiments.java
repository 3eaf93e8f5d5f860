package tabor.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tabor.lists.Lists;

/**
 * The 40 international drum rudiments.
 *
 * <p>Names, order and families: the numbered list of the Percussive Arts Society. Stickings and
 * accents: cross-checked against two worksheets that compare a typed set with the Society's chart
 * (1984) and single-page notations (2026); the chart itself is a picture and was not read. The
 * accents of the double and triple paradiddle differ between prints (first note only, here), as do
 * the note values of the short rolls, which a pattern does not have.
 */
public final class Rudiments {
  private Rudiments() {}

  /**
   * A rudiment.
   *
   * @param number 1 to 40
   * @param name lower case with hyphens
   * @param lead one cycle, right lead
   * @param alternates true if the next cycle starts with the other hand
   */
  public record Rudiment(int number, String name, List<PatternPlace> lead, boolean alternates) {
    /** Copies the list. */
    public Rudiment {
      lead = List.copyOf(lead);
    }

    /** One cycle with the hands exchanged. */
    public List<PatternPlace> leftLead() {
      return Lists.map(lead, PatternPlace::mirrored);
    }

    /** What is poured into a part: both leads, one after the other, if it changes hands. */
    public List<PatternPlace> places() {
      if (!alternates) {
        return lead;
      }
      List<PatternPlace> both = new ArrayList<>(lead);
      both.addAll(leftLead());
      return both;
    }
  }

  // name | * if it alternates | places: capital = stroke, small letters before it = grace notes,
  // a doubled capital = two strokes in the place, z = pressed, > = accent
  private static final String TABLE =
      """
      single-stroke-roll          |   | R L R L
      single-stroke-four          |   | R L R L
      single-stroke-seven         | * | R L R L R L R
      multiple-bounce-roll        |   | Rz Lz Rz Lz
      triple-stroke-roll          |   | R R R L L L
      double-stroke-open-roll     |   | RR LL RR LL
      five-stroke-roll            | * | RR LL R>
      six-stroke-roll             |   | R> LL RR L>
      seven-stroke-roll           |   | RR LL RR L>
      nine-stroke-roll            | * | RR LL RR LL R>
      ten-stroke-roll             |   | RR LL RR LL R> L>
      eleven-stroke-roll          |   | RR LL RR LL RR L>
      thirteen-stroke-roll        | * | RR LL RR LL RR LL R>
      fifteen-stroke-roll         |   | RR LL RR LL RR LL RR L>
      seventeen-stroke-roll       | * | RR LL RR LL RR LL RR LL R>
      single-paradiddle           | * | R> L R R
      double-paradiddle           | * | R> L R L R R
      triple-paradiddle           | * | R> L R L R L R R
      single-paradiddle-diddle    |   | R> L R R L L
      flam                        | * | lR
      flam-accent                 | * | lR> L R
      flam-tap                    | * | lR> R
      flamacue                    | * | lR L> R L lR
      flam-paradiddle             | * | lR> L R R
      single-flammed-mill         | * | lR> R L R
      flam-paradiddle-diddle      | * | lR> L R R L L
      pataflafla                  |   | lR> L R rL>
      swiss-army-triplet          |   | lR> R L
      inverted-flam-tap           |   | lR> L rL> R
      flam-drag                   | * | lR> LL R
      drag                        | * | llR
      single-drag-tap             | * | llR L>
      double-drag-tap             | * | llR llR L>
      lesson-25                   |   | llR L R>
      single-dragadiddle          | * | RR> L R R
      drag-paradiddle-1           | * | R> llR L R R
      drag-paradiddle-2           | * | R> llR llR L R R
      single-ratamacue            | * | llR L R L>
      double-ratamacue            | * | llR llR L R L>
      triple-ratamacue            | * | llR llR llR L R L>
      """;

  private static final Map<String, Rudiment> ALL = read();

  /** All of them by name, in their order. */
  public static Map<String, Rudiment> all() {
    return ALL;
  }

  /**
   * The rudiment of this name; {@code paradiddle} and {@code paradiddle-diddle} are the single
   * ones.
   */
  public static Optional<Rudiment> named(String name) {
    Rudiment found = ALL.get(name);
    if (found == null && (name.equals("paradiddle") || name.equals("paradiddle-diddle"))) {
      found = ALL.get("single-" + name);
    }
    return Optional.ofNullable(found);
  }

  private static Map<String, Rudiment> read() {
    Map<String, Rudiment> all = new LinkedHashMap<>();
    int number = 0;
    for (String row : TABLE.strip().split("\n", -1)) {
      int first = row.indexOf('|');
      int second = row.indexOf('|', first + 1);
      String name = row.substring(0, first).strip();
      boolean alternates = row.substring(first, second).indexOf('*') > 0;
      List<PatternPlace> places = new ArrayList<>();
      for (String token : row.substring(second + 1).strip().split(" ", -1)) {
        places.add(place(token));
      }
      all.put(name, new Rudiment(++number, name, places, alternates));
    }
    return java.util.Collections.unmodifiableMap(all);
  }

  /** Reads one place of the table, such as {@code llR>}. */
  static PatternPlace place(String token) {
    int small = 0;
    int strokes = 0;
    char letter = '.';
    for (int i = 0; i < token.length(); i++) {
      char c = token.charAt(i);
      if (c == 'r' || c == 'l') {
        small++;
      } else if (c == 'R' || c == 'L') {
        strokes++;
        letter = String.valueOf(c).toLowerCase(Locale.ROOT).charAt(0);
      }
    }
    return new PatternPlace(
        letter, token.indexOf('>') > 0, small, strokes == 2, token.indexOf('z') > 0);
  }
}
