package tabor.resolve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountWord;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.Word;

/** Finds the strokes, bars and places that an edit speaks of. */
final class Selector {
  private final Work work;
  private final Line line;
  private final CountReader reader;
  private final List<Stroke> strokes;
  private final int[] starts;
  private final Misses misses;

  Selector(Work work, Line line) {
    this(work, line, work.strokes(), work.bars);
  }

  /** Looks at other strokes than the section's own, such as those of a section taken from. */
  Selector(Work work, Line line, List<Stroke> strokes, int bars) {
    this.work = work;
    this.line = line;
    this.reader = new CountReader(work);
    this.strokes = strokes;
    this.misses = new Misses(work, line, reader, strokes);
    this.starts = new int[bars + 2];
    int at = 0;
    for (int bar = 0; bar <= bars; bar++) {
      starts[bar] = at;
      while (at < strokes.size() && strokes.get(at).bar() == bar) {
        at++;
      }
    }
    starts[bars + 1] = at;
  }

  CountReader reader() {
    return reader;
  }

  /** Where this selector says what is not there. */
  Misses misses() {
    return misses;
  }

  /** All strokes of a bar. */
  List<Stroke> inBar(int bar) {
    return bar < 0 || bar + 1 >= starts.length
        ? List.of()
        : strokes.subList(starts[bar], starts[bar + 1]);
  }

  /** The subjects that words name; null, and said so, if one names none. */
  @Nullable Predicate<Stroke> target(List<Word> words) {
    List<Subject> subjects = new ArrayList<>();
    for (Word word : words) {
      Subject subject = Subject.of(word.text(), work.kit());
      if (subject == null || subject.kind() == Subject.Kind.LINE) {
        misses.unknownTarget(word);
        return null;
      }
      subjects.add(subject);
    }
    if (subjects.size() == 1) {
      return subjects.get(0)::matches;
    }
    return stroke -> subjects.stream().anyMatch(subject -> subject.matches(stroke));
  }

  /** The bars that a clause means, all of them without one; null, and said so, if one is not. */
  @Nullable Set<Integer> bars(At.@Nullable Bars clause) {
    Set<Integer> found = new TreeSet<>();
    if (clause == null) {
      for (int bar = work.firstBar(); bar <= work.bars; bar++) {
        found.add(bar);
      }
      return found;
    }
    if (clause instanceof At.Listed listed) {
      for (Num num : listed.bars()) {
        if (!exists(num)) {
          return null;
        }
        found.add(num.whole());
      }
    } else if (clause instanceof At.Through through) {
      if (!exists(through.from()) || !exists(through.to())) {
        return null;
      }
      for (int bar = through.from().whole(); bar <= through.to().whole(); bar++) {
        found.add(bar);
      }
    } else if (clause instanceof At.Last) {
      found.add(work.bars);
    } else if (clause instanceof At.EveryNth nth) {
      int n = nth.n().whole();
      for (int bar = n; n > 0 && bar <= work.bars; bar += n) {
        found.add(bar);
      }
    }
    if (found.isEmpty()) {
      misses.noSuchBar(clause.span());
      return null;
    }
    return found;
  }

  /** True if a bar exists; says so if it does not. */
  boolean exists(Num num) {
    int bar = num.whole();
    if (num.value().isWhole() && bar >= work.firstBar() && bar <= work.bars) {
      return true;
    }
    misses.noSuchBar(num.span());
    return false;
  }

  /** The level that a {@code where} asks for; null for every level. */
  static @Nullable Level level(@Nullable Word word) {
    return word == null
        ? null
        : switch (word.text()) {
          case "ghosted" -> Level.GHOST;
          case "plain" -> Level.PLAIN;
          default -> Level.ACCENT;
        };
  }

  /**
   * The target's strokes that an edit's clauses choose, in order of time; null, and said so, where
   * something is not there.
   *
   * @param what the words of the target, for messages
   */
  @Nullable List<Stroke> select(Predicate<Stroke> target, At at, Span what) {
    Set<Integer> bars = bars(at.bars());
    if (bars == null) {
      return null;
    }
    Level level = level(at.where());
    Predicate<Stroke> wanted =
        level == null ? target : stroke -> target.test(stroke) && stroke.level() == level;
    At.Places places = at.places();
    if (places == null) {
      List<Stroke> all = new ArrayList<>();
      for (int bar : bars) {
        for (Stroke stroke : inBar(bar)) {
          if (wanted.test(stroke)) {
            all.add(stroke);
          }
        }
      }
      if (all.isEmpty()) {
        Span span = at.where() != null ? at.where().span() : what;
        misses.nothing(span, null, target, bars.iterator().next(), what, level);
        return null;
      }
      return all;
    }
    Set<Stroke> chosen = Collections.newSetFromMap(new IdentityHashMap<>());
    boolean fine = true;
    for (At.Place place : places.items()) {
      fine &= new Finder(place, bars, at.bars() != null, target, wanted, chosen, what).find();
    }
    return fine ? inOrder(chosen) : null;
  }

