package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

class OpenHandedTest {
  private static List<Stroke> deal(Groove groove) {
    return OpenHanded.deal(groove.setting(), groove.bars(), Time.ZERO, groove.strokes());
  }

  @Test
  void theLeftHandTakesTheHiHatAndTheRightTheSnare() {
    Groove groove =
        new Played()
            .part(RIGHT_HAND, "hihat", "xx xx xx xx")
            .part(LEFT_HAND, "snare", ". x . x")
            .part(RIGHT_FOOT, "kick", "x . x .")
            .groove();
    for (Stroke stroke : deal(groove)) {
      assertThat(stroke.limb())
          .as(stroke.surface().name())
          .isEqualTo(
              switch (stroke.surface().name()) {
                case "hihat" -> LEFT_HAND;
                case "snare" -> RIGHT_HAND;
                default -> RIGHT_FOOT;
              });
    }
  }

  @Test
  void bothHandsOnTheHiHatStay() {
    Groove groove =
        new Played()
            .part(RIGHT_HAND, "hihat", "x x . .")
            .part(LEFT_HAND, "hihat", "x . . .")
            .groove();
    assertThat(deal(groove).stream().map(Stroke::limb))
        .containsExactly(RIGHT_HAND, LEFT_HAND, LEFT_HAND);
  }

  @Test
  void withoutAHiHatNothingChanges() {
    Groove groove = new Played().part(LEFT_HAND, "ride", "x x x x").groove();
    assertThat(deal(groove)).isEqualTo(groove.strokes());
  }
}
