package tabor.groove;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import tabor.lists.Lists;
import tabor.words.Words;

/**
 * What the hands or the feet play where it is new from some place on: a lane written again in a
 * step has little in common with the one it replaces, and telling it stroke by stroke would fill
 * the page.
 *
 * @param words {@code hands: a new line}, {@code hands: new from 3 on} or {@code hands: new
 *     sticking}; empty where the changes can be told one by one
 * @param others the comparison without what was said
 */
record NewLine(List<String> words, Comparison others) {
  /** So few lists of places are read easily where nothing else can be said. */
  private static final int FEW_PLACES = 3;

  private static final Comparator<Stroke> BY_TIME =
      (a, b) -> a.bar() != b.bar() ? Integer.compare(a.bar(), b.bar()) : a.at().compareTo(b.at());

  /** Looks at one pair of limbs, the hands or the feet. */
  static NewLine find(Comparison found, boolean hands, Terms terms) {
    Words words = terms.words();
    String part = words.text(hands ? "limb.hands" : "limb.feet");
    Predicate<Stroke> pair = stroke -> stroke.limb().isHand() == hands;
    Comparison own = found.where(pair);
    List<Stroke> touched = own.touched();
    if (touched.size() < NewBars.FEW) {
      return new NewLine(List.of(), found);
    }
    Stroke first = Collections.min(touched, BY_TIME);
    if (touched.size() == own.passed().size() && StepWords.places(own) > 1) {
      return new NewLine(
          List.of(words.text("change.line", part, words.text("change.new-sticking"))),
          found.withoutSticking(pair));
    }
    Predicate<Stroke> after = stroke -> BY_TIME.compare(stroke, first) >= 0;
    long now = Lists.count(own.now(), after);
    if (now == 0 || touched.size() * 2L < now || StepWords.places(own.where(after)) <= FEW_PLACES) {
      return new NewLine(List.of(), found);
    }
    boolean all = Lists.all(own.before(), after) && Lists.all(own.now(), after);
    String said =
        all
            ? words.text("change.new-line")
            : words.text("change.new-from", place(found.step(), first, terms));
    return new NewLine(
        List.of(words.text("change.line", part, said)), found.where(pair.and(after).negate()));
  }

  private static String place(Groove step, Stroke first, Terms terms) {
    String count = terms.counts().full(first.slot(), step.meter());
    return step.bars() == 1 ? count : terms.words().text("place.count-in-bar", count, first.bar());
  }
}
