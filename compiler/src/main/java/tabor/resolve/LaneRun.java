package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Near;
import tabor.groove.Stroke;
import tabor.rhythm.Division;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.syntax.Bar;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;
import tabor.syntax.Word;

/**
 * Turns parts into strokes. One of these lives as long as its section, since a part may go on after
 * {@code next}; an {@code x} of the hands or feet is dealt when its run of parts ends.
 */
final class LaneRun {
  /** A part that may go on in the next system. */
  private static final class Track {
    final LaneWalker walker;
    int nextBar;
    @Nullable Bar last;
    int read;

    Track(LaneWalker walker) {
      this.walker = walker;
    }
  }

  private final Work work;
  private final Patterns patterns;
  private final Map<String, Track> tracks = new HashMap<>();
  private final Map<Integer, int[]> percents = new HashMap<>();
  private final List<Runnable> unread = new ArrayList<>();
  private int system;
  private Set<String> inSystem = new HashSet<>();

  LaneRun(Work work, Patterns patterns) {
    this.work = work;
    this.patterns = patterns;
  }

  /**
   * Writes the parts of one run.
   *
   * @param lines parts and {@code next} lines in order
   * @param plan where the systems start
   * @param replaces true in a step: what the subjects match is taken out first
   */
  void run(List<Line> lines, Plan.Found plan, boolean replaces) {
    if (replaces) {
      system = 0;
      tracks.clear();
      percents.clear();
      inSystem = new HashSet<>();
      takeOut(lines);
    }
    List<Letters> all = new ArrayList<>();
    for (Line line : lines) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Next) {
        system++;
        inSystem = new HashSet<>();
        continue;
      }
      Letters letters = null;
      if (statement instanceof PartStatement.Lane lane) {
        letters = lane(line, lane, plan);
      } else if (statement instanceof PartStatement.Played played) {
        letters = played(line, played);
      }
      if (letters != null) {
        all.add(letters);
      }
    }
    // Letters are read when the whole run has been walked: a hold in a later system lengthens the
    // last stroke of the one before.
    unread.forEach(Runnable::run);
    unread.clear();
    List<Stroke> given = new ArrayList<>();
    List<Letters.Either> either = new ArrayList<>();
    for (Letters letters : all) {
      if (work.tooMany(given.size() + (long) letters.given().size(), lines.get(0).spot())) {
        break;
      }
      given.addAll(letters.given());
      either.addAll(letters.either());
    }
    work.add(given);
    Dealing.either(work, either);
  }

  private void takeOut(List<Line> lines) {
    List<Subject> subjects = new ArrayList<>();
    for (Line line : lines) {
      Word word =
          line.statement() instanceof PartStatement.Lane lane
              ? lane.subject()
              : line.statement() instanceof PartStatement.Played played ? played.subject() : null;
      Subject subject = word == null ? null : Subject.of(word.text(), work.kit());
      if (subject != null) {
        subjects.add(subject);
      }
    }
    for (Subject subject : subjects) {
      if (subject.limb() != null) {
        Dealing.see(work, subject.limb());
      }
    }
    work.keep(stroke -> subjects.stream().noneMatch(subject -> subject.matches(stroke)));
  }

  private @Nullable Subject subject(Line line, Word word) {
    Subject subject = Subject.of(word.text(), work.kit());
    boolean piece =
        subject != null
            && subject.kind() == Subject.Kind.SURFACE
            && work.kit().surface(word.text()) == null;
    if (subject == null || piece || subject.kind() == Subject.Kind.ALL) {
      work.partial = true;
      List<String> names = new ArrayList<>(work.kit().surfaceNames());
      names.addAll(List.of("hands", "feet", "line", "right", "left", "right foot", "left foot"));
      work.problems.unknown(line, word, "surface or limb", Near.find(word.text(), names));
      return null;
    }
    return subject;
  }

  private @Nullable Letters lane(Line line, PartStatement.Lane lane, Plan.Found plan) {
    Subject subject = subject(line, lane.subject());
    if (subject == null) {
      return null;
    }
    PartHints.ghosts(work, line, lane);
    PartHints.hints(work, line, lane);
    Letters letters = new Letters(work, subject);
    if (lane.ostinato()) {
      ostinato(line, lane, letters);
    } else {
      bars(line, lane, letters, plan);
    }
    return letters;
  }

  private void bars(Line line, PartStatement.Lane lane, Letters letters, Plan.Found plan) {
    String key = lane.subject().text();
    for (int i = 2; !inSystem.add(key); i++) {
      key = lane.subject().text() + " " + i;
    }
    int start = plan.systems().get(Math.min(system, plan.systems().size() - 1));
    int bar = system == 0 && work.pickupBeats > 0 ? 0 : start;
    Track track = tracks.computeIfAbsent(key, k -> new Track(new LaneWalker(work, line)));
    track.walker.on(line);
    if (track.nextBar < bar && track.nextBar > 0) {
      track.walker.silence();
      track.last = null;
    }
    for (Bar written : lane.bars()) {
      if (bar > work.bars) {
        break;
      }
      int[] count = percents.computeIfAbsent(bar, k -> new int[2]);
      count[0]++;
      if (written.repeat()) {
        count[1]++;
        Bar last = track.last;
        if (bar <= 1 && (bar == 0 || track.nextBar <= 1)) {
          nothingBefore(line, written, bar);
        } else if (last == null) {
          track.walker.silence();
        } else {
          track.walker.bar(bar, last, false);
        }
      } else {
        track.walker.bar(bar, written, true);
        track.last = written;
      }
      bar++;
      track.nextBar = bar;
    }
    int from = track.read;
    int to = track.walker.placed().size();
    track.read = to;
    unread.add(() -> track.walker.placed().subList(from, to).forEach(letters::read));
    PartHints.held(work, track.walker, line, lane.subject());
  }

  private void nothingBefore(Line line, Bar written, int bar) {
    work.partial = true;
    work.problems.add(
        work.problems
            .make(
                Code.NOTHING_THERE,
                line.spot(written.span()),
                bar,
                null,
                "there is no bar before this one to repeat")
            .help("write the bar out here; % repeats it from the next bar on"));
  }

  private void ostinato(Line line, PartStatement.Lane lane, Letters letters) {
    LaneWalker walker = new LaneWalker(work, line);
    int period = lane.bars().size();
    List<Bar> effective = new ArrayList<>();
    for (int i = 0; i < period; i++) {
      Bar written = lane.bars().get(i);
      if (written.repeat() && i == 0) {
        nothingBefore(line, written, 1);
        return;
      }
      effective.add(written.repeat() ? effective.get(i - 1) : written);
    }
    for (int bar = 1; bar <= work.bars; bar++) {
      int i = (bar - 1) % period;
      walker.bar(bar, effective.get(i), bar <= period && !lane.bars().get(i).repeat());
    }
    walker.placed().forEach(letters::read);
    PartHints.held(work, walker, line, lane.subject());
  }

  private @Nullable Letters played(Line line, PartStatement.Played played) {
    Subject subject = subject(line, played.subject());
    List<Beat.Element> places = patterns.of(played);
    if (places == null) {
      work.partial = true;
      work.problems.unknown(
          line,
          played.pattern(),
          "pattern",
          work.scope.near(Scope.Kind.PATTERN, played.pattern().text()));
      return null;
    }
    NoteValue value = NoteValue.of(played.value().text()).orElse(null);
    if (subject == null || value == null || places.isEmpty()) {
      work.partial = true;
      return null;
    }
    List<Beat.Element> each = new ArrayList<>();
    for (Beat.Element element : places) {
      if (element instanceof Beat.Ghosts ghosts) {
        ghosts.elements().forEach(e -> each.add(new Beat.Ghosts(List.of(e), e.span())));
      } else {
        each.add(element);
      }
    }
    Letters letters = new Letters(work, subject);
    pour(line, played, each, value.length(), letters);
    return letters;
  }

  private void pour(
      Line line,
      PartStatement.Played played,
      List<Beat.Element> places,
      Time value,
      Letters letters) {
    LaneWalker walker = new LaneWalker(work, line);
    Slots slots = new Slots(work.grid, value);
    Time bar = work.meter().bar();
    Time end = bar.times(work.bars);
    int number = 1;
    Time place = Time.ZERO;
    long count = 0;
    if (work.tooMany(end.over(value).floor(), line.spot())) {
      return;
    }
    for (Time at = Time.ZERO; at.before(end); at = at.plus(value)) {
      while (place.compareTo(bar) >= 0) {
        place = place.minus(bar);
        number++;
      }
      Beat.Element element = places.get((int) (count % places.size()));
      walker.place(number, place, value, slots.at(place), element);
      place = place.plus(value);
      count++;
    }
    if (!work.partial && (!end.over(value).isWhole() || count % places.size() != 0)) {
      work.problems.add(
          work.problems
              .make(
                  Code.PATTERN_CUT,
                  line,
                  line.statement().span(),
                  "the section ends in the middle of the pattern “" + played.pattern().text() + "”")
              .help("give the section a length that the pattern fills, or leave its length open"));
    }
    walker.placed().forEach(letters::read);
  }

  /** The slots that places of a note value have in the bar's beats. */
  private static final class Slots {
    private final BarGrid grid;
    private final Map<Time, Slot> known = new HashMap<>();

    Slots(BarGrid grid, Time value) {
      this.grid = grid;
      int beat = 0;
      while (beat < grid.beats()) {
        int beats = 1;
        while (beat + beats <= grid.beats()
            && !grid.length(new Division(beat, beats, 1)).over(value).isWhole()) {
          beats++;
        }
        if (beat + beats > grid.beats()) {
          beat++;
          continue;
        }
        int slots = (int) grid.length(new Division(beat, beats, 1)).over(value).num();
        Division division = new Division(beat, beats, slots);
        for (int i = 0; i < slots; i++) {
          known.putIfAbsent(grid.slotStart(division, i), new Slot(division, i, List.of()));
        }
        beat += beats;
      }
    }

    /** The slot at a place; where no word fits there, the fewest equal slots that hold it. */
    Slot at(Time place) {
      Slot slot = known.get(place);
      return slot == null ? grid.fewest(place) : slot;
    }
  }

  /** The bars in which every part that writes bars repeats the one before. */
  Set<Integer> repeatedBars() {
    Set<Integer> found = new HashSet<>();
    percents.forEach(
        (bar, count) -> {
          if (count[1] > 0 && count[0] == count[1]) {
            found.add(bar);
          }
        });
    return found;
  }
}
