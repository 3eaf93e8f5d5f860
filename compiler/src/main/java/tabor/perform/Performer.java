package tabor.perform;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.lists.Lists;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * Plays grooves, steps and charts.
 *
 * <p>A count-in stops before the pickup of the section after it: one bar of 4/4 before a pickup of
 * one beat is three clicks. A section that follows itself in a chart is played again without its
 * pickup; wherever something else stood before it, the pickup is played.
 */
public final class Performer {
  /** The longest chart that is played. */
  public static final long LONGEST_SECONDS = 24 * 60 * 60;

  /** A million stretches of a beat or a section are an hour and more of the shortest bars. */
  private static final long MOST_SEGMENTS = 1_000_000;

  /** What a section sounded like the last time it was played. */
  private record Known(
      Tempo tempo, Feel feel, @Nullable Loudness over, List<SectionSounds.Local> sounds) {}

  private Performer() {}

  /** A groove or step once through, after so many bars of count-in; 0 for none. */
  public static Performance once(Groove groove, int countIn) {
    return play(counted(groove, countIn), false);
  }

  /**
   * A groove or step twice through, the second time without its pickup. From the first barline to
   * the second time it is what a loop plays, with the grace notes before the repeat.
   */
  public static Performance twice(Groove groove, int countIn) {
    Groove.Setting setting = groove.setting();
    List<PlannedSegment> planned = counted(groove, countIn);
    planned.add(whole(groove, setting.tempo(), setting.feel(), false));
    return play(planned, false);
  }

  private static List<PlannedSegment> counted(Groove groove, int countIn) {
    Groove.Setting setting = groove.setting();
    List<PlannedSegment> planned = new ArrayList<>();
    if (countIn > 0) {
      planned.add(PlannedSegment.countIn(countIn, groove, setting.tempo(), groove.pickup()));
    }
    planned.add(whole(groove, setting.tempo(), setting.feel(), true));
    return planned;
  }

  /**
   * A groove or step as a loop: one time round, its pickup left out, as it sounds in the middle of
   * many. Grace notes before its first beat stand at its end, and what rings on there is cut off by
   * what comes after the repeat, so that such a sound may end after the performance does.
   */
  public static Performance round(Groove groove) {
    Groove.Setting setting = groove.setting();
    return play(List.of(whole(groove, setting.tempo(), setting.feel(), false)), true);
  }

  /**
   * A groove or step once through without a count-in, at another feel than its own: what is needed
   * to know where its strokes can stand.
   */
  public static Performance once(Groove groove, Tempo tempo, Feel feel) {
    return play(List.of(whole(groove, tempo, feel, true)), false);
  }

  /**
   * A chart from beginning to end. A chart that plays nothing is one bar of rest.
   *
   * @throws IllegalArgumentException if it lasts longer than {@link #LONGEST_SECONDS}
   */
  public static Performance chart(Chart chart) {
    return chart(chart, true);
  }

  /**
   * The clicks and counts of a chart without what is struck.
   *
   * @throws IllegalArgumentException if it lasts longer than {@link #LONGEST_SECONDS}
   */
  public static Performance clicks(Chart chart) {
    return chart(chart, false);
  }

  private static Performance chart(Chart chart, boolean struck) {
    if (seconds(chart) > LONGEST_SECONDS) {
      throw new IllegalArgumentException("the chart " + chart.name() + " is too long to play");
    }
    ChartPlan plan = ChartPlan.planned(chart);
    List<PlannedSegment> planned = new ArrayList<>();
    for (ChartPlan.Passage passage : plan.passages()) {
      for (long i = 0; i < passage.times(); i++) {
        for (PlannedSegment segment : passage.segments()) {
          planned.add(i == 0 ? segment : segment.silent());
        }
      }
    }
    if (planned.isEmpty()) {
      Tempo tempo = new Tempo(Time.of(1, 4), Time.of(90));
      planned.add(PlannedSegment.rest(1, null, tempo, PlannedSegment.Manner.PLAIN));
    }
    return play(planned, plan.last(), false, struck);
  }

  /**
   * The segments of a chart, those that are repeated once only, each as if it stood at the start:
   * which sections, stretches and tempi there are.
   */
  public static List<Segment> segments(Chart chart) {
    List<Segment> segments = new ArrayList<>();
    for (ChartPlan.Passage passage : ChartPlan.of(chart)) {
      segments.addAll(Lists.map(passage.segments(), segment -> segment.at(Time.ZERO, 0)));
    }
    return segments;
  }

  private static PlannedSegment whole(Groove groove, Tempo tempo, Feel feel, boolean pickup) {
    boolean only = groove.isPickupOnly();
    PlannedSegment section =
        PlannedSegment.section(
            new Chart.Turn(groove, tempo, feel), pickup || only, PlannedSegment.Manner.PLAIN);
    // A short fill comes round once a bar: its pickup, and the rest of the bar in silence.
    return only ? section.cut(section.from(), groove.meter().bar().plus(section.from())) : section;
  }

