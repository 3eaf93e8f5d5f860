package tabor.find;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.body.Difficulty;
import tabor.body.RudimentFinder;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.lists.Lists;

/** Looks through the grooves, steps and variations of lessons. Safe for several threads. */
public final class Finder {
  private final Wanted wanted;

  /** Looks for this. */
  public Finder(Wanted wanted) {
    this.wanted = wanted;
  }

  /**
   * The sections of a lesson that have what is wanted, in their order.
   *
   * @param file as the caller calls it
   * @param lesson finished
   */
  public List<Found> in(String file, Lesson lesson) {
    List<Found> found = new ArrayList<>();
    int number = 0;
    for (Groove groove : lesson.grooves()) {
      number++;
      Found one = fits(lesson, groove) ? measured(file, lesson, number, groove) : null;
      if (one != null) {
        found.add(one);
      }
    }
    return found;
  }

  /** The words that a line of them asks for, as {@link Wanted#words} has them. */
  public static List<String> words(String line) {
    String text = plain(line).strip();
    return text.isEmpty() ? List.of() : Arrays.asList(text.split("\\s+", -1));
  }

  /** What is quick to see. */
  private boolean fits(Lesson lesson, Groove groove) {
    Wanted.Range tempo = wanted.tempo();
    return (tempo == null || tempo.has(groove.setting().tempo().perMinute()))
        && (wanted.meter() == null || hasMeter(groove, wanted.meter()))
        && Lists.all(wanted.surfaces(), name -> strikes(groove, name))
        && (wanted.words().isEmpty() || says(lesson, groove));
  }

  private @Nullable Found measured(String file, Lesson lesson, int number, Groove groove) {
    Wanted.Like like = wanted.like();
    Likeness likeness = like == null ? Likeness.NONE : Likeness.of(like.groove(), groove);
    if (like != null && !likeness.isWithin(like.upTo())) {
      return null;
    }
    List<String> rudiments = wanted.rudiments().isEmpty() ? List.of() : rudiments(groove);
    if (!rudiments.containsAll(wanted.rudiments())) {
      return null;
    }
    Difficulty difficulty = Difficulty.of(groove);
    Long harderThan = wanted.harderThan();
    if (harderThan != null && difficulty.share() <= harderThan) {
      return null;
    }
    List<String> all = wanted.rudiments().isEmpty() ? rudiments(groove) : rudiments;
    return new Found(file, lesson.title(), number, groove, difficulty, all, likeness);
  }

  private static List<String> rudiments(Groove groove) {
    return RudimentFinder.find(groove).stream().map(RudimentFinder.Found::name).distinct().toList();
  }

  /** A meter that no bar of a short section reaches does not count. */
  private static boolean hasMeter(Groove groove, String signature) {
    for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
      if (groove.meter(bar).signature().equals(signature)) {
        return true;
      }
    }
    return false;
  }

  private static boolean strikes(Groove groove, String name) {
    return Lists.any(
        groove.strokes(),
        stroke -> stroke.surface().name().equals(name) || stroke.surface().piece().equals(name));
  }

  /** What the teacher alone sees is not searched: what is found may be shown to others. */
  private boolean says(Lesson lesson, Groove groove) {
    List<String> texts = new ArrayList<>(List.of(lesson.title(), groove.name(), groove.caption()));
    if (lesson.by() != null) {
      texts.add(lesson.by());
    }
    texts.addAll(lesson.extras().goals());
    texts.addAll(groove.page().goals());
    texts.addAll(groove.prose());
    String text = plain(String.join("\n", texts));
    return Lists.all(wanted.words(), text::contains);
  }

  private static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
  }
}
