package tabor.emit.musicxml;

import java.math.BigInteger;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Score;
import tabor.notation.Voice;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Into how many parts a quarter note must be cut so that every place is a whole number. */
final class Divisions {
  /** Up to here one number serves the whole document, and it fits a Standard MIDI File as well. */
  static final BigInteger MOST_FOR_ALL = BigInteger.valueOf(16_383);

  private BigInteger common = BigInteger.ONE;

  /** What a whole section needs, and rests in its meters. */
  Divisions add(Score score) {
    score.groove().meters().cycle().forEach(meter -> add(meter.bar()));
    for (Bar bar : score.bars()) {
      add(bar, score.groove());
    }
    return this;
  }

  /** What one bar needs, dynamics and hairpins that stand in it included. */
  Divisions add(Bar bar, Groove groove) {
    add(bar.length());
    for (Voice voice : Voice.values()) {
      for (Event event : bar.events(voice)) {
        add(event.start());
        add(event.length());
      }
    }
    for (Loudness.Mark mark : groove.marks()) {
      if (mark.bar() == bar.number()) {
        add(mark.at());
      }
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      if (hairpin.fromBar() == bar.number()) {
        add(hairpin.from());
      }
      if (hairpin.toBar() == bar.number()) {
        add(hairpin.to());
      }
    }
    return this;
  }

  /** What tempi that change at the beats of a meter need. */
  Divisions addBeats(Meter meter) {
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      add(meter.beatStart(beat));
    }
    return this;
  }

  private void add(Time time) {
    BigInteger den = BigInteger.valueOf(time.times(4).den());
    common = common.divide(common.gcd(den)).multiply(den);
  }

  BigInteger common() {
    return common;
  }

  /** A length in divisions. */
  static BigInteger of(Time length, BigInteger divisions) {
    return BigInteger.valueOf(length.num())
        .multiply(BigInteger.valueOf(4))
        .multiply(divisions)
        .divide(BigInteger.valueOf(length.den()));
  }
}
