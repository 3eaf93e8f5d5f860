package tabor.emit.grid;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tabor.body.HandReasons;
import tabor.body.HandReasons.Phrase;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** Why each hand plays what it plays, a sentence for each phrase. */
final class StickingReasons {
  private StickingReasons() {}

  /** The sentences; rows that come in several bars are told once. */
  static List<String> of(Groove groove) {
    Map<String, Set<Integer>> rows = new LinkedHashMap<>();
    List<String> sentences = new ArrayList<>();
    for (Phrase phrase : HandReasons.of(groove)) {
      if (phrase.why() == HandReasons.Why.IN_TURN) {
        Stroke first = phrase.strokes().get(0);
        Stroke last = phrase.strokes().get(phrase.strokes().size() - 1);
        boolean one = first.bar() == last.bar();
        String where =
            one ? Sticking.where(groove, first, last) : Sticking.across(groove, first, last);
        Set<Integer> bars =
            rows.computeIfAbsent(where + ": " + inTurn(phrase), w -> new LinkedHashSet<>());
        if (one) {
          bars.add(first.bar());
        }
      } else {
        sentences.add(sentence(phrase));
      }
    }
    boolean oneBar = groove.bars() == 1 && groove.firstBar() == 1;
    rows.forEach(
        (row, bars) ->
            sentences.add(
                (oneBar || bars.isEmpty() ? "" : Sticking.bars(List.copyOf(bars)) + ", ") + row));
    return sentences;
  }

  private static String inTurn(Phrase phrase) {
    long surfaces = phrase.strokes().stream().map(s -> s.surface().name()).distinct().count();
    Stroke first = phrase.strokes().get(0);
    String from = first.limb().isRight() ? "from the right" : "from the left";
    return surfaces > 1 ? "round the drums " + from : "hand to hand " + from;
  }

  private static String surfaces(Phrase phrase) {
    return phrase.strokes().stream()
        .map(stroke -> stroke.surface().words())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String sentence(Phrase phrase) {
    Stroke stroke = phrase.strokes().get(0);
    String who = stroke.surface().words() + " with the " + stroke.limb().words() + ": ";
    String other = stroke.limb().other().words();
    return switch (phrase.why()) {
      case WRITTEN -> who + "written";
      case KEPT -> who + "chosen above, and kept since";
      case KEEPS_TIME -> who + "keeps the time";
      case AGAINST_TIME -> who + "the " + other + " keeps the time";
      case CRASH -> who + "the hand that keeps the time goes to the crash";
      case HAND_LIES -> who + "the hand lies on the drum";
      case SHARED_TIME -> surfaces(phrase) + " hand to hand: too fast for one hand";
      case LEADS -> who + "the hand that leads is free";
      case STAYS -> who + "the hand is there already";
      case OTHER_BUSY -> who + "the " + other + " has something else to do";
      case IN_TURN -> throw new IllegalStateException("a row has a place");
    };
  }
}
