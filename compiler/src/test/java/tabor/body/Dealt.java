package tabor.body;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/**
 * Deals parts written as words, for tests: {@code x} open, {@code r l} given, signs as in Played.
 */
final class Dealt {
  final List<Stroke> given = new ArrayList<>();
  final List<Dealer.Open> open = new ArrayList<>();
  private Meter meter = Meter.COMMON;
  private Kit kit = Kits.FIVE_PIECE;
  private int perMinute = 90;
  int bars = 1;
  private final Passage passage = new Passage("groove test\n");

  Dealt meter(Meter other) {
    meter = other;
    return this;
  }

  Dealt kit(Kit other) {
    kit = other;
    return this;
  }

  Dealt tempo(int beats) {
    perMinute = beats;
    return this;
  }

  Groove.Setting setting() {
    return Played.setting(meter, kit, perMinute);
  }

  /** A part of a surface: letters {@code x f d o} are open, {@code r l} are given. */
  Dealt part(String surface, String words) {
    return part(surface, words, false);
  }

  /** A part of the hands or the feet. */
  Dealt alternating(String surface, String words) {
    return part(surface, words, true);
  }

  private Dealt part(String surface, String words, boolean alternating) {
    boolean hands = !Played.surface(surface).isFoot();
    Limb right = hands ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT;
    int last =
        Played.words(
            words,
            (bar, slot, sign) -> {
              Limb limb = sign == 'l' ? right.other() : right;
              Stroke stroke =
                  Played.stroke(
                      meter, bar, slot, limb, surface, sign, new Spot(passage, new Span(0, 0)));
              if (sign == 'r' || sign == 'l') {
                given.add(stroke);
              } else {
                open.add(new Dealer.Open(stroke, hands, alternating, null));
              }
            });
    bars = Math.max(bars, last);
    return this;
  }

  List<@Nullable Limb> deal() {
    given.sort(Stroke.ORDER);
    open.sort(Comparator.comparing(Dealer.Open::stroke, Stroke.ORDER));
    return Dealer.deal(setting(), bars, Time.ZERO, given, open);
  }

  /** The limbs of one surface's open strokes, as letters in order of time; {@code -} for none. */
  String of(String surface) {
    List<@Nullable Limb> limbs = deal();
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < open.size(); i++) {
      Limb limb = limbs.get(i);
      if (open.get(i).stroke().surface().name().equals(surface)) {
        text.append(limb == null ? "-" : limb.letter());
      }
    }
    return text.toString();
  }
}
