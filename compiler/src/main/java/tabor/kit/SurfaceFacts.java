package tabor.kit;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.kit.Surface.Sort;

/**
 * What a surface is and can do, whichever key sounds it and wherever it is written. The rest of the
 * code asks these facts and never compares names of surfaces; those of the standard surfaces stand
 * in {@link StandardSurfaces}.
 *
 * @param sort what kind of thing it is
 * @param traits what is true of it
 * @param hihat what the hi-hat does under this stroke; {@link HiHat#NONE} for everything else
 * @param words the name as a sentence says it: {@code open hi-hat}
 * @param label the name as the row of a table says it: {@code hi-hat open}
 * @param sound its word in the list of standard sounds of MusicXML 4.0; null if there is none
 * @param opened the surface that an open stroke on it is played on; null where nothing opens
 * @param standIn what a built-in kit without it strikes instead; null if every kit has it
 * @param homeOf the limbs that play it where nothing else is said
 * @param position where it stands around the player; null if nothing is known
 * @param gap where it stands in a kit that lacks another piece; null if that makes no difference
 */
public record SurfaceFacts(
    Sort sort,
    Set<Trait> traits,
    HiHat hihat,
    String words,
    String label,
    @Nullable String sound,
    @Nullable String opened,
    @Nullable String standIn,
    Set<Limb> homeOf,
    @Nullable Position position,
    @Nullable Gap gap) {

  /** What can be true of a surface. */
  public enum Trait {
    /** It is a cymbal, the hi-hat included. */
    CYMBAL,
    /**
     * Any stroke on the hi-hat ends its sound (General MIDI 2, RP-024, appendix B: exclusive group
     * 1, keys 42, 44 and 46).
     */
    HIHAT,
    /** It sounds on until it is struck again, closed or choked. */
    RINGS,
    /** The hand can stop it: {@code !} makes sense on it. */
    CHOKES,
    /** {@code ^} makes sense on it. */
    RIMSHOT,
    /** Time is kept on it. */
    KEEPS_TIME,
    /** The hand that strikes lies on the head meanwhile, and so stays there. */
    HAND_LIES
  }

  /** What the hi-hat does under a stroke. */
  public enum HiHat {
    /** It is no hi-hat. */
    NONE(""),
    /** The stick strikes it closed. */
    CLOSED("closed"),
    /** The stick strikes it half open. */
    HALF("half open"),
    /** The stick strikes it open. */
    OPEN("open"),
    /** The foot closes it. */
    CHICK("closed"),
    /** The foot lets it ring. */
    SPLASH("splashed");

    private final String words;

    HiHat(String words) {
      this.words = words;
    }

    /** How a player says it is struck: {@code half open}. */
    public String words() {
      return words;
    }
  }

  /**
   * Where a piece moves to when another is not there.
   *
   * @param missing the surface whose absence makes room
   * @param position where the piece then stands
   */
  public record Gap(String missing, Position position) {}

  /** Copies the sets. */
  public SurfaceFacts {
    traits = Set.copyOf(traits);
    homeOf = Set.copyOf(homeOf);
  }

  /**
   * The facts of a kit's own surface: it takes every sign, and what is known of the piece that it
   * is a zone of, its place, whether it is a hi-hat and whether time is kept on it, holds for it
   * too.
   */
  static SurfaceFacts own(String name, @Nullable Surface piece) {
    String words = name.replace('.', ' ');
    SurfaceFacts whole = piece == null ? null : piece.facts();
    Set<Trait> traits = EnumSet.of(Trait.CHOKES, Trait.RIMSHOT);
    for (Trait trait : List.of(Trait.HIHAT, Trait.KEEPS_TIME)) {
      if (whole != null && whole.traits().contains(trait)) {
        traits.add(trait);
      }
    }
    return new SurfaceFacts(
        Sort.OWN,
        traits,
        HiHat.NONE,
        words,
        words,
        null,
        null,
        null,
        Set.of(),
        whole == null ? null : whole.position(),
        whole == null ? null : whole.gap());
  }
}
