package tabor.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import tabor.groove.Ornament;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.syntax.Verb;

/**
 * Writes random edits of one groove and its steps, at places that exist. It counts on a kick on 1
 * of bar 1, and a plain right hand on 1 and left hand on 2 there; a step that may take these away
 * is the last of its chain.
 */
final class StepWriter {
  private final int meter;
  private final int beats;
  private int bars;
  private final boolean hands;
  private String last;
  private boolean spent;

  StepWriter(String groove, int meter, int beats, int bars, boolean hands) {
    this.last = groove;
    this.meter = meter;
    this.beats = beats;
    this.bars = bars;
    this.hands = hands;
  }

  boolean isSpent() {
    return spent;
  }

  String last() {
    return last;
  }

  void named(String name) {
    last = name;
  }

  int meter() {
    return meter;
  }

  /** Some edits; {@code others} are grooves of the same meter. */
  String edits(Random dice, List<String> others) {
    List<String> safe = safe(dice);
    StringBuilder text = new StringBuilder();
    int count = 1 + dice.nextInt(3);
    for (int i = 0; i < count; i++) {
      text.append("  ").append(safe.get(dice.nextInt(safe.size()))).append('\n');
    }
    if (dice.nextInt(3) == 0) {
      List<String> takingAway = lasting(others);
      text.append("  ").append(takingAway.get(dice.nextInt(takingAway.size()))).append('\n');
      spent = true;
    } else if (dice.nextInt(4) == 0) {
      bars = Math.min(8, bars * 2);
      text.append("  bars ").append(bars).append('\n');
    }
    return text.toString();
  }

  private List<String> safe(Random dice) {
    List<String> edits = new ArrayList<>();
    edits.add("add kick at " + (1 + dice.nextInt(beats)));
    edits.add("add hihat.foot with left foot at " + (1 + dice.nextInt(beats)) + " in bar 1");
    edits.add("add kick accented at 2 in every 1st bar");
    edits.add("accent kick at 1 in bar 1");
    edits.add("ghost  kick at 1");
    edits.add("plain kick at 1 in bars 1 to 1");
    edits.add("dynamic mp at 2 in bar 1");
    edits.add("crescendo to f from 1 in bar 1 to 2 in bar 1");
    edits.add("diminuendo to p from 1 to 2");
    edits.add("text \"Slowly at first.\"   # a hint");
    edits.add("levels accent 120 ghost 28");
    edits.add("tempo " + (60 + dice.nextInt(20)));
    if (hands) {
      edits.add("right plays ride");
      edits.add("right hand  plays hihat at 1 in bar 1");
      edits.add("left plays snare ghosted");
      edits.add("left plays tom1 at 2 in bar 1");
      edits.add("split left between tom1 and floor at 2 in bar 1");
      edits.add("split right accented between ride and hihat in bar 1");
      edits.add("accent right, left at 1 in bar 1");
      edits.add("accent all at every beat in bar 1");
      edits.add("plain hands at 1 to 2 in bar 1");
      edits.add("kick follows right at 1 in bar 1");
      edits.add("ghost left at 2 in bar 1");
    }
    return edits;
  }

  private List<String> lasting(List<String> others) {
    List<String> edits = new ArrayList<>();
    for (Verb verb : Verb.values()) {
      if (takes(verb, "kick")) {
        edits.add(verb.word() + " kick" + (verb.kind() == Verb.Kind.DROP ? "" : " at 1 in bar 1"));
      }
      if (hands && takes(verb, "snare")) {
        edits.add(verb.word() + " left at 2 in bar 1");
      }
    }
    edits.add("drop all at 1 in bar 1");
    edits.add("only kick, feet");
    edits.add("shift kick later by 1 beat");
    edits.add("shift all earlier by 1 bar");
    edits.add("move kick from 1 to 2 in bar 1");
    if (hands) {
      edits.add("swap hands");
      edits.add("only hands");
    }
    for (String other : others) {
      edits.add("take hands from " + other);
      edits.add("fill " + other + " in last bar");
      edits.add("fill " + other + " in bar 1 from 2");
    }
    return edits;
  }

  /** True for what can always be done: nothing that needs the other hand, which may not be free. */
  private static boolean takes(Verb verb, String surface) {
    Surface struck = Objects.requireNonNull(Kits.FIVE_PIECE.surface(surface));
    Ornament added = verb.ornament();
    boolean other = added != null && (added.graceNotes() > 0 || added.takesBothLimbs());
    return !other && verb.takes(struck, Kits.FIVE_PIECE);
  }
}
