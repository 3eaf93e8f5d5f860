package tabor.resolve;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limits;
import tabor.kit.Position;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Word;

/** Makes a kit of a kit section. Without {@code like} it starts from the five-piece kit. */
public final class KitBuilder implements KitStatement.Cases<@Nullable Void> {
  // The middle line is free in every built-in kit.
  private static final StaffPlace FREE_PLACE = new StaffPlace('B', 4);

  private final Problems problems;
  private final Map<String, Surface> surfaces;
  private final Map<Character, String> letters;
  private final Map<String, Optional<String>> standIns;
  private final Map<String, Position> positions;
  private final Map<String, Limits> limits;
  private boolean leftHanded;
  private Line line;

  private KitBuilder(Problems problems, Kit like, Line heading) {
    this.problems = problems;
    this.surfaces = new LinkedHashMap<>(like.surfaces());
    this.letters = new LinkedHashMap<>(like.letters());
    this.standIns = new LinkedHashMap<>(like.standIns());
    this.positions = new LinkedHashMap<>(like.positions());
    this.limits = new LinkedHashMap<>(like.limits());
    this.leftHanded = like.leftHanded();
    this.line = heading;
  }

  /**
   * A kit and what is wrong with it.
   *
   * @param kit as far as it could be made
   * @param diagnostics what is wrong, in no order
   */
  public record Built(Kit kit, List<Diagnostic> diagnostics) {
    /** Copies the list. */
    public Built {
      diagnostics = List.copyOf(diagnostics);
    }
  }

  /** Makes a kit; {@code scope} answers for the kit it is like. */
  public static Built build(SectionSyntax section, String name, Scope scope) {
    Line heading = java.util.Objects.requireNonNull(section.heading());
    Problems problems = new Problems(null);
    Kit like = Kits.FIVE_PIECE;
    if (heading.statement() instanceof Heading.Kit written) {
      Word other = written.like();
      if (other != null) {
        Kit found = scope.kit(other.text());
        if (found == null) {
          problems.unknown(heading, other, "kit", scope.near(Scope.Kind.KIT, other.text()));
        } else {
          like = found;
        }
      }
    }
    KitBuilder builder = new KitBuilder(problems, like, heading);
    for (Line next : section.lines()) {
      builder.line = next;
      if (next.statement() instanceof KitStatement statement) {
        statement.match(builder);
      } else if (next.statement() instanceof SettingStatement.LimitsSetting setting) {
        new SettingReader(problems).limits(next, setting, builder.limits);
      }
    }
    Kit kit =
        new Kit(
            name,
            builder.surfaces,
            builder.letters,
            builder.standIns,
            builder.positions,
            builder.limits,
            builder.leftHanded);
    return new Built(kit, problems.found());
  }

  private void syntax(tabor.source.Span span, String message, String help) {
    problems.add(problems.make(Code.SYNTAX, line, span, message).help(help));
  }

  @Override
  public @Nullable Void surface(KitStatement.NewSurface written) {
    Num key = written.key();
    if (key == null) {
      syntax(
          written.name().span(),
          "the surface “" + written.name().text() + "” has no key",
          "say which General MIDI key sounds it: key 52");
      return null;
    }
    if (!key.value().isWhole() || key.whole() > 127) {
      syntax(key.span(), "this number is out of range", "a key is a whole number from 0 to 127");
      return null;
    }
    StaffPlace place = FREE_PLACE;
    Word staff = written.staff();
    if (staff != null) {
      StaffPlace read = staffPlace(staff.text());
      if (read == null) {
        syntax(
            staff.span(),
            "“" + staff.text() + "” is no place on the staff",
            "name it as in the treble clef, from a3 to c7: the middle line is b4");
        return null;
      }
      place = read;
    }
    Surface.Head head = Surface.Head.NORMAL;
    Word shape = written.head();
    if (shape != null) {
      for (Surface.Head one : Surface.Head.values()) {
        if (one.word().equals(shape.text())) {
          head = one;
        }
      }
    }
    String name = written.name().text();
    Surface before = surfaces.get(name);
    surfaces.put(
        name,
        before == null
            ? Surface.own(name, key.whole(), place, head, surfaces.get(Surface.piece(name)))
            : new Surface(name, key.whole(), place, head, before.facts()));
    standIns.remove(name);
    Word letter = written.letter();
    if (letter != null) {
      letter(letter, name);
    }
    return null;
  }

