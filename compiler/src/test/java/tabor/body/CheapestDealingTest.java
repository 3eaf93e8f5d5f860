package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.groove.Stroke;
import tabor.kit.Limb;

/**
 * No dealing of a section costs less by the points of docs/body.md than the one that is taken: each
 * is held against all others, added up by {@link Reckoning}. The sections come from a fixed seed.
 */
class CheapestDealingTest {
  private static final List<String> DRUMS = List.of("snare", "tom1", "tom2", "floor");
  private static final List<String> HANDS =
      List.of("snare", "hihat", "ride", "tom1", "floor", "crash", "ride.bell", "snare.cross");
  private static final List<String> FEET = List.of("kick", "hihat.foot");

  /**
   * A bar of up to nine strokes, several at once, on up to four surfaces. Some parts have longer
   * places than the others, so that their rolls last while others strike.
   */
  private static Dealt section(
      Random random, List<String> all, String signs, int places, int tempo) {
    Dealt section = new Dealt().tempo(tempo);
    int surfaces = 1 + random.nextInt(Math.min(4, all.size()));
    int first = random.nextInt(all.size());
    int start = random.nextInt(4 * places - 7);
    int most = 9;
    boolean dense = random.nextInt(3) > 0;
    int[] struck = new int[4 * places];
    for (int s = 0; s < surfaces; s++) {
      int step = random.nextInt(3) > 0 ? 1 : places % 2 == 0 && random.nextBoolean() ? 2 : places;
      boolean inTurn = random.nextInt(6) == 0;
      StringBuilder words = new StringBuilder();
      for (int i = 0; i < 4 * places; i += step) {
        boolean here =
            (dense ? i + step > start && i < start + 8 : i % 2 == 0)
                && random.nextInt(surfaces + 1) == 0
                && struck[i] < 3
                && most > 0;
        words.append(i > 0 && i % places == 0 ? " " : "");
        words.append(here ? signs.charAt(random.nextInt(signs.length())) : '.');
        most -= here ? 1 : 0;
        struck[i] += here ? 1 : 0;
      }
      String surface = all.get((first + s * (1 + surfaces % 2)) % all.size());
      if (inTurn) {
        section.alternating(surface, words.toString());
      } else {
        section.part(surface, words.toString());
      }
    }
    return section;
  }

  private static boolean isClear(Dealt section) {
    for (Stroke a : section.given) {
      for (Stroke b : section.given) {
        boolean together = a.bar() == b.bar() && a.at().equals(b.at());
        if (a != b && together && a.limb() == b.limb()) {
          return false;
        }
      }
    }
    return !section.open.isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "hands, xxxx, 4, 60, 150",
    "hands, xxxx, 4, 135, 150",
    "hands, xxxxrl, 4, 90, 200",
    "hands, xxxxrl, 4, 180, 150",
    "hands, xxxxrl, 8, 90, 150",
    "hands, xxrl, 3, 120, 150",
    "hands, xxxxfdorl, 4, 90, 250",
    "hands, xxxfdorl, 8, 70, 250",
    "drums, xxxfdo, 8, 60, 150",
    "drums, xxrl, 8, 120, 150",
    "feet, xxxx, 4, 140, 60",
    "feet, xxxfdorl, 8, 90, 150",
  })
  void costsTheLeast(String pair, String signs, int places, int tempo, int sections) {
    Random random = new Random(7);
    List<String> surfaces =
        switch (pair) {
          case "hands" -> HANDS;
          case "drums" -> DRUMS;
          default -> FEET;
        };
    for (int i = 0; i < sections; i++) {
      Dealt section = section(random, surfaces, signs, places, tempo);
      if (!isClear(section)) {
        continue;
      }
      section.deal();
      if (random.nextBoolean()) {
        section.open.replaceAll(
            one ->
                new Dealer.Open(
                    one.stroke(), one.hands(), one.ofPair(), limb(random, one.hands())));
      }
      List<@Nullable Limb> limbs = section.deal();
      Reckoning reckoning = new Reckoning(section, !pair.equals("feet"));
      assertThat(reckoning.cost(limbs))
          .as(() -> words(section, limbs))
          .isEqualTo(reckoning.least(limbs.size()));
    }
  }

  private static @Nullable Limb limb(Random random, boolean hand) {
    Limb right = hand ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT;
    return switch (random.nextInt(3)) {
      case 0 -> right;
      case 1 -> right.other();
      default -> null;
    };
  }

  private static String words(Dealt section, List<@Nullable Limb> limbs) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < limbs.size(); i++) {
      words.add(words(section.open.get(i).stroke(), limbs.get(i)));
    }
    section.given.forEach(one -> words.add(words(one, one.limb()) + " as written"));
    words.sort(Comparator.naturalOrder());
    return String.join("\n", words);
  }

  private static String words(Stroke stroke, @Nullable Limb limb) {
    return stroke.at() + " " + stroke.surface().name() + " " + stroke.ornaments() + " " + limb;
  }
}
