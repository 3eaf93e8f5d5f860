package tabor.emit.musicxml;

import java.math.BigInteger;
import tabor.emit.musicxml.ScoreFile.Attributes;
import tabor.emit.musicxml.ScoreFile.Backup;
import tabor.emit.musicxml.ScoreFile.Barline;
import tabor.emit.musicxml.ScoreFile.Body;
import tabor.emit.musicxml.ScoreFile.Direction;
import tabor.emit.musicxml.ScoreFile.DirectionKind;
import tabor.emit.musicxml.ScoreFile.Dynamics;
import tabor.emit.musicxml.ScoreFile.Lyric;
import tabor.emit.musicxml.ScoreFile.Metronome;
import tabor.emit.musicxml.ScoreFile.Notations;
import tabor.emit.musicxml.ScoreFile.Note;
import tabor.emit.musicxml.ScoreFile.Ratio;
import tabor.emit.musicxml.ScoreFile.Rehearsal;
import tabor.emit.musicxml.ScoreFile.RestBody;
import tabor.emit.musicxml.ScoreFile.Shape;
import tabor.emit.musicxml.ScoreFile.SoundTempo;
import tabor.emit.musicxml.ScoreFile.Swing;
import tabor.emit.musicxml.ScoreFile.Technical;
import tabor.emit.musicxml.ScoreFile.TimeSignature;
import tabor.emit.musicxml.ScoreFile.TupletMark;
import tabor.emit.musicxml.ScoreFile.Wedge;
import tabor.emit.musicxml.ScoreFile.Words;

/** Writes what stands in a measure. */
record MeasureWriter(XmlBuilder xml) {
  /** How much of the stroke before it a grace note takes, in percent: an approximation. */
  private static final String GRACE_PERCENT = "10";

  void element(ScoreFile.Element element) {
    if (element instanceof Note note) {
      note(note);
    } else if (element instanceof Direction direction) {
      direction(direction);
    } else if (element instanceof SoundTempo tempo) {
      tempo(tempo);
    } else if (element instanceof Backup backup) {
      backup(backup);
    } else if (element instanceof Attributes attributes) {
      attributes(attributes);
    } else if (element instanceof Barline barline) {
      barline(barline);
    } else {
      xml.empty("print", "new-system", "yes");
    }
  }

  private void attributes(Attributes attributes) {
    xml.open("attributes");
    BigInteger divisions = attributes.divisions();
    if (divisions != null) {
      xml.leaf("divisions", divisions.toString());
    }
    TimeSignature time = attributes.time();
    if (time != null) {
      xml.open("time");
      xml.leaf("beats", time.beats());
      xml.leaf("beat-type", Integer.toString(time.beatType()));
      xml.close();
    }
    if (attributes.clef()) {
      xml.open("clef");
      xml.leaf("sign", "percussion");
      xml.close();
    }
    Boolean barRepeat = attributes.barRepeat();
    if (barRepeat != null) {
      xml.open("measure-style");
      if (barRepeat) {
        xml.leaf("measure-repeat", "1", "type", "start");
      } else {
        xml.leaf("measure-repeat", "", "type", "stop");
      }
      xml.close();
    }
    xml.close();
  }

  private void direction(Direction direction) {
    xml.open("direction", "placement", direction.above() ? "above" : "below");
    xml.open("direction-type");
    DirectionKind kind = direction.kind();
    Runnable sound = () -> {};
    if (kind instanceof Rehearsal rehearsal) {
      xml.leaf("rehearsal", rehearsal.text());
    } else if (kind instanceof Words words) {
      if (words.italic()) {
        xml.leaf("words", words.text(), "font-style", "italic");
      } else {
        xml.leaf("words", words.text());
      }
      Swing swing = words.swing();
      if (swing != null) {
        sound = () -> swing(swing);
      }
    } else if (kind instanceof Metronome metronome) {
      xml.open("metronome");
      xml.leaf("beat-unit", metronome.beatUnit());
      if (metronome.dot()) {
        xml.empty("beat-unit-dot");
      }
      xml.leaf("per-minute", metronome.perMinute());
      xml.close();
      sound = () -> xml.empty("sound", "tempo", metronome.quarters());
    } else if (kind instanceof Dynamics dynamics) {
      xml.open("dynamics");
      xml.empty(dynamics.mark());
      xml.close();
    } else if (kind instanceof Wedge wedge) {
      xml.empty("wedge", "type", wedge.type(), "number", Integer.toString(wedge.number()));
    }
    xml.close();
    if (direction.offset().signum() > 0) {
      xml.leaf("offset", direction.offset().toString());
    }
    sound.run();
    xml.close();
  }

  private void tempo(SoundTempo tempo) {
    if (tempo.offset().signum() > 0) {
      xml.open("sound", "tempo", tempo.quarters());
      xml.leaf("offset", tempo.offset().toString());
      xml.close();
    } else {
      xml.empty("sound", "tempo", tempo.quarters());
    }
  }

  private void swing(Swing swing) {
    xml.open("sound");
    xml.open("swing");
    if (swing.first() == swing.second()) {
      xml.empty("straight");
    } else {
      xml.leaf("first", Long.toString(swing.first()));
      xml.leaf("second", Long.toString(swing.second()));
      xml.leaf("swing-type", swing.type());
    }
    xml.close();
    xml.close();
  }

  private void backup(Backup backup) {
    xml.open("backup");
    xml.leaf("duration", backup.duration().toString());
    xml.close();
  }

