package tabor.emit.musicxml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.DirectionKind;
import tabor.emit.musicxml.ScoreFile.Dynamics;
import tabor.emit.musicxml.ScoreFile.Metronome;
import tabor.emit.musicxml.ScoreFile.Swing;
import tabor.emit.musicxml.ScoreFile.Wedge;
import tabor.emit.musicxml.ScoreFile.Words;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.notation.Bar;
import tabor.notation.Written;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Tempo, feel, dynamics and hairpins as directions. */
final class Marks {
  /** Wedges that may be open at once have different numbers. */
  private static final int WEDGES = 6;

  private Marks() {}

  /** A direction and its distance from the barline. */
  record Placed(Time at, int rank, DirectionKind kind) {}

  /**
   * Dynamics and hairpins that stand in a bar, in order of time; at one place a hairpin ends, a
   * dynamic stands, and the next hairpin starts.
   */
  static List<Placed> in(Groove groove, Bar bar) {
    List<Placed> placed = new ArrayList<>();
    for (Loudness.Mark mark : groove.marks()) {
      if (mark.bar() == bar.number()) {
        placed.add(new Placed(mark.at(), 1, new Dynamics(mark.loudness().word())));
      }
    }
    for (int i = 0; i < groove.hairpins().size(); i++) {
      Loudness.Hairpin hairpin = groove.hairpins().get(i);
      int number = i % WEDGES + 1;
      if (hairpin.fromBar() == bar.number()) {
        String type = hairpin.grows() ? "crescendo" : "diminuendo";
        placed.add(new Placed(hairpin.from(), 2, new Wedge(type, number)));
      }
      if (hairpin.toBar() == bar.number()) {
        placed.add(new Placed(hairpin.to(), 0, new Wedge("stop", number)));
        boolean marked =
            groove.marks().stream()
                .anyMatch(m -> m.bar() == hairpin.toBar() && m.at().equals(hairpin.to()));
        if (!marked) {
          placed.add(new Placed(hairpin.to(), 1, new Dynamics(hairpin.target().word())));
        }
      }
    }
    placed.sort(Comparator.comparing(Placed::at).thenComparing(Placed::rank));
    return placed;
  }

  /** The tempo mark; a counted value that no single note shows is told in quarters. */
  static Metronome metronome(Tempo tempo) {
    String quarters = tempo.quartersPerMinute().decimal();
    for (Written.Type type : Written.Type.values()) {
      for (int dots = 0; dots < 2; dots++) {
        if (new Written(type, dots).length().equals(tempo.beat())) {
          return new Metronome(
              MusicXmlNames.type(type), dots == 1, tempo.perMinute().decimal(), quarters);
        }
      }
    }
    return new Metronome("quarter", false, quarters, quarters);
  }

  /**
   * The feel in words and for playback.
   *
   * @param swing what the section can be played with; null where the format cannot say it
   * @param before what was played up to here; null for straight
   */
  static Words feel(Feel feel, @Nullable Swing swing, @Nullable Swing before) {
    Swing straight = before == null ? null : new Swing(1, 1, "eighth");
    if (feel.isStraight()) {
      return new Words(feel.words(), false, straight);
    }
    return swing == null
        ? new Words(feel.words() + " (played straight by this file)", false, straight)
        : new Words(feel.words(), false, swing);
  }
}