  private static @Nullable StaffPlace staffPlace(String text) {
    if (text.length() != 2 || !Character.isDigit(text.charAt(1))) {
      return null;
    }
    char step = Character.toUpperCase(text.charAt(0));
    int octave = text.charAt(1) - '0';
    if (step < 'A' || step > 'G' || octave < 0 || octave > 9) {
      return null;
    }
    StaffPlace place = new StaffPlace(step, octave);
    return place.halfSpaces() < -4 || place.halfSpaces() > 19 ? null : place;
  }

  private void letter(Word letter, String surface) {
    String text = letter.text();
    if (text.length() != 1 || text.charAt(0) < 'a' || text.charAt(0) > 'z' || text.equals("x")) {
      syntax(
          letter.span(),
          "“" + text + "” cannot be a letter of a part",
          "a letter is one of a to z, but not x");
      return;
    }
    letters.put(text.charAt(0), surface);
  }

  private @Nullable Surface known(Word word) {
    Surface surface = surfaces.get(word.text());
    if (surface == null) {
      problems.unknown(line, word, "surface", Near.find(word.text(), surfaces.keySet()));
    }
    return surface;
  }

  @Override
  public @Nullable Void letter(KitStatement.Letter written) {
    Surface surface = known(written.surface());
    if (surface != null) {
      letter(written.letter(), surface.name());
    }
    return null;
  }

  @Override
  public @Nullable Void without(KitStatement.Without written) {
    Surface missing = known(written.surface());
    if (missing == null) {
      return null;
    }
    Word plays = written.plays();
    if (plays == null) {
      standIns.put(missing.name(), Optional.empty());
      return null;
    }
    Surface other = known(plays);
    if (other == null) {
      return null;
    }
    if (other.isFoot() != missing.isFoot()) {
      problems.add(
          problems
              .make(
                  Code.WRONG_LIMB,
                  line,
                  plays.span(),
                  "the "
                      + other.words()
                      + " cannot stand in for the "
                      + missing.words()
                      + ": one is for hands, the other for feet")
              .help("name another " + (missing.isFoot() ? "foot" : "hand") + " surface"));
      return null;
    }
    String at = other.name();
    for (int i = 0; i <= standIns.size(); i++) {
      if (at.equals(missing.name())) {
        problems.add(
            problems
                .make(
                    Code.MISSING_SURFACE,
                    line,
                    line.statement().span(),
                    "the stand-ins go in a circle: in the end the "
                        + missing.words()
                        + " would stand in for itself")
                .help("let one of them play a surface that the kit has"));
        return null;
      }
      Optional<String> next = standIns.getOrDefault(at, Optional.empty());
      if (next.isEmpty()) {
        break;
      }
      at = next.get();
    }
    standIns.put(missing.name(), Optional.of(other.name()));
    return null;
  }

  @Override
  public @Nullable Void leftHanded(KitStatement.LeftHanded written) {
    leftHanded = true;
    return null;
  }

  @Override
  public @Nullable Void place(KitStatement.Place written) {
    Surface surface = known(written.surface());
    if (surface == null) {
      return null;
    }
    int distance = written.distance().whole();
    int degrees = written.degrees().whole();
    Num height = written.height();
    int high = height == null ? 75 : height.whole();
    Word side = written.side();
    if (distance < 1 || distance > 300) {
      syntax(written.distance().span(), "this number is out of range", "1 to 300 cm");
    } else if (degrees > 180) {
      syntax(written.degrees().span(), "this number is out of range", "0 to 180 degrees");
    } else if (high > 250) {
      syntax(written.span(), "this number is out of range", "0 to 250 cm high");
    } else {
      int turn = side != null && side.text().equals("left") ? -degrees : degrees;
      positions.put(surface.name(), new Position(distance, turn, high));
    }
    return null;
  }
}
