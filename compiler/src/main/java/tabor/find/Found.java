package tabor.find;

import java.util.List;
import tabor.body.Difficulty;
import tabor.groove.Groove;

/**
 * A section that has what was looked for.
 *
 * @param file as the caller calls it
 * @param lesson title of the lesson
 * @param number where it stands among the grooves and steps of its lesson, from 1
 * @param groove the section
 * @param difficulty what it asks of the body
 * @param rudiments that its hands play, in order of time, each once
 * @param likeness how far it is from what it was compared with; {@link Likeness#NONE} if nothing
 *     was
 */
public record Found(
    String file,
    String lesson,
    int number,
    Groove groove,
    Difficulty difficulty,
    List<String> rudiments,
    Likeness likeness) {
  /** Copies the list. */
  public Found {
    rudiments = List.copyOf(rudiments);
  }

  /** The same with its section in another form. */
  public Found with(Groove other) {
    return new Found(file, lesson, number, other, difficulty, rudiments, likeness);
  }
}
