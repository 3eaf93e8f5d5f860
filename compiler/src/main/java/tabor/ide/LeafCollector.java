package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.ide.Leaf.Role;
import tabor.syntax.At;
import tabor.syntax.Beat;
import tabor.syntax.CountWord;
import tabor.syntax.Num;
import tabor.syntax.SettingStatement;
import tabor.syntax.Text;
import tabor.syntax.Word;

/** Gathers the leaves of the small nodes that many kinds of line share; what is null has none. */
final class LeafCollector implements Beat.Cases<@Nullable Void> {
  private final List<Leaf> found = new ArrayList<>();

  /** The leaves so far, in order of place. */
  List<Leaf> inOrder() {
    found.sort(Comparator.comparingInt(leaf -> leaf.span().start()));
    return found;
  }

  @Nullable Void leaf(Leaf leaf) {
    found.add(leaf);
    return null;
  }

  @Nullable Void word(Role role, @Nullable Word word) {
    if (word != null) {
      found.add(Leaf.of(role, word.text(), word.span()));
    }
    return null;
  }

  @Nullable Void target(@Nullable Word word) {
    return word == null ? null : word(Leaves.isLimb(word.text()) ? Role.LIMB : Role.SURFACE, word);
  }

  @Nullable Void targets(List<Word> words) {
    words.forEach(this::target);
    return null;
  }

  @Nullable Void number(@Nullable Num number) {
    if (number != null) {
      found.add(Leaf.of(Role.NUMBER, number.value().toString(), number.span()));
    }
    return null;
  }

  @Nullable Void text(@Nullable Text text) {
    if (text != null) {
      found.add(Leaf.of(Role.TEXT, text.value(), text.span()));
    }
    return null;
  }

  @Nullable Void count(@Nullable CountWord count) {
    if (count != null) {
      found.add(new Leaf(Role.COUNT, count.count().toString(), count.span(), count.count(), null));
    }
    return null;
  }

  @Nullable Void at(At at) {
    if (at.places() != null) {
      for (At.Place place : at.places().items()) {
        if (place instanceof At.One one) {
          count(one.count());
        } else if (place instanceof At.Range range) {
          count(range.from());
          count(range.to());
        }
      }
    }
    word(Role.LEVEL, at.where());
    return bars(at.bars());
  }

  @Nullable Void bars(At.@Nullable Bars bars) {
    if (bars instanceof At.Listed listed) {
      listed.bars().forEach(this::number);
    } else if (bars instanceof At.Through through) {
      number(through.from());
      number(through.to());
    } else if (bars instanceof At.EveryNth nth) {
      number(nth.n());
    }
    return null;
  }

  void element(Beat.Element element) {
    element.match(this);
  }

  @Nullable Void counted(SettingStatement.@Nullable Tempo tempo) {
    if (tempo != null) {
      word(Role.VALUE, tempo.value());
      number(tempo.perMinute());
    }
    return null;
  }

  @Override
  public @Nullable Void hit(Beat.Hit hit) {
    found.add(new Leaf(Role.HIT, String.valueOf(hit.letter()), hit.span(), null, hit));
    return null;
  }

  @Override
  public @Nullable Void rest(Beat.Rest rest) {
    found.add(Leaf.of(Role.REST, ".", rest.span()));
    return null;
  }

  @Override
  public @Nullable Void hold(Beat.Hold hold) {
    found.add(Leaf.of(Role.HOLD, "-", hold.span()));
    return null;
  }

  @Override
  public @Nullable Void group(Beat.Group group) {
    group.elements().forEach(this::element);
    return null;
  }

  @Override
  public @Nullable Void ghosts(Beat.Ghosts ghosts) {
    ghosts.elements().forEach(this::element);
    return null;
  }
}
