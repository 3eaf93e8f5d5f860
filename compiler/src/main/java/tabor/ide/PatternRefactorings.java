package tabor.ide;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.ide.Refactorings.Draft;
import tabor.pattern.Rudiments;
import tabor.rhythm.Meter;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** A written part as a pattern that is played. */
final class PatternRefactorings {
  private PatternRefactorings() {}

  /**
   * The part as a pattern that is played: a rudiment where it is one, else a pattern of its own
   * above the section. Only for parts that are divided the same in every beat.
   */
  static List<Draft> of(
      Cursor cursor, Line line, PartStatement.Lane lane, Groove groove, Library library) {
    Optional<NoteValue> value = value(lane, groove);
    if (value.isEmpty() || lane.ostinato()) {
      return List.of();
    }
    List<String> places = places(line, lane);
    List<String> once = period(places);
    String text = String.join("", once);
    String subject = lane.subject().words();
    Compiled compiled = cursor.compiled();
    Span whole = compiled.span(line.spot());
    List<Draft> found = new ArrayList<>();
    for (Rudiments.Rudiment rudiment : Rudiments.all().values()) {
      if (PatternText.of(rudiment.places()).equals(text)) {
        String name = PatternText.spoken(rudiment.name());
        String played = subject + " play " + name + " in " + value.get().word();
        found.add(new Draft("Play " + name, List.of(new TextEdit(whole, played))));
      }
    }
    if (once.size() > 1) {
      String name = freeName(compiled, library);
      Span above = new Span(cursor.start(), cursor.start());
      String end = LineEnds.of(compiled.text());
      found.add(
          new Draft(
              "Make a pattern of this part",
              List.of(
                  new TextEdit(above, "pattern " + name + " : " + text + end + end),
                  new TextEdit(whole, subject + " play " + name + " in " + value.get().word()))));
    }
    return found;
  }

  private static String freeName(Compiled compiled, Library library) {
    String name = "pattern-1";
    for (int i = 2; Definitions.find(compiled, library, NameKind.PATTERN, name).isPresent(); i++) {
      name = "pattern-" + i;
    }
    return name;
  }

  /** The note value of every place, if all have the same. */
  private static Optional<NoteValue> value(PartStatement.Lane lane, Groove groove) {
    Meter meter = groove.meter();
    int slots = -1;
    for (LaneBar bar : lane.bars()) {
      if (bar.repeat() || bar.beats().size() != meter.beatCount()) {
        return Optional.empty();
      }
      for (Beat beat : bar.beats()) {
        int count = slots(beat);
        if (beat.beats() != null || (slots >= 0 && slots != count)) {
          return Optional.empty();
        }
        slots = count;
      }
    }
    if (!meter.isEven() || !groove.setting().meters().hasEqualBars() || slots < 1) {
      return Optional.empty();
    }
    Time length = meter.beat(0).over(slots);
    return Arrays.stream(NoteValue.values())
        .filter(value -> value.length().equals(length))
        .findFirst();
  }

  private static int slots(Beat beat) {
    int count = 0;
    for (Beat.Element element : beat.elements()) {
      count += element instanceof Beat.Ghosts ghosts ? ghosts.elements().size() : 1;
    }
    return count;
  }

  /** The places as written, ghosts each in its own parentheses. */
  private static List<String> places(Line line, PartStatement.Lane lane) {
    List<String> found = new ArrayList<>();
    for (LaneBar bar : lane.bars()) {
      for (Beat beat : bar.beats()) {
        for (Beat.Element element : beat.elements()) {
          if (element instanceof Beat.Ghosts ghosts) {
            for (Beat.Element inside : ghosts.elements()) {
              String text = line.spot(inside.span()).text();
              found.add(inside instanceof Beat.Hit ? "(" + text + ")" : text);
            }
          } else {
            found.add(line.spot(element.span()).text());
          }
        }
      }
    }
    return found;
  }

  /** The shortest run of places that makes the whole when repeated. */
  private static List<String> period(List<String> places) {
    for (int length = 1; length < places.size(); length++) {
      if (places.size() % length == 0) {
        boolean repeats = true;
        for (int i = length; i < places.size() && repeats; i++) {
          repeats = places.get(i).equals(places.get(i - length));
        }
        if (repeats) {
          return places.subList(0, length);
        }
      }
    }
    return places;
  }
}
