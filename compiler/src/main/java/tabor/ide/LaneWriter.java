package tabor.ide;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Division;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LimbRef;
import tabor.syntax.Subject;

/**
 * Writes strokes as parts, each in the word it stands in, so that reading the parts gives the same
 * strokes again. Strokes that cannot share a part, because their words are divided differently, are
 * written in a second part of the same heading.
 */
final class LaneWriter {
  private static final Span NOWHERE = new Span(0, 0);

  private final Groove groove;
  private final int bars;

  /** Writes bars of a groove's length. */
  LaneWriter(Groove groove) {
    this.groove = groove;
    this.bars = groove.bars();
  }

  /** One part each for the limbs; empty if a surface has no letter. */
  Optional<List<String>> byLimb(List<Stroke> strokes) {
    Map<String, List<Stroke>> parts = new LinkedHashMap<>();
    for (Limb limb : Limb.values()) {
      String name = limb.isHand() ? new LimbRef(limb, false, NOWHERE).words() : limb.words();
      parts.put(name, strokes.stream().filter(s -> s.limb() == limb).toList());
    }
    return write(parts, this::kitLetter);
  }

  /** One part each for the surfaces; strokes whose limb Tabor chose stay open. */
  Optional<List<String>> bySurface(List<Stroke> strokes) {
    Map<String, List<Stroke>> parts = new LinkedHashMap<>();
    for (String surface : groove.setting().kit().surfaces().keySet()) {
      parts.put(surface, strokes.stream().filter(s -> s.surface().name().equals(surface)).toList());
    }
    return write(parts, LaneWriter::limbLetter);
  }

  /** A part with this heading. */
  Optional<List<String>> under(Subject subject, List<Stroke> strokes) {
    Map<String, List<Stroke>> parts = new LinkedHashMap<>();
    parts.put(subject.words(), strokes);
    boolean limb = subject instanceof Subject.OfLimb;
    boolean line = subject instanceof Subject.Line;
    return write(
        parts, limb ? this::kitLetter : line ? LaneWriter::lineLetter : LaneWriter::limbLetter);
  }

  private Optional<String> kitLetter(Stroke stroke) {
    char letter = groove.setting().kit().letterOf(stroke.surface());
    return letter == 0 ? Optional.empty() : Optional.of(String.valueOf(letter));
  }

  private static Optional<String> limbLetter(Stroke stroke) {
    return Optional.of(stroke.dealt() ? "x" : stroke.limb().isRight() ? "r" : "l");
  }

  private static Optional<String> lineLetter(Stroke stroke) {
    return Optional.of(
        switch (stroke.limb()) {
          case RIGHT_HAND -> "r";
          case LEFT_HAND -> "l";
          case RIGHT_FOOT -> "k";
          case LEFT_FOOT -> "p";
        });
  }

  private Optional<List<String>> write(
      Map<String, List<Stroke>> parts, Function<Stroke, Optional<String>> letter) {
    int width = 0;
    for (Map.Entry<String, List<Stroke>> part : parts.entrySet()) {
      width = part.getValue().isEmpty() ? width : Math.max(width, part.getKey().length());
    }
    List<String> lines = new ArrayList<>();
    for (Map.Entry<String, List<Stroke>> part : parts.entrySet()) {
      if (part.getValue().stream().anyMatch(stroke -> letter.apply(stroke).isEmpty())) {
        return Optional.empty();
      }
      for (Layer layer : layers(part.getValue())) {
        String name = part.getKey() + " ".repeat(width - part.getKey().length());
        lines.add(name + " : " + layer.text(letter));
      }
    }
    return Optional.of(lines);
  }

  private record Place(int bar, int beat) {}

  private List<Layer> layers(List<Stroke> strokes) {
    List<Layer> layers = new ArrayList<>();
    List<Stroke> ordered = new ArrayList<>(strokes);
    ordered.sort(Stroke.ORDER);
    for (Stroke stroke : ordered) {
      if (layers.stream().noneMatch(layer -> layer.take(stroke))) {
        Layer layer = new Layer();
        if (layer.take(stroke)) {
          layers.add(layer);
        }
      }
    }
    return layers;
  }

  /** Strokes that fit into one part. */
  private final class Layer {
    private final Map<Place, Division> words = new HashMap<>();
    private final List<Stroke> strokes = new ArrayList<>();
    private final Map<Stroke, Stroke> pairs = new HashMap<>();

    boolean take(Stroke stroke) {
      Division word = stroke.slot().division();
      for (int i = 0; i < word.beats(); i++) {
        Division there = words.get(new Place(stroke.bar(), word.beat() + i));
        if (there != null && !there.equals(word)) {
          return false;
        }
      }
      for (Stroke other : strokes) {
        if (other.bar() == stroke.bar() && clash(other, stroke)) {
          return pair(other, stroke);
        }
      }
      for (int i = 0; i < word.beats(); i++) {
        words.put(new Place(stroke.bar(), word.beat() + i), word);
      }
      strokes.add(stroke);
      return true;
    }

