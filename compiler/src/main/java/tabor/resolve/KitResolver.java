package tabor.resolve;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limits;
import tabor.kit.Position;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.SurfaceRef;

/** Makes a kit of a kit section. Without {@code like} it starts from the five-piece kit. */
public final class KitResolver implements KitStatement.Cases<@Nullable Void> {
  // The middle line is free in every built-in kit.
  private static final StaffPlace FREE_PLACE = new StaffPlace('B', 4);

  /** In centimetres, where a kit says nothing. */
  private static final int USUAL_HEIGHT = 75;

  private static final int MOST_SURFACES = 128;

  private final Problems problems;
  private final Map<String, Surface> surfaces;
  private final Map<Character, String> letters;
  private final Map<String, Optional<String>> standIns;
  private final Map<String, Position> positions;
  private final Map<String, Limits> limits;
  private boolean leftHanded;
  private Line line;

  private KitResolver(Problems problems, Kit like, Line heading) {
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

  /**
   * Makes a kit.
   *
   * @param like the kit that its heading says it is like; null if there is none such
   * @param near the name of a kit that looks like that one's
   */
  public static Built resolve(
      SectionSyntax section, String name, @Nullable Kit like, Optional<String> near) {
    Line heading = java.util.Objects.requireNonNull(section.heading());
    Problems problems = new Problems(null);
    Name other = heading.statement() instanceof Heading.Kit written ? written.like() : null;
    if (other != null && like == null) {
      problems.unknown(heading, other.text(), other.span(), "kit", near);
    }
    KitResolver builder = new KitResolver(problems, like == null ? Kits.FIVE_PIECE : like, heading);
    for (Line next : section.lines()) {
      builder.line = next;
      if (next.statement() instanceof KitStatement statement) {
        statement.match(builder);
      } else if (next.statement() instanceof SettingStatement.LimitsSetting setting) {
        SettingReader.limits(setting, builder.limits);
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

  @Override
  public @Nullable Void surface(KitStatement.NewSurface written) {
    Num key = written.key();
    if (key == null) {
      problems.tell(
          Code.SYNTAX,
          line,
          written.name().span(),
          "the surface “" + written.name().name() + "” has no key",
          "say which General MIDI key sounds it: key 52");
      return null;
    }
    if (surfaces.size() >= MOST_SURFACES) {
      problems.tell(
          Code.TOO_LONG,
          line,
          written.span(),
          "a kit has at most " + MOST_SURFACES + " surfaces",
          "make two kits of it");
      return null;
    }
    String name = written.name().name();
    StaffPlace place = written.staff() == null ? FREE_PLACE : written.staff().value();
    Surface.Head head = written.head() == null ? Surface.Head.NORMAL : written.head().value();
    Surface before = surfaces.get(name);
    surfaces.put(
        name,
        before == null
            ? Surface.own(name, key.whole(), place, head, surfaces.get(Surface.piece(name)))
            : new Surface(name, key.whole(), place, head, before.facts()));
    standIns.remove(name);
    if (written.letter() != null) {
      letters.put(written.letter().value(), name);
    }
    return null;
  }

  private @Nullable Surface known(SurfaceRef named) {
    Surface surface = surfaces.get(named.name());
    if (surface == null) {
      problems.unknown(
          line,
          named.name(),
          named.span(),
          "surface",
          SurfaceNames.near(named.name(), surfaces.keySet()));
    }
    return surface;
  }

  @Override
  public @Nullable Void letter(KitStatement.Letter written) {
    Surface surface = known(written.surface());
    if (surface != null) {
      letters.put(written.letter().value(), surface.name());
    }
    return null;
  }

  @Override
  public @Nullable Void without(KitStatement.Without written) {
    Surface missing = known(written.surface());
    if (missing == null) {
      return null;
    }
    SurfaceRef plays = written.plays();
    if (plays == null) {
      standIns.put(missing.name(), Optional.empty());
      return null;
    }
    Surface other = known(plays);
    if (other == null) {
      return null;
    }
    if (other.isFoot() != missing.isFoot()) {
      problems.tell(
          Code.WRONG_LIMB,
          line,
          plays.span(),
          "the "
              + other.words()
              + " cannot stand in for the "
              + missing.words()
              + ": one is for hands, the other for feet",
          "name another " + (missing.isFoot() ? "foot" : "hand") + " surface");
      return null;
    }
    String at = other.name();
    for (int i = 0; i <= standIns.size(); i++) {
      if (at.equals(missing.name())) {
        problems.tell(
            Code.MISSING_SURFACE,
            line,
            line.statement().span(),
            "the stand-ins go in a circle: in the end the "
                + missing.words()
                + " would stand in for itself",
            "let one of them play a surface that the kit has");
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
    int degrees = written.degrees().whole();
    Ref<KitStatement.Side> side = written.side();
    boolean left = side != null && side.value() == KitStatement.Side.LEFT;
    positions.put(
        surface.name(),
        new Position(
            written.distance().whole(),
            left ? -degrees : degrees,
            written.height() == null ? USUAL_HEIGHT : written.height().whole()));
    return null;
  }
}
