package tabor.emit.musicxml;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import tabor.groove.Groove;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Score;
import tabor.notation.Voice;

/**
 * The lines of lyrics that carry stickings and counts, numbered from 1 without gaps: the hands'
 * sticking, the feet's, the counts, each only where the document has some.
 */
final class LyricLines {
  private enum Line {
    HANDS,
    FEET,
    COUNTS
  }

  private final Map<Line, Integer> numbers = new EnumMap<>(Line.class);

  /** The lines that these sections need. */
  LyricLines(Collection<Score> scores) {
    for (Score score : scores) {
      Groove groove = score.groove();
      for (Bar bar : score.bars()) {
        for (Voice voice : Voice.values()) {
          for (Event event : bar.events(voice)) {
            event.chord().ifPresent(chord -> add(groove, voice, chord));
          }
        }
      }
    }
    int number = 0;
    for (Map.Entry<Line, Integer> line : numbers.entrySet()) {
      line.setValue(++number);
    }
  }

  private void add(Groove groove, Voice voice, Event.Chord chord) {
    if (groove.setting().showSticking() && !chord.sticking().isEmpty()) {
      numbers.put(voice == Voice.HANDS ? Line.HANDS : Line.FEET, 0);
    }
    if (groove.setting().showCounts() && !chord.count().isEmpty()) {
      numbers.put(Line.COUNTS, 0);
    }
  }

  /** The number of the line of a voice's sticking. */
  int sticking(Voice voice) {
    return numbers.getOrDefault(voice == Voice.HANDS ? Line.HANDS : Line.FEET, 1);
  }

  /** The number of the line of counts. */
  int counts() {
    return numbers.getOrDefault(Line.COUNTS, 1);
  }
}
