package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count.Syllable;
import tabor.syntax.At;
import tabor.syntax.CountRef;
import tabor.syntax.Edit;
import tabor.syntax.TargetRef;

/** The parts of edits that choices are made of, and edits with other ones. */
final class EditParts {
  private EditParts() {}

  /** The bars that an edit names; null for none, and for edits of one bar. */
  static At.@Nullable Bars bars(Edit edit) {
    if (edit instanceof Edit.Add add) {
      return add.bars();
    }
    if (edit instanceof Edit.Move move) {
      return move.bars();
    }
    if (edit instanceof Edit.Fill fill) {
      return fill.bars();
    }
    At at = at(edit);
    return at == null ? null : at.bars();
  }

  /** The counts that an edit names, ends of ranges too, in the order written. */
  static List<CountRef> counts(Edit edit) {
    if (edit instanceof Edit.Move move) {
      return List.of(move.from(), move.to());
    }
    List<CountRef> counts = new ArrayList<>();
    for (At.Place place : items(edit)) {
      if (place instanceof At.One one) {
        counts.add(one.count());
      } else if (place instanceof At.Range range) {
        counts.add(range.from());
        counts.add(range.to());
      }
    }
    return counts;
  }

  /** The syllables of ours that an edit names of every beat. */
  static List<At.EverySyllable> everySyllables(Edit edit) {
    List<At.EverySyllable> syllables = new ArrayList<>();
    for (At.Place place : items(edit)) {
      if (place instanceof At.EverySyllable every && every.syllable() != Syllable.NONE) {
        syllables.add(every);
      }
    }
    return syllables;
  }

  private static List<At.Place> items(Edit edit) {
    At.Places places = edit.places();
    return places == null ? List.of() : places.items();
  }

  private static @Nullable At at(Edit edit) {
    return edit instanceof Edit.Placed placed ? placed.at() : null;
  }

  /** Whose strokes an edit chooses among. */
  static List<TargetRef> targets(Edit edit) {
    if (edit instanceof Edit.Plays plays) {
      return List.of(plays.who());
    }
    if (edit instanceof Edit.Split split) {
      return List.of(new TargetRef.OfLimb(split.limb()));
    }
    if (edit instanceof Edit.Change change) {
      return change.targets();
    }
    if (edit instanceof Edit.Follows follows) {
      return List.of(new TargetRef.OfLimb(follows.limb()));
    }
    if (edit instanceof Edit.Take take) {
      return take.targets();
    }
    if (edit instanceof Edit.Move move) {
      return move.targets();
    }
    return edit instanceof Edit.Add add ? List.of(add.what()) : List.of();
  }

  /** An edit in other bars. */
  static Edit withBars(Edit edit, At.Bars bars) {
    if (edit instanceof Edit.Move move) {
      return new Edit.Move(move.targets(), move.from(), move.to(), bars, move.span());
    }
    if (edit instanceof Edit.Fill fill) {
      return new Edit.Fill(fill.section(), bars, fill.from(), fill.span());
    }
    At at = at(edit);
    return at == null ? edit : with(edit, new At(at.places(), bars, at.where()));
  }

  /**
   * An edit at other places.
   *
   * @param bars the bars in which they are; null for those that the edit names
   */
  static Edit withPlaces(Edit edit, At.Places places, At.@Nullable Bars bars) {
    if (edit instanceof Edit.Add add) {
      return new Edit.Add(
          add.what(),
          add.with(),
          add.level(),
          places,
          bars == null ? add.bars() : bars,
          add.span());
    }
    At at = at(edit);
    return at == null
        ? edit
        : with(edit, new At(places, bars == null ? at.bars() : bars, at.where()));
  }

  private static Edit with(Edit edit, At at) {
    if (edit instanceof Edit.Plays plays) {
      return new Edit.Plays(plays.who(), plays.surface(), plays.level(), at, plays.span());
    }
    if (edit instanceof Edit.Split split) {
      return new Edit.Split(split.limb(), split.level(), split.surfaces(), at, split.span());
    }
    if (edit instanceof Edit.Change change) {
      return new Edit.Change(change.verb(), change.targets(), at, change.span());
    }
    if (edit instanceof Edit.Follows follows) {
      return new Edit.Follows(follows.surface(), follows.limb(), at, follows.span());
    }
    return edit instanceof Edit.Take take
        ? new Edit.Take(take.targets(), take.section(), at, take.span())
        : edit;
  }
}
