package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Ornament;
import tabor.source.Span;

/**
 * A word of a lane: one beat, or several.
 *
 * @param elements its slots as written; a {@link Ghosts} counts as what it holds
 * @param beats the {@code :2} part; null where none is written
 * @param span where
 */
public record Beat(List<Element> elements, @Nullable Num beats, Span span) {
  /** Copies the list. */
  public Beat {
    elements = List.copyOf(elements);
  }

  /** What stands in a slot. */
  public sealed interface Element {
    /** Where it is written. */
    Span span();

    /** Calls the method of {@code cases} that fits. */
    <R> R match(Cases<R> cases);
  }

  /** One method for each kind of element. */
  public interface Cases<R> {
    R hit(Hit hit);

    R rest(Rest rest);

    R hold(Hold hold);

    R group(Group group);

    R ghosts(Ghosts ghosts);
  }

  /** What is written after a letter. */
  public enum Suffix {
    DIDDLE(Ornament.DIDDLE),
    OPEN_ROLL(Ornament.OPEN_ROLL),
    ROLL(Ornament.ROLL),
    BUZZ(Ornament.BUZZ),
    /** The open hi-hat, or with the foot a splash: it changes the surface. */
    OPEN("="),
    CHOKE(Ornament.CHOKE),
    RIMSHOT(Ornament.RIMSHOT);

    private final String sign;
    private final @Nullable Ornament ornament;

    Suffix(String sign) {
      this.sign = sign;
      this.ornament = null;
    }

    Suffix(Ornament ornament) {
      this.sign = ornament.after();
      this.ornament = ornament;
    }

    /** As written. */
    public String sign() {
      return sign;
    }

    /** The ornament that it writes; null if it writes none. */
    public @Nullable Ornament ornament() {
      return ornament;
    }

    /** True for what fills the slot: a stroke has one of them at most. */
    public boolean isRoll() {
      return ornament != null && ornament.isRoll();
    }

    /** The suffix that a sign writes. Throws {@link IllegalArgumentException} if there is none. */
    public static Suffix of(String sign) {
      for (Suffix suffix : values()) {
        if (suffix.sign.equals(sign)) {
          return suffix;
        }
      }
      throw new IllegalArgumentException(sign);
    }

    /** The suffix that writes an ornament; null for grace notes, which stand before the letter. */
    public static @Nullable Suffix of(Ornament ornament) {
      for (Suffix suffix : values()) {
        if (suffix.ornament == ornament) {
          return suffix;
        }
      }
      return null;
    }
  }

  /**
   * A stroke.
   *
   * @param letter in lower case
   * @param accent true if written in upper case
   * @param grace how many grace notes come before it, 0 to 3
   * @param suffixes in the order written, none twice
   * @param span where, grace notes and suffixes included, the parentheses round it not
   */
  public record Hit(char letter, boolean accent, int grace, List<Suffix> suffixes, Span span)
      implements Element {
    /** Copies the list. */
    public Hit {
      suffixes = List.copyOf(suffixes);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hit(this);
    }
  }

  /** {@code .}, silence. */
  public record Rest(Span span) implements Element {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.rest(this);
    }
  }

  /** {@code -}, the stroke before goes on. */
  public record Hold(Span span) implements Element {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hold(this);
    }
  }

  /** <code>{…}</code>, several in one slot. */
  public record Group(List<Element> elements, Span span) implements Element {
    /** Copies the list. */
    public Group {
      elements = List.copyOf(elements);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.group(this);
    }
  }

  /**
   * {@code (…)}, ghost strokes: letters, dots and groups. For one stroke with grace notes or
   * suffixes, as in {@code '(r)/}, those are kept with the letter and the parentheses hold only it.
   */
  public record Ghosts(List<Element> elements, Span span) implements Element {
    /** Copies the list. */
    public Ghosts {
      elements = List.copyOf(elements);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.ghosts(this);
    }
  }
}
