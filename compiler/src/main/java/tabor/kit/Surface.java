package tabor.kit;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.kit.SurfaceFacts.Trait;

/**
 * What is struck: a piece of the kit, or a zone of it.
 *
 * @param name {@code piece} or {@code piece.zone}
 * @param key General MIDI percussion key, 0 to 127
 * @param place where it is written
 * @param head its note head
 * @param facts what it is and can do
 */
public record Surface(String name, int key, StaffPlace place, Head head, SurfaceFacts facts) {
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

  /** Kinds of surface. */
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

  /**
   * A surface that a kit adds.
   *
   * @param piece the piece that it is a zone of; null for a piece of its own
   */
  public static Surface own(
      String name, int key, StaffPlace place, Head head, @Nullable Surface piece) {
    return new Surface(name, key, place, head, SurfaceFacts.own(name, piece));
  }

  /** {@code hihat} of {@code hihat.open}. */
  public String piece() {
    return piece(name);
  }

  /** {@code hihat} of {@code hihat.open}. */
  public static String piece(String name) {
    int dot = name.indexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }

  /** What kind of thing it is. */
  public Sort sort() {
    return facts.sort();
  }

  /** What the hi-hat does under this stroke. */
  public HiHat hihat() {
    return facts.hihat();
  }

  /** True for a surface that feet play. */
  public boolean isFoot() {
    return sort() == Sort.KICK || sort() == Sort.FOOT_HIHAT;
  }

  /** True for cymbals and the hi-hat. */
  public boolean isCymbal() {
    return facts.traits().contains(Trait.CYMBAL);
  }

  /** True for the hi-hat, under stick or foot: any stroke on it ends what it sounded before. */
  public boolean isHiHat() {
    return facts.traits().contains(Trait.HIHAT);
  }

  /** True for what sounds on until it is struck again, closed or choked. */
  public boolean rings() {
    return facts.traits().contains(Trait.RINGS);
  }

  /** True for what time is kept on. */
  public boolean keepsTime() {
    return facts.traits().contains(Trait.KEEPS_TIME);
  }

  /** True if the hand that strikes it lies on the head meanwhile. */
  public boolean handLies() {
    return facts.traits().contains(Trait.HAND_LIES);
  }

  /** True if {@code !} makes sense on it. */
  public boolean canChoke() {
    return facts.traits().contains(Trait.CHOKES);
  }

  /** True if {@code ^} makes sense on it. */
  public boolean canRimshot() {
    return facts.traits().contains(Trait.RIMSHOT);
  }

  /** True if this limb plays it where nothing else is said. */
  public boolean isHomeOf(Limb limb) {
    return facts.homeOf().contains(limb);
  }

  /** The name as a sentence says it: {@code ride bell}, {@code open hi-hat}. */
  public String words() {
    return facts.words();
  }

  /** The name as the row of a table says it: {@code hi-hat open}. */
  public String label() {
    return facts.label();
  }

  @Override
  public String toString() {
    return name;
  }

  /** Without enums, whose own differ from run to run. */
  @Override
  public int hashCode() {
    return name.hashCode() * 31 + key;
  }
}
