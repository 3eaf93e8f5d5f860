package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import tabor.cores.SpareCores;
import tabor.emit.musicxml.ScoreFile.DirectionKind;
import tabor.emit.musicxml.ScoreFile.Rehearsal;
import tabor.emit.musicxml.ScoreFile.Words;
import tabor.groove.Changes;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.notation.Score;
import tabor.notation.Speller;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** A lesson as a MusicXML document: its sections one after another in one part. */
public final class MusicXml {
  private final IdentityHashMap<Groove, Score> scores = new IdentityHashMap<>();
  private final Measures measures;

  private MusicXml(Instruments instruments, List<Groove> grooves, boolean gradual) {
    Divisions divisions = new Divisions();
    List<Score> spelled = SpareCores.map(grooves, Speller::spell);
    for (int i = 0; i < grooves.size(); i++) {
      Groove groove = grooves.get(i);
      Score score = spelled.get(i);
      scores.put(groove, score);
      divisions.add(score);
      if (gradual) {
        groove.meters().cycle().forEach(divisions::addBeats);
      }
    }
    BigInteger common = divisions.common();
    boolean fits = common.compareTo(Divisions.MOST_FOR_ALL) <= 0;
    this.measures =
        new Measures(instruments, new LyricLines(scores.values()), fits ? common : null);
  }

  /** True for a chart with a tempo that changes gradually. */
  private static boolean isGradual(Section section) {
    return section instanceof Chart chart
        && chart.items().stream().anyMatch(Chart.Ramp.class::isInstance);
  }

  /** The document in UTF-8; the same bytes for the same lesson. */
  public static byte[] bytes(Lesson lesson, Predicate<Section> chosen) {
    return XmlWriter.bytes(of(lesson, chosen));
  }

  /** The sections of a lesson that {@code chosen} picks, in order. */
  public static ScoreFile of(Lesson lesson, Predicate<Section> chosen) {
    List<Section> sections = Sheet.apart(lesson.sections(), chosen);
    List<Groove> grooves = grooves(sections);
    Instruments instruments = new Instruments(grooves);
    MusicXml made =
        new MusicXml(instruments, grooves, sections.stream().anyMatch(MusicXml::isGradual));
    sections.forEach(made::add);
    if (made.measures.list().isEmpty()) {
      made.measures.silence(List.of(Meter.COMMON), Time.ZERO, List.of(), null);
    }
    made.measures.finish();
    String by = lesson.by();
    return new ScoreFile(
        XmlCharacters.line(lesson.title()),
        by == null ? null : XmlCharacters.line(by),
        instruments.list(),
        made.measures.list());
  }

  /** Every groove that is written: the sections themselves and what charts play. */
  private static List<Groove> grooves(List<Section> sections) {
    Set<Groove> found = Collections.newSetFromMap(new IdentityHashMap<>());
    List<Groove> grooves = new ArrayList<>();
    for (Section section : sections) {
      List<Groove> some =
          section instanceof Groove groove
              ? List.of(groove)
              : ChartMeasures.grooves((Chart) section);
      for (Groove groove : some) {
        if (found.add(groove)) {
          grooves.add(groove);
        }
      }
    }
    return grooves;
  }

  private void add(Section section) {
    if (section instanceof Groove groove) {
      measures.section(score(groove), Measures.Plan.once(head(groove), groove));
    } else if (section instanceof Chart chart) {
      ChartMeasures.write(chart, measures, this::score);
    }
  }

  private Score score(Groove groove) {
    Score score = scores.get(groove);
    if (score == null) {
      // The last time through a line with a fill is made anew whenever it is asked for.
      for (Map.Entry<Groove, Score> one : scores.entrySet()) {
        if (one.getKey().equals(groove)) {
          return one.getValue();
        }
      }
      throw new IllegalArgumentException("not a section of this lesson: " + groove.name());
    }
    return score;
  }

  private static List<DirectionKind> head(Groove groove) {
    List<DirectionKind> head = new ArrayList<>(title(groove));
    String changed = Changes.of(groove).text();
    if (!changed.isEmpty()) {
      head.add(new Words(XmlCharacters.line(changed), true, null));
    }
    groove.prose().forEach(text -> head.add(new Words(XmlCharacters.of(text), false, null)));
    return head;
  }

  static List<DirectionKind> title(Section section) {
    return List.of(new Rehearsal(XmlCharacters.line(section.caption())));
  }
}
