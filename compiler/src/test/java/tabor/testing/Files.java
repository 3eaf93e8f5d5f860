package tabor.testing;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/**
 * Random files that are valid: header, patterns, kits, grooves with every kind of lane, steps with
 * every verb at places that exist, charts. Each section is made from a number of its own, so that a
 * failing file shrinks by whole sections.
 */
public final class Files {
  private Files() {}

  /** Texts that compile without an error (warnings may come). */
  public static Arbitrary<String> valid() {
    return Arbitraries.longs().list().ofMinSize(1).ofMaxSize(6).map(seeds -> text(seeds));
  }

  /** Texts of about that many bars in one groove after another, for measurements. */
  public static String ofBars(int bars, long seed) {
    Random random = new Random(seed);
    FileWriter file = new FileWriter(random);
    file.header();
    for (int written = 0; written < bars; ) {
      written += file.groove(new Random(random.nextLong()), 16);
    }
    return file.text();
  }

  /** One such text, the same for the same seed. */
  public static String ofSeed(long seed) {
    Random random = new Random(seed);
    return text(random.longs(1 + random.nextInt(6)).boxed().toList());
  }

  private static String text(List<Long> seeds) {
    FileWriter file = new FileWriter(new Random(seeds.get(0)));
    file.header();
    file.groove(new Random(seeds.get(0)), 0);
    for (long seed : seeds.subList(1, seeds.size())) {
      file.section(new Random(seed));
    }
    return file.text();
  }
}
