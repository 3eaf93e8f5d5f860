package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.Body;
import tabor.emit.musicxml.ScoreFile.Grace;
import tabor.emit.musicxml.ScoreFile.Lyric;
import tabor.emit.musicxml.ScoreFile.Notations;
import tabor.emit.musicxml.ScoreFile.Ratio;
import tabor.emit.musicxml.ScoreFile.RestBody;
import tabor.emit.musicxml.ScoreFile.Shape;
import tabor.emit.musicxml.ScoreFile.Technical;
import tabor.emit.musicxml.ScoreFile.TupletMark;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.TupletPlace;
import tabor.notation.Voice;
import tabor.notation.Written;
import tabor.perform.Volume;
import tabor.rhythm.Time;

/** Makes the notes of one event. */
final class NoteMaker {
  private final Groove groove;
  private final Snap snap;
  private final int bar;
  private final RollTies ties;
  private final LyricLines lines;
  private final Instruments instruments;
  private final Volume volume;
  private final Voice voice;
  private final BigInteger divisions;

  NoteMaker(
      Groove groove,
      int bar,
      RollTies ties,
      Instruments instruments,
      LyricLines lines,
      Volume volume,
      Voice voice,
      BigInteger divisions) {
    this.groove = groove;
    this.snap = Snap.of(groove);
    this.bar = bar;
    this.ties = ties;
    this.lines = lines;
    this.instruments = instruments;
    this.volume = volume;
    this.voice = voice;
    this.divisions = divisions;
  }

  List<ScoreFile.Note> notes(Event event) {
    return event instanceof Event.Chord chord
        ? chord(chord)
        : List.of(rest((Event.Rest) event, voice, divisions));
  }

  /** A rest that fills a bar of silence. */
  static ScoreFile.Note wholeBar(Event.Rest rest, BigInteger divisions) {
    return rest(rest, Voice.HANDS, divisions);
  }

  private static ScoreFile.Note rest(Event.Rest rest, Voice voice, BigInteger divisions) {
    boolean middle = rest.show() == Event.Rest.Show.SHARED;
    boolean shown = !rest.isHidden();
    return new ScoreFile.Note(
        null,
        false,
        null,
        new RestBody(rest.wholeBar(), middle, shown),
        Divisions.of(rest.length(), divisions),
        voice.number(),
        rest.wholeBar() ? null : shape(rest),
        null,
        List.of(),
        new Notations(false, false, tuplets(rest), 0, false, false, List.of(), false),
        List.of());
  }

  private List<ScoreFile.Note> chord(Event.Chord chord) {
    List<ScoreFile.Note> made = new ArrayList<>();
    for (Note note : chord.notes()) {
      small(note, chord, made);
    }
    boolean first = true;
    for (Note note : chord.notes()) {
      made.add(
          new ScoreFile.Note(
              null,
              !first,
              body(note, level(note), note.ghost()),
              null,
              Divisions.of(chord.length(), divisions),
              voice.number(),
              shape(chord),
              stem(chord.written()),
              first ? chord.beams().stream().map(MusicXmlNames::beam).toList() : List.of(),
              notations(
                  note,
                  note.tieIn() && !ties.isStruckAgain(bar, chord, note),
                  ties.isTiedOn(bar, chord, note),
                  tremolo(note, chord),
                  first ? tuplets(chord) : List.of()),
              first ? lyrics(chord) : List.of()));
      first = false;
    }
    return made;
  }

  private static Level level(Note note) {
    return note.strokes().stream().map(Stroke::level).max(Level::compareTo).orElse(Level.PLAIN);
  }

  private @Nullable String stem(Written written) {
    if (!written.type().hasStem()) {
      return null;
    }
    return voice == Voice.HANDS ? "up" : "down";
  }

  private Body body(Note note, Level level, boolean parentheses) {
    Time place = groove.position(note.strokes().get(0));
    Time percent = Time.of(volume.of(level, place) * 100L, 90);
    return new Body(
        note.place().step(),
        note.place().octave(),
        instruments.id(note.surface()),
        note.head().word(),
        parentheses,
        percent.decimal());
  }

  /** Flam, drag and ruff. */
  private void small(Note note, Event.Chord chord, List<ScoreFile.Note> into) {
    List<tabor.groove.Grace> graces =
        note.graceNotes() == 0 ? List.of() : tabor.groove.Grace.of(ornamented(note));
    boolean said = groove.setting().showSticking() && !chord.sticking().isEmpty();
    int count = graces.size();
    for (int i = 0; i < count; i++) {
      String letter = graces.get(i).limb().letter();
      String beam = i == 0 ? "begin" : i == count - 1 ? "end" : "continue";
      into.add(
          new ScoreFile.Note(
              new Grace(),
              false,
              body(note, Level.GHOST, false),
              null,
              null,
              voice.number(),
              new Shape(count == 1 ? "eighth" : "16th", 0, null),
              voice == Voice.HANDS ? "up" : "down",
              count == 1 ? List.of() : List.of(beam, beam),
              Notations.NONE,
              said ? List.of(sticking(letter.toLowerCase(Locale.ROOT))) : List.of()));
    }
  }

