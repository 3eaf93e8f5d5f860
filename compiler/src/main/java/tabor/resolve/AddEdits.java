package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Level;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Count;
import tabor.syntax.At;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Word;

/** The edits that bring new strokes: {@code add} and {@code follows}. */
final class AddEdits {
  private final Work work;
  private final Line line;
  private final List<Stroke> given = new ArrayList<>();
  private final List<Stroke> known;

  AddEdits(Work work, Line line) {
    this.work = work;
    this.line = line;
    this.known = new ArrayList<>();
  }

  /** What is added: on which surface, by whom if that is said, how loud if that is said. */
  private record What(
      Surface surface, @Nullable Limb limb, @Nullable Level level, Predicate<Stroke> target) {}

  void add(Edit.Add edit) {
    What what = what(edit);
    At.Places places = edit.at().places();
    if (what == null || places == null) {
      return;
    }
    if (what.limb() != null) {
      Dealing.see(work, what.limb());
    }
    known.addAll(work.strokes());
    Selector selector = new Selector(work, line);
    Set<Integer> bars = selector.bars(edit.at().bars());
    if (bars == null) {
      return;
    }
    boolean eachBar = edit.at().bars() != null;
    boolean[] anything = new boolean[1];
    for (At.Place place : places.items()) {
      if (!addAt(place, what, bars, eachBar, selector, anything)) {
        return;
      }
    }
    if (!anything[0]) {
      work.problems.add(
          work.problems.make(
              Code.ALREADY_THERE, line, edit.span(), "what this line adds is there already"));
    }
    finish();
  }

  private void finish() {
    work.strokes(known);
    work.add(given);
  }

  private @Nullable What what(Edit.Add edit) {
    Word named = edit.what();
    Limb self = Subject.limb(named.text());
    Level level = Edits.written(edit.level());
    if (self != null) {
      Surface plays = work.plays(self);
      return plays == null ? null : new What(plays, self, level, s -> s.limb() == self);
    }
    if (named.text().equals("hands") || named.text().equals("feet")) {
      work.partial = true;
      work.problems.add(
          work.problems
              .make(
                  Code.SYNTAX,
                  line,
                  named.span(),
                  "“add " + named.text() + "” does not say which of the two strikes")
              .help("name one limb, or a surface: add snare at 2"));
      return null;
    }
    Surface surface = Edits.surface(work, line, named);
    if (surface == null) {
      return null;
    }
    Subject subject = Subject.of(named.text(), work.kit());
    Predicate<Stroke> target = subject == null ? s -> false : subject::matches;
    Word with = edit.with();
    if (with == null) {
      return new What(surface, null, level, target);
    }
    Limb limb = Edits.limb(work, line, with);
    if (limb == null) {
      return null;
    }
    // “right hand” is read as “right”, but says more than the bare word.
    boolean bare = with.text().equals(line.spot(with.span()).text());
    Limb meant =
        bare && surface.isFoot() ? (limb.isRight() ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT) : limb;
    return Edits.fits(work, line, with.span(), meant, surface)
        ? new What(surface, meant, level, target)
        : null;
  }

  private boolean addAt(
      At.Place place,
      What what,
      Set<Integer> bars,
      boolean eachBar,
      Selector selector,
      boolean[] anything) {
    int found = 0;
    int missing = -1;
    for (int bar : bars) {
      boolean here = false;
      if (place instanceof At.Every every) {
        for (int beat = work.firstBeat(bar); beat < work.grid.beats(); beat++) {
          Count count = Count.of(beat + 1, every.syllable());
          CountWord word = new CountWord(count, every.span());
          CountReader.Reading reading = reading(word, bar, what, selector);
          if (reading == AMBIGUOUS) {
            return false;
          }
          if (reading != null) {
            here = true;
            anything[0] |= put(bar, reading, what);
          }
        }
      } else if (place instanceof At.One one) {
        CountReader.Reading reading = reading(one.count(), bar, what, selector);
        if (reading == AMBIGUOUS) {
          return false;
        }
        if (reading != null) {
          here = true;
          anything[0] |= put(bar, reading, what);
        }
      }
      if (here) {
        found++;
      } else if (missing < 0) {
        missing = bar;
      }
      if (work.tooMany(given.size(), line.spot())) {
        return false;
      }
    }
    boolean each = eachBar && place instanceof At.One;
    if (found == 0 || (each && missing >= 0)) {
      selector.misses().outsideBar(place, missing);
      return false;
    }
    return true;
  }

