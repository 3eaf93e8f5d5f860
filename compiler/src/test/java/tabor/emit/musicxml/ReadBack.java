package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.ScoreInstrument;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.ScorePartwise.Part.Measure;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.util.Marshalling;
import tabor.rhythm.Time;

/**
 * A document, valid by its published schema, read back by classes that are not ours, with the sums
 * that a schema cannot check.
 *
 * @param measures what sounds in each measure
 */
record ReadBack(ScorePartwise score, List<Read> measures) {
  /**
   * A measure.
   *
   * @param number as it is shown; {@code null} where it is not
   * @param length its longest voice, in whole notes
   * @param onsets where something is struck: place and instrument id, as {@code 1/4 P1-snare}
   * @param totals the length of each voice
   */
  record Read(String number, Time length, List<String> onsets, Map<String, Time> totals) {}

  static ReadBack of(byte[] bytes) {
    PublishedSchema.check(bytes);
    try {
      ScorePartwise score = (ScorePartwise) Marshalling.unmarshal(new ByteArrayInputStream(bytes));
      List<Read> measures = new ArrayList<>();
      BigDecimal divisions = BigDecimal.ONE;
      for (Measure measure : score.getPart().get(0).getMeasure()) {
        for (Object element : measure.getNoteOrBackupOrForward()) {
          if (element instanceof Attributes attributes && attributes.getDivisions() != null) {
            divisions = attributes.getDivisions();
          }
        }
        measures.add(read(measure, divisions.toBigIntegerExact()));
      }
      return new ReadBack(score, measures);
    } catch (Marshalling.UnmarshallingException e) {
      throw new AssertionError(e);
    }
  }

  private static Read read(Measure measure, BigInteger divisions) {
    Map<String, Time> totals = new TreeMap<>();
    List<String> onsets = new ArrayList<>();
    Time at = Time.ZERO;
    Time chordAt = Time.ZERO;
    Time longest = Time.ZERO;
    for (Object element : measure.getNoteOrBackupOrForward()) {
      if (element instanceof Backup backup) {
        at = at.minus(whole(backup.getDuration(), divisions));
        assertThat(at).isEqualTo(Time.ZERO);
      } else if (element instanceof Note note && note.getGrace() == null) {
        Time length = whole(note.getDuration(), divisions);
        if (note.getChord() == null) {
          chordAt = at;
          at = at.plus(length);
          totals.merge(note.getVoice(), length, Time::plus);
          longest = Time.max(longest, at);
        }
        boolean held = note.getTie().stream().anyMatch(tie -> tie.getType() == StartStop.STOP);
        if (note.getRest() == null && !held) {
          assertThat(note.getInstrument()).hasSize(1);
          ScoreInstrument instrument = (ScoreInstrument) note.getInstrument().get(0).getId();
          onsets.add(chordAt + " " + instrument.getId());
        }
        checkValue(note, length);
      }
    }
    return new Read(String.valueOf(measure.getText()), longest, onsets, totals);
  }

  /** The written value, its dots and its tuplets must make the duration. */
  private static void checkValue(Note note, Time length) {
    if (note.getType() == null) {
      assertThat(note.getRest()).isNotNull();
      return;
    }
    Time value =
        switch (note.getType().getValue()) {
          case "breve" -> Time.of(2);
          case "whole" -> Time.ONE;
          case "half" -> Time.of(1, 2);
          case "quarter" -> Time.of(1, 4);
          case "eighth" -> Time.of(1, 8);
          default -> Time.of(1, Long.parseLong(note.getType().getValue().replaceAll("[a-z]", "")));
        };
    if (!note.getDot().isEmpty()) {
      value = value.times(3).over(2);
    }
    if (note.getTimeModification() != null) {
      value =
          value.times(
              Time.of(
                  note.getTimeModification().getNormalNotes().longValueExact(),
                  note.getTimeModification().getActualNotes().longValueExact()));
    }
    assertThat(value).isEqualTo(length);
  }

  private static Time whole(BigDecimal duration, BigInteger divisions) {
    return Time.of(duration.toBigIntegerExact().longValueExact(), divisions.longValueExact() * 4);
  }
}
