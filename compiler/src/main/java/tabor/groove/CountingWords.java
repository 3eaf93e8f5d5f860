package tabor.groove;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * What is counted aloud in place of our own syllables: printed above the notes, and read in places
 * besides ours. Lists and messages keep ours.
 *
 * @param twos what follows the number in a beat in two, one word; empty for ours
 * @param threes what follows the number in a beat in three, two words; empty for ours
 * @param fours what follows the number in a beat in four, three words; empty for ours
 * @param onBeat what is printed in place of the number of a beat; null for the number
 * @param eighthsThrough true if the eighths of a bar in a dotted meter are counted from 1 on
 */
public record CountingWords(
    List<String> twos,
    List<String> threes,
    List<String> fours,
    @Nullable String onBeat,
    boolean eighthsThrough) {
  private static final Time DOTTED_QUARTER = Time.of(3, 8);

  /** Our own syllables. */
  public static final CountingWords OURS =
      new CountingWords(List.of(), List.of(), List.of(), null, false);

  /** Copies the lists and checks how many words they have. */
  public CountingWords {
    twos = List.copyOf(twos);
    threes = List.copyOf(threes);
    fours = List.copyOf(fours);
    if (twos.size() > 1 || threes.size() % 2 != 0 || fours.size() % 3 != 0) {
      throw new IllegalArgumentException("counting words " + twos + threes + fours);
    }
  }

  /**
   * Our own syllables of each division, in the order of its slots: what a word of theirs stands
   * for.
   */
  private static final List<List<Syllable>> MEANT =
      List.of(
          List.of(Syllable.AND),
          List.of(Syllable.AND, Syllable.A),
          List.of(Syllable.E, Syllable.AND, Syllable.A));

  /**
   * What a word stands for.
   *
   * @param division that the word names, 2 to 4; 0 for the beat itself
   * @param syllable of ours in that division
   */
  public record Meaning(int division, Syllable syllable) {}

  /**
   * A word as it is compared: small letters, an accent and its letter as one sign, however they
   * were typed.
   */
  public static String plain(String word) {
    // The tables of signs are read from a file when they are first asked for; most words need none.
    boolean ascii = true;
    for (int i = 0; i < word.length(); i++) {
      ascii &= word.charAt(i) < 0x80;
    }
    String whole = ascii ? word : Normalizer.normalize(word, Normalizer.Form.NFC);
    return whole.toLowerCase(Locale.ROOT);
  }

  /**
   * What a word may stand for, from the coarsest division up; of a word that occurs twice in one
   * division the first. Empty for a word that is not said.
   */
  public List<Meaning> meanings(String word) {
    List<Meaning> found = new ArrayList<>(1);
    if (word.equals(onBeat)) {
      found.add(new Meaning(0, Syllable.NONE));
    }
    for (int division = 2; division <= 4; division++) {
      int at = of(division).indexOf(word);
      if (at >= 0) {
        found.add(new Meaning(division, MEANT.get(division - 2).get(at)));
      }
    }
    return found;
  }

  /** True if the bars of a meter are counted in eighths from their barline on. */
  public boolean goesThrough(Meter meter) {
    return eighthsThrough
        && IntStream.range(0, meter.beatCount())
            .anyMatch(beat -> meter.beat(beat).equals(DOTTED_QUARTER));
  }

  /** All words said, each once. */
  public Set<String> all() {
    Set<String> words = new LinkedHashSet<>();
    if (onBeat != null) {
      words.add(onBeat);
    }
    words.addAll(twos);
    words.addAll(threes);
    words.addAll(fours);
    return words;
  }

  /**
   * What is printed for a syllable in a beat that falls into so many counted parts. Where only one
   * of twos and fours is said, the half of a beat is called alike in both.
   *
   * @param parts 2, 3 or 4
   */
  public String printed(int parts, Syllable syllable) {
    int at = MEANT.get(parts - 2).indexOf(syllable);
    List<String> words = of(parts);
    if (!words.isEmpty()) {
      return words.get(at);
    }
    if (syllable == Syllable.AND && parts != 3) {
      List<String> other = of(6 - parts);
      if (!other.isEmpty()) {
        return parts == 4 ? other.get(0) : other.get(1);
      }
    }
    return syllable.sign();
  }

  /** The words of a division after the number; empty where ours are said. */
  public List<String> of(int division) {
    return switch (division) {
      case 2 -> twos;
      case 3 -> threes;
      case 4 -> fours;
      default -> List.of();
    };
  }

  /** The same with the words of a division, 2 to 4, replaced. */
  public CountingWords with(int division, List<String> words) {
    return new CountingWords(
        division == 2 ? words : twos,
        division == 3 ? words : threes,
        division == 4 ? words : fours,
        onBeat,
        eighthsThrough);
  }

  /** The same with those that a set has replaced. */
  public CountingWords with(Named set) {
    CountingWords own = set.words;
    return new CountingWords(
        own.twos.isEmpty() ? twos : own.twos,
        own.threes.isEmpty() ? threes : own.threes,
        own.fours.isEmpty() ? fours : own.fours,
        own.onBeat == null ? onBeat : own.onBeat,
        own.eighthsThrough || eighthsThrough);
  }

  /** Sets that have a name. Common practice in teaching, no source. */
  @SuppressWarnings("ImmutableEnumChecker") // a record of words and copied lists
  public enum Named {
    ONE_E_AND_A("1-e-&-a", List.of("&"), List.of(), List.of("e", "&", "a"), null, false),
    ONE_TRIP_LET("1-trip-let", List.of(), List.of("trip", "let"), List.of(), null, false),
    ONE_LA_LI("1-la-li", List.of(), List.of("la", "li"), List.of(), null, false),
    /** The number gives way to a syllable. Beats in three from memory. */
    TA_KA_DI_MI(
        "ta-ka-di-mi", List.of("di"), List.of("ki", "da"), List.of("ka", "di", "mi"), "ta", false),
    /** The eighths of a dotted meter from 1 to the end of the bar. */
    EIGHTHS_THROUGH("eighths through", List.of(), List.of(), List.of(), null, true);

    private final String word;
    private final CountingWords words;

    Named(
        String word,
        List<String> twos,
        List<String> threes,
        List<String> fours,
        @Nullable String onBeat,
        boolean through) {
      this.word = word;
      this.words = new CountingWords(twos, threes, fours, onBeat, through);
    }

    /** The words of the set; empty for a division that it leaves to ours. */
    public CountingWords words() {
      return words;
    }

    /** As written after {@code say}. */
    public String word() {
      return word;
    }

    /** The set of this name; empty if there is none. */
    public static Optional<Named> of(String word) {
      for (Named set : values()) {
        if (set.word.equals(word)) {
          return Optional.of(set);
        }
      }
      return Optional.empty();
    }
  }
}
