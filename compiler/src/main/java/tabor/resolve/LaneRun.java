package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.Dealer;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;
import tabor.syntax.Subject;

/**
 * Turns parts into strokes, one run of lines after another: it knows which part goes on after
 * {@code next}.
 */
final class LaneRun {
  /** A part that may go on in the next system. */
  private static final class Track {
    final LaneWalker walker;
    final Map<Meter, Latest> latest = new HashMap<>();
    int nextBar;
    int read;

    Track(LaneWalker walker) {
      this.walker = walker;
    }
  }

  /**
   * A part's latest bar of a meter.
   *
   * @param bar null where the part was silent
   * @param line where it is written
   */
  private record Latest(@Nullable LaneBar bar, Line line) {}

  private final SectionFrame frame;
  private final Problems problems;
  private final Map<String, Track> tracks = new HashMap<>();
  private final Map<Integer, int[]> percents = new HashMap<>();
  private final Map<String, Integer> inSystem = new HashMap<>();
  private int system;

  LaneRun(SectionFrame frame, Problems problems) {
    this.frame = frame;
    this.problems = problems;
  }

  /**
   * The strokes of one run of parts, as written.
   *
   * @param strokes by their limbs, or open
   * @param readers of each part, with the strokes that leave open which hand or foot
   */
  private record WrittenRun(List<Stroke> strokes, List<LetterReader> readers) {}

  /**
   * Writes the parts of one run.
   *
   * @param lines parts and {@code next} lines in order
   * @param length where the systems start
   */
  SectionDraft write(SectionDraft draft, List<Line> lines, SectionLength length) {
    SectionDraft written = written(draft, lines, length);
    return written.repeats(repeats());
  }

  private SectionDraft written(SectionDraft draft, List<Line> lines, SectionLength length) {
    WrittenRun run = read(draft, lines, length);
    return settled(draft.plus(run.strokes()), run.readers());
  }

  /** The same in a step: what the subjects match is taken out first. */
  SectionDraft replace(SectionDraft draft, List<Line> lines, SectionLength length) {
    List<TargetFilter> filters = new ArrayList<>();
    for (Line line : lines) {
      Subject subject = subject(line.statement());
      TargetFilter filter = subject == null ? null : TargetFilter.of(subject.target(), frame.kit());
      if (filter != null) {
        filters.add(filter);
      }
    }
    List<Limb> limbs = Lists.filter(Lists.map(filters, TargetFilter::limb), Objects::nonNull);
    SectionDraft seen = Dealing.dealt(frame, draft, limbs);
    return written(
        seen.keep(stroke -> !Lists.any(filters, filter -> filter.test(stroke))), lines, length);
  }

  private static @Nullable Subject subject(Statement statement) {
    return statement instanceof PartStatement.Lane lane
        ? lane.subject()
        : statement instanceof PartStatement.Played played ? played.subject() : null;
  }