  /** The stroke of a note that has the most grace notes. */
  private static Stroke ornamented(Note note) {
    return note.strokes().stream()
        .max(Comparator.comparingInt(stroke -> stroke.ornaments().graceNotes()))
        .orElseThrow();
  }

  /**
   * The slashes of a measured roll, where with the note's flags they say the number of strokes that
   * are played; else 0.
   */
  private int tremolo(Note note, Event.Chord chord) {
    if (note.slashes() == 0) {
      return 0;
    }
    Time value = Time.of(1, 4L << (chord.written().type().flags() + note.slashes()));
    for (Stroke stroke : note.strokes()) {
      Optional<Roll> roll = Roll.of(groove, snap, stroke);
      if (roll.isPresent() && !roll.get().step().equals(value.times(chord.ratio()))) {
        return 0;
      }
    }
    return note.slashes();
  }

  private List<Lyric> lyrics(Event.Chord chord) {
    List<Lyric> lyrics = new ArrayList<>();
    if (groove.setting().showSticking() && !chord.sticking().isEmpty()) {
      lyrics.add(sticking(chord.sticking()));
    }
    if (groove.setting().showCounts() && !chord.count().isEmpty()) {
      lyrics.add(new Lyric(lines.counts(), "count", true, chord.count()));
    }
    return lyrics;
  }

  private Lyric sticking(String text) {
    return new Lyric(lines.sticking(voice), "sticking", false, text);
  }

  private static Shape shape(Event event) {
    List<TupletPlace> places = event.tuplets();
    Ratio ratio = null;
    if (!places.isEmpty()) {
      BigInteger actual = BigInteger.ONE;
      BigInteger normal = BigInteger.ONE;
      for (TupletPlace place : places) {
        actual = actual.multiply(BigInteger.valueOf(place.tuplet().actual()));
        normal = normal.multiply(BigInteger.valueOf(place.tuplet().normal()));
      }
      Written.Type unit = places.get(places.size() - 1).tuplet().unit();
      ratio = new Ratio(actual, normal, MusicXmlNames.type(unit));
    }
    return new Shape(MusicXmlNames.type(event.written().type()), event.written().dots(), ratio);
  }

  private static List<TupletMark> tuplets(Event event) {
    List<TupletMark> marks = new ArrayList<>();
    for (int i = 0; i < event.tuplets().size(); i++) {
      TupletPlace place = event.tuplets().get(i);
      if (place.first()) {
        marks.add(mark(place, true, i + 1));
      }
    }
    for (int i = event.tuplets().size() - 1; i >= 0; i--) {
      TupletPlace place = event.tuplets().get(i);
      if (place.last()) {
        marks.add(mark(place, false, i + 1));
      }
    }
    return marks;
  }

  private static TupletMark mark(TupletPlace place, boolean start, int number) {
    return new TupletMark(
        start,
        number,
        place.tuplet().bracket(),
        place.tuplet().actual(),
        place.tuplet().normal(),
        MusicXmlNames.type(place.tuplet().unit()));
  }

  /** What a roll is called whose strokes no slashes can say. */
  private static String rolled(Note note) {
    for (Stroke stroke : note.strokes()) {
      Ornament ornament = Roll.measured(stroke.ornaments());
      if (ornament != null) {
        return ornament.words();
      }
    }
    return "roll";
  }

  private static Notations notations(
      Note note, boolean tieIn, boolean tieOut, int tremolo, List<TupletMark> tuplets) {
    List<Technical> technical = new ArrayList<>();
    switch (note.hihat()) {
      case OPEN -> technical.add(new Technical("open", "pictOpen", ""));
      case HALF -> technical.add(new Technical("half-muted", "pictHalfOpen2", ""));
      case CLOSED -> technical.add(new Technical("stopped", "", ""));
      case NONE -> {}
    }
    if (note.choke()) {
      technical.add(new Technical("other-technical", "pictChokeCymbal", "choke"));
    }
    if (note.rimshot()) {
      technical.add(new Technical("other-technical", "pictRimShotOnStem", "rimshot"));
    }
    if (note.slashes() > tremolo) {
      technical.add(new Technical("other-technical", "", rolled(note)));
    }
    return new Notations(
        tieIn, tieOut, tuplets, Math.min(8, tremolo), note.buzz(), note.accent(), technical, false);
  }
}
