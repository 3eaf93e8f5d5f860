package tabor.notation;

import java.util.ArrayList;
import java.util.List;
import tabor.notation.Event.Chord;
import tabor.notation.Event.Rest;

/**
 * A score as a line of text for each voice of each bar. Values: {@code w h q 8 16 32 …}, a dot
 * after them; rests begin with {@code r}, {@code R} is an empty bar, {@code +} after a rest that is
 * shared, {@code ?} after a hidden one. A tuplet: {@code 3:2[ … ]}, {@code *} before it if it has a
 * bracket. Beams after a value: {@code ( - ) > <} for begin, continue, end and hooks. {@code ~}
 * before a note that goes on from before.
 */
final class ScoreText {
  private ScoreText() {}

  static String of(Score score) {
    StringBuilder text = new StringBuilder();
    for (Bar bar : score.bars()) {
      text.append(bar.number()).append(" hands ").append(events(bar.hands())).append('\n');
      text.append(bar.number()).append(" feet  ").append(events(bar.feet())).append('\n');
    }
    return text.toString();
  }

  static String events(List<Event> events) {
    List<String> words = new ArrayList<>();
    for (Event event : events) {
      StringBuilder word = new StringBuilder();
      for (TupletPlace place : event.tuplets()) {
        if (place.first()) {
          Tuplet tuplet = place.tuplet();
          word.append(tuplet.bracket() ? "*" : "");
          word.append(tuplet.actual()).append(':').append(tuplet.normal()).append("[ ");
        }
      }
      word.append(event instanceof Chord chord ? text(chord) : text((Rest) event));
      for (TupletPlace place : event.tuplets()) {
        word.append(place.last() ? " ]" : "");
      }
      words.add(word.toString());
    }
    return String.join(" ", words);
  }

  private static String value(Written written) {
    String type =
        switch (written.type()) {
          case BREVE -> "breve";
          case WHOLE -> "w";
          case HALF -> "h";
          case QUARTER -> "q";
          default -> Long.toString(written.type().length().den());
        };
    return type + (written.dots() == 1 ? "." : "");
  }

  private static String text(Chord chord) {
    StringBuilder text = new StringBuilder();
    text.append(chord.notes().stream().anyMatch(Note::tieIn) ? "~" : "");
    text.append(value(chord.written()));
    for (Beam beam : chord.beams()) {
      text.append("(-)><".charAt(beam.ordinal()));
    }
    return text.toString();
  }

  private static String text(Rest rest) {
    String shown =
        switch (rest.show()) {
          case OWN -> "";
          case SHARED -> "+";
          case HIDDEN -> "?";
        };
    return (rest.wholeBar() ? "R" : "r" + value(rest.written())) + shown;
  }
}
