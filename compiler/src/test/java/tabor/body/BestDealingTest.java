package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.jspecify.annotations.Nullable;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** The dynamic programme against every dealing that there is. */
class BestDealingTest {
  private static final List<String> SURFACES =
      List.of("snare", "hihat", "ride", "ride.bell", "tom1", "floor", "crash", "hihat.open");

  /** What happens at one place: surface number and sign for up to three strokes. */
  record Event(int gap, List<Integer> surfaces, List<Character> signs, boolean alternating) {}

  @Provide
  Arbitrary<List<Event>> events() {
    Arbitrary<Event> event =
        Combinators.combine(
                Arbitraries.integers().between(1, 5),
                Arbitraries.integers()
                    .between(0, SURFACES.size() - 1)
                    .list()
                    .uniqueElements()
                    .ofMinSize(1)
                    .ofMaxSize(3),
                Arbitraries.of('x', 'x', 'x', 'x', 'x', 'r', 'l', 'f', 'd', 'o').list().ofSize(3),
                Arbitraries.integers().between(0, 5).map(i -> i == 0))
            .as(Event::new);
    return event.list().ofMinSize(1).ofMaxSize(10);
  }

  private static Dealt section(List<Event> events) {
    int length = 0;
    for (Event event : events) {
      length += event.gap();
    }
    int bars = (length + 15) / 16;
    Dealt dealt = new Dealt();
    int onsets = 0;
    for (int s = 0; s < SURFACES.size(); s++) {
      StringBuilder open = new StringBuilder(".".repeat(bars * 16));
      StringBuilder alternating = new StringBuilder(".".repeat(bars * 16));
      int at = 0;
      onsets = 0;
      for (Event event : events) {
        for (int i = 0; i < event.surfaces().size() && onsets < 10; i++) {
          onsets++;
          if (event.surfaces().get(i) == s) {
            char sign = event.signs().get(i);
            (event.alternating() && sign == 'x' ? alternating : open).setCharAt(at, sign);
          }
        }
        at += event.gap();
      }
      dealt.part(SURFACES.get(s), words(open)).alternating(SURFACES.get(s), words(alternating));
    }
    dealt.deal();
    return dealt;
  }

  private static String words(StringBuilder places) {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < places.length(); i += 4) {
      words.append(i % 16 == 0 && i > 0 ? "| " : "").append(places, i, i + 4).append(' ');
    }
    return words.toString();
  }

  @Property(tries = 300)
  void costsWhatTheCheapestOfAllDealingsCosts(@ForAll("events") List<Event> events) {
    Dealt section = section(events);
    Loop loop =
        Loop.of(section.setting(), section.bars, Time.ZERO, section.given, section.open, true);
    BestDealing.Result best = BestDealing.of(loop);
    assertThat(price(loop, best.choices())).isEqualTo(best.points());
    assertThat(best.points()).isEqualTo(cheapest(loop, new ArrayList<>()));
  }

  /** A dealing never makes a clash where one without is to be had. */
  @Property(tries = 300)
  void makesNoClashThatCouldBeAvoided(@ForAll("events") List<Event> events) {
    Dealt section = section(events);
    List<@Nullable Limb> limbs = section.deal();
    Loop loop =
        Loop.of(section.setting(), section.bars, Time.ZERO, section.given, section.open, true);
    List<Limb> dealt = new ArrayList<>();
    for (Limb limb : limbs) {
      if (limb == null) {
        return; // a third hand
      }
      dealt.add(limb);
    }
    int clashes = clashes(section, dealt);
    int fewest = Integer.MAX_VALUE;
    for (List<Choice> way : ways(loop, 0)) {
      Limb[] other = new Limb[section.open.size()];
      for (Choice choice : way) {
        if (choice.right() != null && choice.right().open() >= 0) {
          other[choice.right().open()] = Limb.RIGHT_HAND;
        }
        if (choice.left() != null && choice.left().open() >= 0) {
          other[choice.left().open()] = Limb.LEFT_HAND;
        }
      }
      fewest = Math.min(fewest, clashes(section, List.of(other)));
    }
    assertThat(clashes == 0).isEqualTo(fewest == 0);
  }

  private static int clashes(Dealt section, List<Limb> limbs) {
    List<Stroke> all = new ArrayList<>(section.given);
    for (int i = 0; i < limbs.size(); i++) {
      all.add(section.open.get(i).stroke().by(limbs.get(i), true));
    }
    all.sort(Stroke.ORDER);
    tabor.groove.Groove groove = Played.of(all, Meter.COMMON, section.bars, 20);
    return (int)
        BodyChecks.check(groove).stream()
            .filter(d -> d.severity() == tabor.diagnostic.Severity.ERROR)
            .count();
  }

  private static List<List<Choice>> ways(Loop loop, int from) {
    if (from == loop.instants.size()) {
      return List.of(List.of());
    }
    List<List<Choice>> all = new ArrayList<>();
    for (List<Choice> rest : ways(loop, from + 1)) {
      for (Choice choice : Choice.of(loop.instants.get(from))) {
        List<Choice> way = new ArrayList<>();
        way.add(choice);
        way.addAll(rest);
        all.add(way);
      }
    }
    return all;
  }

  private static long cheapest(Loop loop, List<Choice> sofar) {
    if (sofar.size() == loop.instants.size()) {
      return price(loop, sofar);
    }
    long best = Long.MAX_VALUE;
    for (Choice choice : Choice.of(loop.instants.get(sofar.size()))) {
      sofar.add(choice);
      best = Math.min(best, cheapest(loop, sofar));
      sofar.remove(sofar.size() - 1);
    }
    return best;
  }

  /**
   * The price of a whole dealing, worked out without the search: the state goes round the loop as
   * often as it takes to come back to itself, and the last round is added up.
   */
  private static long price(Loop loop, List<Choice> way) {
    Pricing pricing = new Pricing(loop);
    int right = LimbState.NEVER;
    int left = LimbState.NEVER;
    long sum = 0;
    for (int round = 0; round < 3; round++) {
      sum = 0;
      for (int k = 0; k < way.size(); k++) {
        Choice choice = way.get(k);
        int r = pricing.age(right, k);
        int l = pricing.age(left, k);
        sum += pricing.price(k, choice, r, l);
        right = pricing.after(k, choice.right(), choice.left(), r);
        left = pricing.after(k, choice.left(), choice.right(), l);
      }
    }
    return sum;
  }
}