    /** True if both want one slot, or one is a group where the other is a stroke. */
    private boolean clash(Stroke a, Stroke b) {
      Slot x = a.slot();
      Slot y = b.slot();
      if (!x.division().equals(y.division()) || x.index() != y.index()) {
        return false;
      }
      int shared = Math.min(x.parts().size(), y.parts().size());
      for (int i = 0; i < shared; i++) {
        if (x.parts().get(i).of() != y.parts().get(i).of()) {
          return true;
        }
        if (x.parts().get(i).index() != y.parts().get(i).index()) {
          return false;
        }
      }
      return true;
    }

    /** Two limbs in one slot are {@code b}, if all else is the same. */
    private boolean pair(Stroke first, Stroke second) {
      boolean alike =
          first.slot().equals(second.slot())
              && first.surface().equals(second.surface())
              && first.level() == second.level()
              && first.ornaments().equals(second.ornaments())
              && first.length().equals(second.length())
              && first.limb() == second.limb().other()
              && !first.dealt()
              && !second.dealt()
              && !pairs.containsKey(first);
      if (alike) {
        pairs.put(first, second);
      }
      return alike;
    }

    String text(Function<Stroke, Optional<String>> letter) {
      List<String> written = new ArrayList<>();
      for (int bar = groove.firstBar(); bar <= bars; bar++) {
        List<String> beats = new ArrayList<>();
        for (int beat = firstBeat(bar); beat < groove.meter(bar).beatCount(); ) {
          Division word = words.get(new Place(bar, beat));
          beats.add(word == null ? empty(bar, beat) : word(bar, word, letter));
          beat += word == null ? 1 : word.beats();
        }
        written.add(String.join(" ", beats));
      }
      return String.join(" | ", written);
    }

    private int firstBeat(int bar) {
      return bar > 0 ? 0 : groove.meter().beatAt(groove.meter().bar().minus(groove.pickup()));
    }

    private String empty(int bar, int beat) {
      return held(groove.position(bar, groove.meter(bar).beatStart(beat))) ? "-" : ".";
    }

    /** True if a stroke from before still goes on here. */
    private boolean held(Time position) {
      for (Stroke stroke : strokes) {
        Time start = groove.position(stroke);
        if (start.before(position) && position.before(start.plus(stroke.length()))) {
          return true;
        }
      }
      return false;
    }

    private String word(int bar, Division word, Function<Stroke, Optional<String>> letter) {
      Time start = groove.meter(bar).beatStart(word.beat());
      Time end = groove.meter(bar).beatStart(word.beat() + word.beats());
      Time slot = end.minus(start).over(word.slots());
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < word.slots(); i++) {
        int index = i;
        List<Stroke> inSlot =
            strokes.stream()
                .filter(s -> s.bar() == bar && s.slot().division().equals(word))
                .filter(s -> s.slot().index() == index)
                .toList();
        text.append(cell(bar, inSlot, 0, start.plus(slot.times(i)), slot, letter));
      }
      return word.beats() == 1 ? text.toString() : text + ":" + word.beats();
    }

    private String cell(
        int bar,
        List<Stroke> inside,
        int depth,
        Time at,
        Time length,
        Function<Stroke, Optional<String>> letter) {
      if (inside.isEmpty()) {
        return held(groove.position(bar, at)) ? "-" : ".";
      }
      Stroke first = inside.get(0);
      if (first.slot().parts().size() == depth) {
        return sign(first, pairs.get(first), letter);
      }
      int of = first.slot().parts().get(depth).of();
      Time part = length.over(of);
      StringBuilder text = new StringBuilder("{");
      for (int i = 0; i < of; i++) {
        int index = i;
        List<Stroke> inPart =
            inside.stream().filter(s -> s.slot().parts().get(depth).index() == index).toList();
        text.append(cell(bar, inPart, depth + 1, at.plus(part.times(i)), part, letter));
      }
      return text.append('}').toString();
    }
  }

  private static String sign(
      Stroke stroke, @Nullable Stroke pair, Function<Stroke, Optional<String>> letter) {
    String bare = pair != null ? "b" : letter.apply(stroke).orElse("x");
    String levelled =
        stroke.level() == Level.ACCENT
            ? bare.toUpperCase(Locale.ROOT)
            : stroke.level() == Level.GHOST ? "(" + bare + ")" : bare;
    StringBuilder text = new StringBuilder("'".repeat(stroke.ornaments().graceNotes()));
    text.append(levelled);
    for (Beat.Suffix suffix : Beat.Suffix.values()) {
      if (stroke.ornaments().list().stream()
          .anyMatch(ornament -> Beat.Suffix.of(ornament) == suffix)) {
        text.append(suffix.sign());
      }
    }
    return text.toString();
  }
}