  private List<Stroke> inOrder(Set<Stroke> chosen) {
    List<Stroke> all = new ArrayList<>(chosen.size());
    for (Stroke stroke : strokes) {
      if (chosen.contains(stroke)) {
        all.add(stroke);
      }
    }
    return all;
  }

  /** Finds the strokes of one place in every bar. */
  private final class Finder {
    private final At.Place place;
    private final Set<Integer> bars;
    private final boolean eachBar;
    private final Predicate<Stroke> target;
    private final Predicate<Stroke> wanted;
    private final Set<Stroke> chosen;
    private final Span what;
    private boolean ambiguous;
    private boolean outside;

    Finder(
        At.Place place,
        Set<Integer> bars,
        boolean eachBar,
        Predicate<Stroke> target,
        Predicate<Stroke> wanted,
        Set<Stroke> chosen,
        Span what) {
      this.place = place;
      this.bars = bars;
      this.eachBar = eachBar;
      this.target = target;
      this.wanted = wanted;
      this.chosen = chosen;
      this.what = what;
    }

    boolean find() {
      int found = 0;
      int firstMissing = -1;
      int firstOutside = -1;
      for (int bar : bars) {
        outside = false;
        boolean here = findIn(bar);
        if (ambiguous) {
          return false;
        }
        if (here) {
          found++;
        } else if (outside) {
          firstOutside = firstOutside < 0 ? bar : firstOutside;
        } else {
          firstMissing = firstMissing < 0 ? bar : firstMissing;
        }
      }
      boolean perBar = eachBar && !(place instanceof At.Every);
      if (perBar ? firstMissing < 0 && firstOutside < 0 : found > 0) {
        return true;
      }
      if (firstMissing >= 0) {
        String count = place instanceof At.One one ? one.count().count().toString() : placeText();
        misses.nothing(place.span(), count, target, firstMissing, what, null);
      } else {
        misses.outsideBar(place, firstOutside);
      }
      return false;
    }

    private String placeText() {
      return line.spot(place.span()).text();
    }

    private boolean findIn(int bar) {
      List<Stroke> here = inBar(bar);
      if (place instanceof At.Every every) {
        return take(here, s -> reader.hasSyllable(s, every.syllable()));
      }
      if (place instanceof At.Range range) {
        CountReader.Reading from = one(range.from(), bar, false);
        CountReader.Reading to = ambiguous || from == null ? null : one(range.to(), bar, true);
        if (from == null || to == null) {
          outside = true;
          return false;
        }
        Time first = from.place();
        Time last = to.place();
        return take(
            here,
            s -> {
              Time start = reader.slotStart(s);
              return (start.compareTo(first) >= 0 || s.at().compareTo(first) >= 0)
                  && (to.inGroup() ? s.at() : start).compareTo(last) <= 0;
            });
      }
      CountWord word = ((At.One) place).count();
      CountReader.Reading reading = one(word, bar, false);
      if (reading == null) {
        outside = true;
        return false;
      }
      return take(here, s -> reader.meets(s, reading));
    }

    private boolean take(List<Stroke> here, Predicate<Stroke> there) {
      boolean any = false;
      for (Stroke stroke : here) {
        if (wanted.test(stroke) && there.test(stroke)) {
          chosen.add(stroke);
          any = true;
        }
      }
      return any;
    }

    /** The one reading of a count, null if there is none; readings that meet nothing count less. */
    private CountReader.@Nullable Reading one(CountWord word, int bar, boolean last) {
      List<Stroke> here = inBar(bar);
      List<CountReader.Reading> readings = reader.read(word.count(), bar, here, target);
      if (readings.size() < 2) {
        return readings.isEmpty() ? null : readings.get(0);
      }
      List<CountReader.Reading> meeting = new ArrayList<>();
      for (CountReader.Reading reading : readings) {
        if (here.stream().anyMatch(s -> target.test(s) && reader.meets(s, reading))) {
          meeting.add(reading);
        }
      }
      if (meeting.size() > 1) {
        ambiguous = true;
        misses.ambiguous(word, bar, meeting);
        return null;
      }
      return meeting.isEmpty() ? readings.get(last ? readings.size() - 1 : 0) : meeting.get(0);
    }
  }
}
