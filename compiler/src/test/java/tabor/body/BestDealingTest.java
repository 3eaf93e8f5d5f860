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
import tabor.body.Loop.Hit;
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
    Deal.Best best = Deal.of(loop);
    assertThat(price(loop, best.options())).isEqualTo(best.cost());
    assertThat(best.cost()).isEqualTo(cheapest(loop, new ArrayList<>()));
  }

  @Provide
  Arbitrary<List<List<Character>>> feet() {
    Arbitrary<Character> sign = Arbitraries.of('.', '.', 'x');
    return sign.list().ofSize(16).list().ofSize(3);
  }

  /** What is dealt to the feet without a search costs no more than what the search finds. */
  @Property(tries = 500)
  void thePedalsCostWhatTheSearchFinds(@ForAll("feet") List<List<Character>> parts) {
    List<String> pedals = List.of("kick", "hihat.foot", "hihat.splash");
    Dealt section = new Dealt();
    for (int i = 0; i < pedals.size(); i++) {
      StringBuilder places = new StringBuilder();
      parts.get(i).forEach(places::append);
      section.part(pedals.get(i), words(places));
    }
    section.deal();
    Loop loop =
        Loop.of(section.setting(), section.bars, Time.ZERO, section.given, section.open, false);
    List<Option> settled = loop.instants.isEmpty() ? null : Pedals.settle(loop);
    if (settled != null) {
      assertThat(price(loop, settled)).isEqualTo(Deal.of(loop).cost());
    }
  }

  /** A loop that was dealt before is dealt the same again. */
  @Property(tries = 100)
  void rememberedDealingsAreTheSame(@ForAll("events") List<Event> events) {
    List<@Nullable Limb> first = section(events).deal();
    assertThat(section(events).deal()).isEqualTo(first);
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
    for (List<Option> way : ways(loop, 0)) {
      Limb[] other = new Limb[section.open.size()];
      for (Option option : way) {
        if (option.right() != null && option.right().open() >= 0) {
          other[option.right().open()] = Limb.RIGHT_HAND;
        }
        if (option.left() != null && option.left().open() >= 0) {
          other[option.left().open()] = Limb.LEFT_HAND;
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

  private static List<List<Option>> ways(Loop loop, int from) {
    if (from == loop.instants.size()) {
      return List.of(List.of());
    }
    List<List<Option>> all = new ArrayList<>();
    for (List<Option> rest : ways(loop, from + 1)) {
      for (Option option : Option.of(loop.instants.get(from))) {
        List<Option> way = new ArrayList<>();
        way.add(option);
        way.addAll(rest);
        all.add(way);
      }
    }
    return all;
  }

  private static long cheapest(Loop loop, List<Option> sofar) {
    if (sofar.size() == loop.instants.size()) {
      return price(loop, sofar);
    }
    long best = Long.MAX_VALUE;
    for (Option option : Option.of(loop.instants.get(sofar.size()))) {
      sofar.add(option);
      best = Math.min(best, cheapest(loop, sofar));
      sofar.remove(sofar.size() - 1);
    }
    return best;
  }

  /**
   * The price of a whole dealing, worked out without any state: for each instant the last strokes
   * of both limbs are looked up anew, all the way round the loop.
   */
  private static long price(Loop loop, List<Option> way) {
    Pricing pricing = new Pricing(loop);
    long sum = 0;
    for (int k = 0; k < way.size(); k++) {
      sum += pricing.price(k, way.get(k), last(loop, way, k, true), last(loop, way, k, false));
    }
    return sum;
  }

  private static int last(Loop loop, List<Option> way, int k, boolean right) {
    int count = way.size();
    for (int back = 1; back <= count; back++) {
      int j = Math.floorMod(k - back, count);
      Option option = way.get(j);
      Hit own = right ? option.right() : option.left();
      Hit other = right ? option.left() : option.right();
      Hit hit = own != null ? own : other != null && other.engages() ? other : null;
      if (hit != null) {
        boolean remembered =
            back <= Costs.MEMORY || (j < k && busyAllAlong(loop, hit, own != null, j, k));
        return remembered
            ? Last.back(Last.now(hit.id(), own == null), back)
            : Last.rested(hit.id());
      }
    }
    return Last.NONE;
  }

  /** True if a roll at instant j keeps its limb busy until after instant k. */
  private static boolean busyAllAlong(Loop loop, Hit hit, boolean own, int j, int k) {
    return (own || hit.openRoll()) && hit.end() > loop.instants.get(k).at && j < k;
  }
}
