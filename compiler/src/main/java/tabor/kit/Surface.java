package tabor.kit;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What is struck: a piece of the kit, or a zone of it.
 *
 * @param name {@code piece} or {@code piece.zone}
 * @param key General MIDI percussion key, 0 to 127
 * @param place where it is written
 * @param head its note head
 * @param sort what kind of thing it is
 */
public record Surface(String name, int key, StaffPlace place, Head head, Sort sort) {
  /** Shapes of note heads. */
  public enum Head {
    NORMAL,
    X,
    DIAMOND,
    TRIANGLE,
    CIRCLE_X;

    /** The word as written in a kit section and in MusicXML: {@code circle-x}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Kinds of surface: what may be done to it follows from this. */
  public enum Sort {
    SNARE,
    TOM,
    KICK,
    /** A cymbal that a stick strikes, the hi-hat excepted. */
    CYMBAL,
    /** The hi-hat under the stick: closed, half open or open. */
    STICK_HIHAT,
    /** The hi-hat under the foot. */
    FOOT_HIHAT,
    BELL,
    /** A kit's own surface: takes every sign. */
    OWN
  }

  /** Throws {@link IllegalArgumentException} for a key out of range. */
  public Surface {
    if (key < 0 || key > 127) {
      throw new IllegalArgumentException("key " + key);
    }
  }

  /** {@code hihat} of {@code hihat.open}. */
  public String piece() {
    int dot = name.indexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }

  /** True for a surface that feet play. */
  public boolean isFoot() {
    return sort == Sort.KICK || sort == Sort.FOOT_HIHAT;
  }

  /** True for what rings on: cymbals and the hi-hat. */
  public boolean isCymbal() {
    return sort == Sort.CYMBAL || sort == Sort.STICK_HIHAT || sort == Sort.FOOT_HIHAT;
  }

  /** True if {@code !} makes sense on it. */
  public boolean canChoke() {
    return sort == Sort.CYMBAL || sort == Sort.STICK_HIHAT || sort == Sort.OWN;
  }

  /** True if {@code ^} makes sense on it. */
  public boolean canRimshot() {
    return sort == Sort.SNARE || sort == Sort.TOM || sort == Sort.OWN;
  }

  /** The name as a sentence says it: {@code ride bell}, {@code hi-hat, open}. */
  public String words() {
    return switch (name) {
      case "hihat" -> "hi-hat";
      case "hihat.open" -> "open hi-hat";
      case "hihat.half" -> "half-open hi-hat";
      case "hihat.foot" -> "hi-hat with the foot";
      case "hihat.splash" -> "foot splash";
      case "snare.cross" -> "cross-stick";
      case "ride.bell" -> "ride bell";
      case "crash2" -> "second crash";
      case "tom1" -> "first tom";
      case "tom2" -> "second tom";
      case "floor" -> "floor tom";
      default -> name.replace('.', ' ');
    };
  }

  // Written out: what records get by themselves is linked anew at every start, at some cost.

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Surface that
            && name.equals(that.name)
            && key == that.key
            && place.equals(that.place)
            && head == that.head
            && sort == that.sort);
  }

  @Override
  public int hashCode() {
    return name.hashCode() * 31 + key;
  }
}