  private void barline(Barline barline) {
    xml.open("barline", "location", barline.left() ? "left" : "right");
    String style = barline.style();
    if (style != null) {
      xml.leaf("bar-style", style);
    }
    if (barline.repeatTimes() > 0) {
      if (barline.left()) {
        xml.empty("repeat", "direction", "forward");
      } else {
        String times = Long.toString(barline.repeatTimes());
        xml.empty("repeat", "direction", "backward", "times", times);
      }
    }
    xml.close();
  }

  private void note(Note note) {
    Body body = note.body();
    RestBody rest = note.rest();
    if (body != null) {
      xml.open("note", "dynamics", body.dynamics());
    } else if (rest != null && !rest.shown()) {
      xml.open("note", "print-object", "no");
    } else {
      xml.open("note");
    }
    if (note.grace() != null) {
      xml.empty("grace", "steal-time-previous", GRACE_PERCENT, "slash", "yes");
    }
    if (note.chord()) {
      xml.empty("chord");
    }
    if (body != null) {
      xml.open("unpitched");
      xml.leaf("display-step", String.valueOf(body.step()));
      xml.leaf("display-octave", Integer.toString(body.octave()));
      xml.close();
    } else if (rest != null) {
      rest(rest);
    }
    BigInteger duration = note.duration();
    if (duration != null) {
      xml.leaf("duration", duration.toString());
    }
    Notations notations = note.notations();
    if (notations.tieStop()) {
      xml.empty("tie", "type", "stop");
    }
    if (notations.tieStart()) {
      xml.empty("tie", "type", "start");
    }
    if (body != null) {
      xml.empty("instrument", "id", body.instrument());
    }
    xml.leaf("voice", Integer.toString(note.voice()));
    Shape shape = note.shape();
    if (shape != null) {
      shape(shape);
    }
    if (body != null) {
      xml.leaf("stem", note.stem() == null ? "none" : note.stem());
      if (body.parentheses()) {
        xml.leaf("notehead", body.head(), "parentheses", "yes");
      } else if (!body.head().equals("normal")) {
        xml.leaf("notehead", body.head());
      }
    }
    for (int i = 0; i < note.beams().size(); i++) {
      xml.leaf("beam", note.beams().get(i), "number", Integer.toString(i + 1));
    }
    if (!notations.isEmpty()) {
      notations(notations);
    }
    note.lyrics().forEach(this::lyric);
    xml.close();
  }

  private void rest(RestBody rest) {
    String[] measure = rest.measure() ? new String[] {"measure", "yes"} : new String[0];
    if (rest.middle()) {
      xml.open("rest", measure);
      xml.leaf("display-step", "B");
      xml.leaf("display-octave", "4");
      xml.close();
    } else {
      xml.empty("rest", measure);
    }
  }

  private void shape(Shape shape) {
    xml.leaf("type", shape.type());
    for (int i = 0; i < shape.dots(); i++) {
      xml.empty("dot");
    }
    Ratio ratio = shape.ratio();
    if (ratio != null) {
      xml.open("time-modification");
      xml.leaf("actual-notes", ratio.actual().toString());
      xml.leaf("normal-notes", ratio.normal().toString());
      xml.leaf("normal-type", ratio.normalType());
      xml.close();
    }
  }

  private void notations(Notations notations) {
    xml.open("notations");
    if (notations.tieStop()) {
      xml.empty("tied", "type", "stop");
    }
    if (notations.tieStart()) {
      xml.empty("tied", "type", "start");
    }
    notations.tuplets().forEach(this::tuplet);
    if (notations.tremolo() > 0 || notations.buzz()) {
      xml.open("ornaments");
      if (notations.buzz()) {
        xml.leaf("tremolo", "0", "type", "unmeasured");
      } else {
        xml.leaf("tremolo", Integer.toString(notations.tremolo()), "type", "single");
      }
      xml.close();
    }
    if (!notations.technical().isEmpty()) {
      xml.open("technical");
      notations.technical().forEach(this::technical);
      xml.close();
    }
    if (notations.accent()) {
      xml.open("articulations");
      xml.empty("accent");
      xml.close();
    }
    if (notations.held()) {
      xml.empty("fermata", "type", "upright");
    }
    xml.close();
  }

  private void technical(Technical sign) {
    String[] glyph = sign.glyph().isEmpty() ? new String[0] : new String[] {"smufl", sign.glyph()};
    if (sign.text().isEmpty()) {
      xml.empty(sign.element(), glyph);
    } else {
      xml.leaf(sign.element(), sign.text(), glyph);
    }
  }

  private void tuplet(TupletMark mark) {
    String number = Integer.toString(mark.number());
    if (!mark.start()) {
      xml.empty("tuplet", "type", "stop", "number", number);
      return;
    }
    String bracket = mark.bracket() ? "yes" : "no";
    xml.open("tuplet", "type", "start", "number", number, "bracket", bracket);
    tupletNumber("actual", mark.actual(), mark.type());
    tupletNumber("normal", mark.normal(), mark.type());
    xml.close();
  }

  private void tupletNumber(String which, long number, String type) {
    xml.open("tuplet-" + which);
    xml.leaf("tuplet-number", Long.toString(number));
    xml.leaf("tuplet-type", type);
    xml.close();
  }

  private void lyric(Lyric lyric) {
    String placement = lyric.above() ? "above" : "below";
    String number = Integer.toString(lyric.number());
    xml.open("lyric", "number", number, "name", lyric.name(), "placement", placement);
    xml.leaf("syllabic", "single");
    xml.leaf("text", lyric.text());
    xml.close();
  }
}