  private WrittenRun read(SectionDraft draft, List<Line> lines, SectionLength length) {
    List<Runnable> unread = new ArrayList<>();
    List<LetterReader> readers = new ArrayList<>();
    long count = 0;
    for (Line line : lines) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Next) {
        system++;
        inSystem.clear();
        continue;
      }
      Subject subject = subject(statement);
      if (subject == null || !isKnown(line, subject)) {
        continue;
      }
      LetterReader letters = new LetterReader(frame, problems, draft, subject);
      List<LaneWalker.Placed> placed =
          statement instanceof PartStatement.Lane lane
              ? lane(draft, line, lane, length)
              : new LoopLanes(frame, problems, draft, line)
                  .played((PartStatement.Played) statement);
      count += placed.size();
      if (new LineContext(frame, problems, line).tooMany(draft, count)) {
        break;
      }
      // Letters are read when the whole run has been walked: a hold in a later system lengthens
      // the last stroke of the one before.
      unread.add(() -> placed.forEach(letters::read));
      readers.add(letters);
    }
    unread.forEach(Runnable::run);
    List<Stroke> strokes = new ArrayList<>();
    readers.forEach(letters -> strokes.addAll(letters.strokes()));
    return new WrittenRun(strokes, readers);
  }

  /** Deals the strokes of the run that leave open which hand or foot; they keep what they get. */
  private SectionDraft settled(SectionDraft draft, List<LetterReader> readers) {
    record Waiting(LetterReader reader, LetterReader.Either either) {}
    List<Waiting> waiting = new ArrayList<>();
    for (LetterReader reader : readers) {
      reader.either().forEach(either -> waiting.add(new Waiting(reader, either)));
    }
    if (waiting.isEmpty()) {
      return draft;
    }
    waiting.sort((a, b) -> Dealer.BY_SURFACE.compare(a.either().stroke(), b.either().stroke()));
    List<Stroke> open = Lists.map(waiting, one -> one.either().stroke());
    List<@Nullable Limb> limbs = Dealing.limbs(frame, draft, open);
    List<Stroke> settled = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Limb limb = limbs.get(i);
      Stroke stroke = open.get(i);
      if (limb != null) {
        Stroke done = waiting.get(i).reader().settled(waiting.get(i).either(), limb);
        if (done != null) {
          settled.add(done);
        }
      } else {
        problems.incomplete();
        if (problems.isNew(stroke.spot())) {
          problems.add(
              Dealing.noneFree(frame, problems, List.of(stroke), Dealing.busy(draft, stroke)));
        }
      }
    }
    return draft.plus(settled);
  }

  private boolean isKnown(Line line, Subject subject) {
    boolean known =
        !(subject instanceof Subject.OfSurface named)
            || frame.kit().surface(named.surface().name()) != null;
    if (!known) {
      problems.incomplete();
      SurfaceMessages.unknownPart(problems, line, subject, frame.kit());
    }
    return known;
  }

  private List<LaneWalker.Placed> lane(
      SectionDraft draft, Line line, PartStatement.Lane lane, SectionLength length) {
    PartHints hints = new PartHints(problems, line);
    hints.ghosts(lane);
    if (lane.ostinato()) {
      hints.letters(lane, frame.meters(), 1);
      return new LoopLanes(frame, problems, draft, line).ostinato(lane, hints);
    }
    int start = length.systems().get(Math.min(system, length.systems().size() - 1));
    int bar = system == 0 && frame.pickupBeats() > 0 ? 0 : start;
    if (bar > draft.bars()) {
      // The section is too long, and that is told; walking up to here each time takes too long.
      return List.of();
    }
    hints.letters(lane, frame.meters(), bar);
    return bars(draft, line, lane, bar, hints);
  }

  private List<LaneWalker.Placed> bars(
      SectionDraft draft, Line line, PartStatement.Lane lane, int first, PartHints hints) {
    int number = inSystem.merge(lane.subject().words(), 1, Integer::sum);
    String key = lane.subject().words() + " " + number;
    Track track =
        tracks.computeIfAbsent(
            key, k -> new Track(new LaneWalker(frame, problems, draft.view(), line)));
    track.walker.on(line);
    int bar = first;
    if (track.nextBar < bar) {
      track.walker.silence();
      for (int silent = Math.max(1, track.nextBar); silent < bar; silent++) {
        track.latest.put(frame.meters().of(silent), new Latest(null, line));
      }
    }
    for (LaneBar written : lane.bars()) {
      if (bar > draft.bars()) {
        break;
      }
      int[] count = percents.computeIfAbsent(bar, k -> new int[2]);
      count[0]++;
      if (written.repeat()) {
        count[1]++;
        Latest latest = bar == 1 ? null : track.latest.get(frame.meters().of(bar));
        if (latest == null) {
          LoopLanes.nothingBefore(frame, problems, line, written, bar);
        } else if (latest.bar() == null) {
          track.walker.silence();
        } else {
          // Its strokes stand where they are written, be that in another line.
          track.walker.on(latest.line());
          track.walker.bar(bar, latest.bar(), false);
          track.walker.on(line);
        }
      } else {
        track.walker.bar(bar, written, true);
        if (bar > 0) {
          track.latest.put(frame.meters().of(bar), new Latest(written, line));
        }
      }
      bar++;
      track.nextBar = bar;
    }
    int from = track.read;
    track.read = track.walker.placed().size();
    hints.held(track.walker, lane.subject(), draft, frame);
    return List.copyOf(track.walker.placed().subList(from, track.read));
  }

  /** The bars in which every part that writes bars repeats the one before. */
  private Set<Integer> repeats() {
    Set<Integer> found = new HashSet<>();
    percents.forEach(
        (bar, count) -> {
          if (count[0] == count[1]) {
            found.add(bar);
          }
        });
    return found;
  }
}
