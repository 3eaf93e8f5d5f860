package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.TupletPlace;
import tabor.notation.Voice;
import tabor.notation.Written;
import tabor.perform.Volume;
import tabor.rhythm.Time;

/** Makes the notes of one event. */
final class NoteMaker implements Event.Cases<List<ScoreFile.Note>> {
  private final Groove groove;
  private final Instruments instruments;
  private final Volume volume;
  private final Voice voice;
  private final BigInteger divisions;

  NoteMaker(
      Groove groove, Instruments instruments, Volume volume, Voice voice, BigInteger divisions) {
    this.groove = groove;
    this.instruments = instruments;
    this.volume = volume;
    this.voice = voice;
    this.divisions = divisions;
  }

  @Override
  public List<ScoreFile.Note> rest(Event.Rest rest) {
    return List.of(rest(rest, voice, divisions));
  }

  /** A rest that fills a bar of silence. */
  static ScoreFile.Note wholeBar(Event.Rest rest, BigInteger divisions) {
    return rest(rest, Voice.HANDS, divisions);
  }

  private static ScoreFile.Note rest(Event.Rest rest, Voice voice, BigInteger divisions) {
    boolean middle = rest.show() == Event.Rest.Show.SHARED;
    boolean shown = rest.show() != Event.Rest.Show.HIDDEN;
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
        new Notations(false, false, tuplets(rest), 0, false, false, List.of()),
        List.of());
  }

  @Override
  public List<ScoreFile.Note> chord(Event.Chord chord) {
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
              notations(note, first ? tuplets(chord) : List.of()),
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

  /** Flam, drag and ruff: by the other limb, the three of a ruff alternating. */
  private void small(Note note, Event.Chord chord, List<ScoreFile.Note> into) {
    int count = note.smallStrokes();
    Limb main = note.strokes().get(0).limb();
    for (int i = 0; i < count; i++) {
      boolean other = count < 3 || i != 1;
      String letter = (other ? main.other() : main).letter();
      String beam = i == 0 ? "begin" : i == count - 1 ? "end" : "continue";
      boolean said = groove.setting().showSticking() && !chord.sticking().isEmpty();
      into.add(
          new ScoreFile.Note(
              new Grace(count == 1),
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

  private List<Lyric> lyrics(Event.Chord chord) {
    List<Lyric> lyrics = new ArrayList<>();
    if (groove.setting().showSticking() && !chord.sticking().isEmpty()) {
      lyrics.add(sticking(chord.sticking()));
    }
    if (groove.setting().showCounts() && !chord.count().isEmpty()) {
      lyrics.add(new Lyric(3, "count", true, chord.count()));
    }
    return lyrics;
  }

  /** The hands' sticking is line 1, the feet's line 2. */
  private Lyric sticking(String text) {
    return new Lyric(voice.number(), "sticking", false, text);
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

  private static Notations notations(Note note, List<TupletMark> tuplets) {
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
    return new Notations(
        note.tieIn(),
        note.tieOut(),
        tuplets,
        Math.min(8, note.slashes()),
        note.buzz(),
        note.accent(),
        technical);
  }
}
