package tabor.emit.engrave;

import java.util.List;
import tabor.notation.Score;

/** Lays a score out on staves. */
public final class Engraver {
  private Engraver() {}

  /** Engraves a section. */
  public static Engraving engrave(Score score, Look look, TextMetrics font) {
    Drawing empty = new Drawing(look.width(), 10, score.groove().caption(), "", List.of());
    return new Engraving(
        score,
        List.of(new Engraving.StaffSystem(empty, List.of(), 4)),
        score.groove().caption(),
        "");
  }
}