  private static final CountReader.Reading AMBIGUOUS =
      new CountReader.Reading(
          tabor.rhythm.Time.ZERO,
          tabor.rhythm.Time.ZERO,
          new tabor.rhythm.Slot(new tabor.rhythm.Division(0, 1, 1), 0, List.of()),
          false);

  private CountReader.@Nullable Reading reading(
      CountWord word, int bar, What what, Selector selector) {
    List<CountReader.Reading> readings =
        selector.reader().read(word.count(), bar, selector.inBar(bar), what.target());
    if (readings.size() > 1) {
      selector.misses().ambiguous(word, bar, readings);
      return AMBIGUOUS;
    }
    return readings.isEmpty() ? null : readings.get(0);
  }

  /** Adds one stroke; true if that changed anything. */
  private boolean put(int bar, CountReader.Reading reading, What what) {
    Level level = what.level() == null ? Level.PLAIN : what.level();
    Limb limb = what.limb();
    int there = find(bar, reading.place(), what.surface(), limb);
    if (there >= 0) {
      Stroke old = known.get(there);
      boolean takes = limb != null && old.open();
      boolean levels = what.level() != null && old.level() != what.level();
      Stroke now = takes ? old.by(limb, false).fixed() : old;
      known.set(there, levels ? now.at(level) : now);
      return takes || levels;
    }
    Limb first = limb != null ? limb : what.surface().isFoot() ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND;
    Stroke stroke =
        new Stroke(
            bar,
            reading.place(),
            reading.length(),
            first,
            what.surface(),
            level,
            Ornaments.NONE,
            reading.slot(),
            line.spot(),
            false);
    given.add(limb != null ? stroke : stroke.opened());
    return true;
  }

  /** The stroke that an added one would fall on: open, by that limb, or by any if none is named. */
  private int find(int bar, tabor.rhythm.Time at, Surface surface, @Nullable Limb limb) {
    int low = 0;
    int high = known.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      Stroke one = known.get(middle);
      if (one.bar() < bar || (one.bar() == bar && one.at().before(at))) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    for (int i = low; i < known.size(); i++) {
      Stroke one = known.get(i);
      if (one.bar() != bar || !one.at().equals(at)) {
        return -1;
      }
      if (one.surface().name().equals(surface.name())
          && (limb == null || one.open() || one.limb() == limb)) {
        return i;
      }
    }
    return -1;
  }

  void follows(Edit.Follows edit) {
    Surface surface = Edits.surface(work, line, edit.surface());
    Limb limb = Edits.limb(work, line, edit.limb());
    if (surface == null || limb == null) {
      return;
    }
    List<Stroke> chosen = Dealing.chosen(work, line, limb, edit.at(), edit.limb().span());
    if (chosen == null || work.tooMany(chosen.size(), line.spot())) {
      return;
    }
    known.addAll(work.strokes());
    for (Stroke leader : chosen) {
      if (find(leader.bar(), leader.at(), surface, null) >= 0) {
        continue;
      }
      Stroke stroke =
          new Stroke(
              leader.bar(),
              leader.at(),
              work.grid.placeLength(leader.slot()),
              surface.isFoot() ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND,
              surface,
              Level.PLAIN,
              Ornaments.NONE,
              leader.slot(),
              line.spot(),
              false);
      given.add(stroke.opened());
    }
    finish();
  }
}
