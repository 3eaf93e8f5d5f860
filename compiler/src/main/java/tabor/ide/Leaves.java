package tabor.ide;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.ide.Leaf.Role;
import tabor.syntax.Beat;
import tabor.syntax.ChartStatement;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;

/**
 * A line as a row of leaves, in the order written. The tree says what its words mean; what lies
 * between them in the text is keywords and signs.
 */
public final class Leaves {
  private static final Set<String> LIMBS =
      Set.of(
          "right",
          "left",
          "right foot",
          "left foot",
          "hands",
          "feet",
          "line",
          "all",
          "right hand",
          "left hand");

  private final LeafCollector to = new LeafCollector();

  private Leaves() {}

  /** The leaves of a line, keywords and signs included; a broken line has only those. */
  public static List<Leaf> of(Line line) {
    Leaves leaves = new Leaves();
    leaves.statement(line.statement());
    return Gaps.fill(
        leaves.to.inOrder(),
        line.passage().text(),
        line.start(),
        line.start() + line.statement().span().end());
  }

  /** True for a word that names limbs, not surfaces. */
  public static boolean isLimb(String word) {
    return LIMBS.contains(word);
  }

  private void statement(Statement statement) {
    if (statement instanceof Heading heading) {
      heading.match(new Headings());
    } else if (statement instanceof SettingStatement setting) {
      setting.match(new Settings());
    } else if (statement instanceof KitStatement kit) {
      kit.match(new Kits());
    } else if (statement instanceof PartStatement part) {
      part.match(new Parts());
    } else if (statement instanceof Edit edit) {
      edit.match(new EditLeaves(to));
    } else if (statement instanceof ChartStatement chart) {
      chart.match(new Charts());
    } else if (statement instanceof Statement.Prose prose) {
      to.text(prose.text());
    }
  }

  private final class Headings implements Heading.Cases<@Nullable Void> {
    @Override
    public @Nullable Void pattern(Heading.Pattern heading) {
      heading.places().forEach(to::element);
      return to.word(Role.PATTERN_NAME, heading.name());
    }

    @Override
    public @Nullable Void kit(Heading.Kit heading) {
      to.word(Role.KIT_NAME, heading.name());
      return to.word(Role.KIT, heading.like());
    }

    @Override
    public @Nullable Void groove(Heading.Groove heading) {
      to.text(heading.title());
      return to.word(Role.SECTION_NAME, heading.name());
    }

    @Override
    public @Nullable Void step(Heading.Step heading) {
      to.word(Role.SECTION_NAME, heading.name());
      to.text(heading.title());
      return to.word(Role.SECTION, heading.from());
    }

    @Override
    public @Nullable Void chart(Heading.Chart heading) {
      to.text(heading.title());
      return to.word(Role.SECTION_NAME, heading.name());
    }

    @Override
    public @Nullable Void broken(Heading.Faulty heading) {
      Role role =
          switch (heading.keyword().text()) {
            case "pattern" -> Role.PATTERN_NAME;
            case "kit" -> Role.KIT_NAME;
            default -> Role.SECTION_NAME;
          };
      return to.word(role, heading.name());
    }
  }

  private final class Settings implements SettingStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void title(SettingStatement.Title setting) {
      return to.text(setting.text());
    }

    @Override
    public @Nullable Void by(SettingStatement.By setting) {
      return to.text(setting.text());
    }

    @Override
    public @Nullable Void use(SettingStatement.Use setting) {
      to.leaf(Leaf.of(Role.FILE, setting.file().value(), setting.file().span()));
      return null;
    }

    @Override
    public @Nullable Void meter(SettingStatement.MeterSetting setting) {
      to.number(setting.count());
      to.number(setting.unit());
      setting.in().forEach(to::number);
      return null;
    }

    @Override
    public @Nullable Void tempo(SettingStatement.TempoSetting setting) {
      return to.counted(setting.tempo());
    }

    @Override
    public @Nullable Void feel(SettingStatement.FeelSetting setting) {
      to.word(Role.VALUE, setting.unit());
      return to.number(setting.percent());
    }

    @Override
    public @Nullable Void on(SettingStatement.On setting) {
      return to.word(Role.KIT, setting.kit());
    }

    @Override
    public @Nullable Void levels(SettingStatement.LevelsSetting setting) {
      setting.levels().forEach(level -> to.number(level.value()));
      return null;
    }

    @Override
    public @Nullable Void show(SettingStatement.Show setting) {
      return null;
    }

    @Override
    public @Nullable Void limits(SettingStatement.LimitsSetting setting) {
      for (SettingStatement.Limit limit : setting.limits()) {
        to.number(limit.comfortable());
        to.number(limit.extreme());
      }
      return null;
    }
  }

  private final class Kits implements KitStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void surface(KitStatement.NewSurface line) {
      to.word(Role.SURFACE_NAME, line.name());
      to.word(Role.LETTER_NAME, line.letter());
      to.word(Role.VALUE, line.staff());
      to.word(Role.VALUE, line.head());
      return to.number(line.key());
    }

    @Override
    public @Nullable Void letter(KitStatement.Letter line) {
      to.word(Role.LETTER_NAME, line.letter());
      return to.word(Role.SURFACE, line.surface());
    }

    @Override
    public @Nullable Void without(KitStatement.Without line) {
      to.word(Role.SURFACE, line.surface());
      return to.word(Role.SURFACE, line.plays());
    }

    @Override
    public @Nullable Void leftHanded(KitStatement.LeftHanded line) {
      return null;
    }

    @Override
    public @Nullable Void place(KitStatement.Place line) {
      to.word(Role.SURFACE, line.surface());
      to.number(line.distance());
      to.number(line.degrees());
      return to.number(line.height());
    }
  }

  private final class Parts implements PartStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void lane(PartStatement.Lane line) {
      to.target(line.subject());
      for (tabor.syntax.Bar bar : line.bars()) {
        for (Beat beat : bar.beats()) {
          beat.elements().forEach(to::element);
          to.number(beat.beats());
        }
      }
      return null;
    }

    @Override
    public @Nullable Void played(PartStatement.Played line) {
      to.target(line.subject());
      to.word(Role.PATTERN, line.pattern());
      to.number(line.strokes());
      to.number(line.places());
      return to.word(Role.VALUE, line.value());
    }

    @Override
    public @Nullable Void next(PartStatement.Next line) {
      return null;
    }

    @Override
    public @Nullable Void pickup(PartStatement.Pickup line) {
      return to.number(line.beats());
    }

    @Override
    public @Nullable Void bars(PartStatement.Bars line) {
      return to.number(line.bars());
    }
  }

  private final class Charts implements ChartStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void countIn(ChartStatement.CountIn line) {
      return to.number(line.bars());
    }

    @Override
    public @Nullable Void click(ChartStatement.Click line) {
      return null;
    }

    @Override
    public @Nullable Void play(ChartStatement.Play line) {
      line.sections().forEach(word -> to.word(Role.SECTION, word));
      to.number(line.times());
      return to.counted(line.tempo());
    }

    @Override
    public @Nullable Void rest(ChartStatement.Rest line) {
      return to.number(line.bars());
    }

    @Override
    public @Nullable Void climb(ChartStatement.Climb line) {
      to.word(Role.SECTION, line.section());
      to.number(line.from());
      to.number(line.to());
      to.number(line.by());
      to.number(line.every());
      return to.word(Role.KEYWORD, line.unit());
    }
  }
}