  /**
   * How long a chart lasts in seconds, rounded up once a millisecond has begun, worked out without
   * playing it out; {@link Long#MAX_VALUE} if it is longer than that.
   */
  public static long seconds(Chart chart) {
    return seconds(ChartPlan.of(chart));
  }

  private static long seconds(List<ChartPlan.Passage> passages) {
    BigInteger sum = BigInteger.ZERO;
    for (ChartPlan.Passage passage : passages) {
      sum = sum.add(passage.picos());
    }
    return seconds(sum);
  }

  private static long seconds(BigInteger picos) {
    BigInteger second = BigInteger.valueOf(Clock.SECOND);
    BigInteger up = picos.add(BigInteger.valueOf(Clock.SECOND - Clock.MILLI)).divide(second);
    return up.min(BigInteger.valueOf(Long.MAX_VALUE)).longValueExact();
  }

  /**
   * How much a chart plays.
   *
   * @param strokes how many strokes sound, each time one is played counted
   * @param isTooLong true if it lasts longer than {@link #LONGEST_SECONDS}, or is cut into more
   *     stretches than can be played out
   * @param item at which of its items, counted from 0, it gets too long, or else comes to more
   *     strokes than was asked for; -1 if it does neither
   */
  public record Size(long strokes, boolean isTooLong, int item) {}

  /**
   * How much a chart plays, worked out without playing it out.
   *
   * @param most how many strokes are no more than is asked for
   */
  public static Size size(Chart chart, long most) {
    long strokes = 0;
    long segments = 0;
    int tooLong = -1;
    int tooMany = -1;
    BigInteger picos = BigInteger.ZERO;
    for (ChartPlan.Passage passage : ChartPlan.of(chart)) {
      segments += Math.min(MOST_SEGMENTS, passage.times()) * passage.segments().size();
      for (PlannedSegment segment : passage.segments()) {
        strokes += passage.times() * segment.strokes();
      }
      picos = picos.add(passage.picos());
      if (tooLong < 0 && (seconds(picos) > LONGEST_SECONDS || segments > MOST_SEGMENTS)) {
        tooLong = passage.item();
      }
      if (tooMany < 0 && strokes > most) {
        tooMany = passage.item();
      }
    }
    return new Size(strokes, tooLong >= 0, tooLong >= 0 ? tooLong : tooMany);
  }

  private static Performance play(List<PlannedSegment> planned, boolean round) {
    return play(planned, List.of(), round, true);
  }

  private static Performance play(
      List<PlannedSegment> planned,
      List<PlannedSegment.Words> last,
      boolean round,
      boolean struck) {
    List<Segment> segments = new ArrayList<>();
    Time start = Time.ZERO;
    long picos = 0;
    for (PlannedSegment next : planned) {
      Segment segment = next.at(start, picos);
      segments.add(segment);
      start = segment.end();
      picos += Clock.picos(segment.length(), segment.tempo());
    }
    SoundPlacer placer = new SoundPlacer(segments, round);
    Map<String, Known> known = new HashMap<>();
    for (int i = 0; i < planned.size(); i++) {
      Segment segment = segments.get(i);
      if (segment.kind() == Segment.Kind.COUNT_IN) {
        Clicks.countIn(placer, i, segment);
        continue;
      }
      Groove groove = segment.groove();
      boolean sounds =
          segment.kind() == Segment.Kind.SECTION || segment.kind() == Segment.Kind.HOLD;
      PlannedSegment plan = planned.get(i);
      if (struck && sounds && groove != null) {
        placer.add(i, plan, sounds(known, groove, segment, plan.manner().over()));
      }
      if (segment.kind().hasBars()) {
        Clicks.under(placer, i, segment, plan.manner().click(), plan.phase());
      }
    }
    return placer.finished(words(planned, segments, last, start));
  }

  private static List<Performance.Words> words(
      List<PlannedSegment> planned,
      List<Segment> segments,
      List<PlannedSegment.Words> last,
      Time end) {
    List<Performance.Words> found = new ArrayList<>();
    for (int i = 0; i < planned.size(); i++) {
      for (PlannedSegment.Words words : planned.get(i).signs()) {
        Time start = segments.get(i).start();
        found.add(new Performance.Words(start, i, words.mark(), words.text()));
      }
    }
    for (PlannedSegment.Words words : last) {
      found.add(new Performance.Words(end, planned.size(), words.mark(), words.text()));
    }
    return found;
  }

  private static List<SectionSounds.Local> sounds(
      Map<String, Known> known, Groove groove, Segment segment, @Nullable Loudness over) {
    Known last = known.get(groove.name());
    if (last == null
        || last.over() != over
        || !last.tempo().equals(segment.tempo())
        || !last.feel().equals(segment.feel())) {
      last =
          new Known(
              segment.tempo(),
              segment.feel(),
              over,
              SectionSounds.of(groove, segment.tempo(), segment.feel(), over));
      known.put(groove.name(), last);
    }
    return last.sounds();
  }
}
