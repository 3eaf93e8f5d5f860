package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.groove.CountingWords;
import tabor.groove.PageWishes;
import tabor.groove.Player;
import tabor.kit.Kit;
import tabor.kit.Limits;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.PlayerStatement;
import tabor.syntax.Ref;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.Shown;
import tabor.syntax.Statement;
import tabor.syntax.Text;
import tabor.words.Language;

/** Players as written to players. Which sections they name is not looked at: it differs weekly. */
public final class PlayerResolver {
  private final Problems problems = new Problems(null);
  private final Shelf shelf;
  private final Map<String, Limits> limits;
  private @Nullable String kit;
  private boolean leftHanded;
  private boolean openHanded;
  private Player.@Nullable Speed speed;
  private boolean limited;
  private final List<Player.Pick> sections = new ArrayList<>();
  private @Nullable Boolean counts;
  private @Nullable Boolean sticking;
  private @Nullable Boolean changes;
  private PageWishes wishes = PageWishes.NONE;
  private final List<String> prose = new ArrayList<>();
  private @Nullable CountingWords words;
  private @Nullable Language language;

  private PlayerResolver(Shelf shelf, Map<String, Limits> limits) {
    this.shelf = shelf;
    this.limits = new HashMap<>(limits);
  }

  /** Answers for the kit that a player plays on. */
  public interface Shelf {
    /** The kit of this name, built-in ones included; null if there is none. */
    @Nullable Kit kit(String name);

    /** A name that looks like {@code name}. */
    Optional<String> near(String name);
  }

  /**
   * A player and what is wrong with it.
   *
   * @param player as far as it could be made
   * @param diagnostics what is wrong, in no order
   */
  public record Built(Player player, List<Diagnostic> diagnostics) {
    /** Copies the list. */
    public Built {
      diagnostics = List.copyOf(diagnostics);
    }
  }

  /**
   * Works out a player.
   *
   * @param syntax its tree; its heading is a player's, whole or faulty
   * @param name what it is called
   * @param shelf answers for its kit
   * @param limits the limits that the file's header names; the empty name is everybody
   */
  public static Built resolve(
      SectionSyntax syntax, String name, Shelf shelf, Map<String, Limits> limits) {
    Line heading = Objects.requireNonNull(syntax.heading());
    PlayerResolver resolver = new PlayerResolver(shelf, limits);
    syntax.lines().forEach(resolver::line);
    Text title = ((Heading) heading.statement()).title();
    return new Built(
        new Player(
            name,
            title == null ? null : title.value(),
            heading.spot(),
            resolver.kit,
            resolver.leftHanded,
            resolver.openHanded,
            resolver.speed,
            resolver.limited ? resolver.limits.get("") : null,
            resolver.sections,
            resolver.counts,
            resolver.sticking,
            resolver.changes,
            resolver.wishes,
            resolver.prose,
            resolver.words,
            resolver.language),
        resolver.problems.found());
  }

  private void line(Line line) {
    Statement statement = line.statement();
    if (statement instanceof SettingStatement.On on) {
      on(line, on.kit());
    } else if (statement instanceof KitStatement.LeftHanded) {
      leftHanded = true;
    } else if (statement instanceof PlayerStatement.OpenHanded) {
      openHanded = true;
    } else if (statement instanceof PlayerStatement.TempoShare share) {
      speed = new Player.Speed(share.percent().value().over(100), null, null);
    } else if (statement instanceof SettingStatement.TempoSetting written) {
      SettingStatement.Tempo tempo = written.tempo();
      speed =
          new Player.Speed(
              null, tempo.perMinute().value(), tempo.unit() == null ? null : tempo.unit().value());
    } else if (statement instanceof PlayerStatement.Sections written) {
      sections.clear();
      written.ranges().forEach(range -> sections.add(pick(range)));
    } else if (statement instanceof SettingStatement.LimitsSetting written) {
      limited = true;
      SettingReader.limits(written, limits);
    } else if (statement instanceof SettingStatement.Show show) {
      show(show.shown());
    } else if (statement instanceof SettingStatement.Page page) {
      wishes = PageReader.wished(wishes, page);
    } else if (statement instanceof SettingStatement.Say say) {
      words = PageReader.said(words == null ? CountingWords.OURS : words, say);
    } else if (statement instanceof SettingStatement.LanguageSetting setting) {
      language = setting.language().value();
    } else if (statement instanceof Statement.Prose text) {
      prose.add(text.text().value());
    }
  }

  private void on(Line line, Name name) {
    if (shelf.kit(name.text()) == null) {
      problems.unknown(line, name.text(), name.span(), "kit", shelf.near(name.text()));
    } else {
      kit = name.text();
    }
  }

  private static Player.Pick pick(PlayerStatement.Range range) {
    Num first = range.first();
    Name from = range.from();
    Name to = range.to();
    return new Player.Pick(
        first == null ? 0 : first.whole(),
        from == null ? null : from.text(),
        to == null ? null : to.text());
  }

  private void show(List<Ref<Shown>> shown) {
    counts = false;
    sticking = false;
    for (Ref<Shown> one : shown) {
      switch (one.value()) {
        case COUNTS -> counts = true;
        case STICKING -> sticking = true;
        case CHANGES -> changes = true;
        case NO_CHANGES, NONE -> changes = false;
      }
    }
  }
}
