package tabor.rhythm;

import java.util.List;

/**
 * A place of the bar as it is counted aloud.
 *
 * @param beat 1-based beat number
 * @param syllable what follows the number
 * @param places the {@code .N} parts in order, 1-based; without a syllable the first is a slot of
 *     the beat
 * @param division the {@code /D} part: the division to read it in; 0 where none is named
 */
public record Count(int beat, Syllable syllable, List<Integer> places, int division) {
  /** What is said after the number of a beat. */
  public enum Syllable {
    /** Nothing: the beat itself. */
    NONE(""),
    E("e"),
    AND("&"),
    A("a");

    private final String sign;

    Syllable(String sign) {
      this.sign = sign;
    }

    /** As written, {@code &} for the half beat. */
    public String sign() {
      return sign;
    }
  }

  /** Copies the list. */
  public Count {
    places = List.copyOf(places);
  }

  /** A plain count without parts. */
  public static Count of(int beat, Syllable syllable) {
    return new Count(beat, syllable, List.of(), 0);
  }

  /** With the syllable's sign: an enum's own differs from run to run. */
  @Override
  public int hashCode() {
    return ((beat * 31 + syllable.sign().hashCode()) * 31 + places.hashCode()) * 31 + division;
  }

  /** {@code 3&.2/4}. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder().append(beat).append(syllable.sign());
    for (int place : places) {
      text.append('.').append(place);
    }
    return division == 0 ? text.toString() : text.append('/').append(division).toString();
  }
}
