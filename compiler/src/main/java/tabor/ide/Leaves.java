package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.ide.Leaf.Role;
import tabor.syntax.At;
import tabor.syntax.Beat;
import tabor.syntax.ChartStatement;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;
import tabor.syntax.Word;

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

  private final List<Leaf> found = new ArrayList<>();

  private Leaves() {}

  /** The leaves of a line, keywords and signs included; a broken line has only those. */
  public static List<Leaf> of(Line line) {
    Leaves leaves = new Leaves();
    leaves.statement(line.statement());
    leaves.found.sort(Comparator.comparingInt(leaf -> leaf.span().start()));
    return Gaps.fill(
        leaves.found,
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
      edit.match(new Edits());
    } else if (statement instanceof ChartStatement chart) {
      chart.match(new Charts());
    } else if (statement instanceof Statement.Prose prose) {
      text(prose.text());
    }
  }

  private @Nullable Void word(Role role, @Nullable Word word) {
    if (word != null) {
      found.add(Leaf.of(role, word.text(), word.span()));
    }
    return null;
  }

  private @Nullable Void target(@Nullable Word word) {
    return word == null ? null : word(isLimb(word.text()) ? Role.LIMB : Role.SURFACE, word);
  }

  private @Nullable Void targets(List<Word> words) {
    words.forEach(this::target);
    return null;
  }

  private @Nullable Void number(@Nullable Num number) {
    if (number != null) {
      found.add(Leaf.of(Role.NUMBER, number.value().toString(), number.span()));
    }
    return null;
  }

  private @Nullable Void text(@Nullable Text text) {
    if (text != null) {
      found.add(Leaf.of(Role.TEXT, text.value(), text.span()));
    }
    return null;
  }

  private @Nullable Void count(@Nullable CountWord count) {
    if (count != null) {
      found.add(new Leaf(Role.COUNT, count.count().toString(), count.span(), count.count(), null));
    }
    return null;
  }

  private @Nullable Void at(At at) {
    if (at.places() != null) {
      for (At.Place place : at.places().items()) {
        if (place instanceof At.One one) {
          count(one.count());
        } else if (place instanceof At.Range range) {
          count(range.from());
          count(range.to());
        }
      }
    }
    word(Role.LEVEL, at.where());
    return bars(at.bars());
  }

  private @Nullable Void bars(At.@Nullable Bars bars) {
    if (bars instanceof At.Listed listed) {
      listed.bars().forEach(this::number);
    } else if (bars instanceof At.Through through) {
      number(through.from());
      number(through.to());
    } else if (bars instanceof At.EveryNth nth) {
      number(nth.n());
    }
    return null;
  }

  private void element(Beat.Element element) {
    element.match(new Elements());
  }

  private final class Elements implements Beat.Cases<@Nullable Void> {
    @Override
    public @Nullable Void hit(Beat.Hit hit) {
      found.add(new Leaf(Role.HIT, String.valueOf(hit.letter()), hit.span(), null, hit));
      return null;
    }

    @Override
    public @Nullable Void rest(Beat.Rest rest) {
      found.add(Leaf.of(Role.REST, ".", rest.span()));
      return null;
    }

    @Override
    public @Nullable Void hold(Beat.Hold hold) {
      found.add(Leaf.of(Role.HOLD, "-", hold.span()));
      return null;
    }

    @Override
    public @Nullable Void group(Beat.Group group) {
      group.elements().forEach(Leaves.this::element);
      return null;
    }

    @Override
    public @Nullable Void ghosts(Beat.Ghosts ghosts) {
      ghosts.elements().forEach(Leaves.this::element);
      return null;
    }
  }

  private final class Headings implements Heading.Cases<@Nullable Void> {
    @Override
    public @Nullable Void pattern(Heading.Pattern heading) {
      heading.places().forEach(Leaves.this::element);
      return word(Role.PATTERN_NAME, heading.name());
    }

    @Override
    public @Nullable Void kit(Heading.Kit heading) {
      word(Role.KIT_NAME, heading.name());
      return word(Role.KIT, heading.like());
    }

    @Override
    public @Nullable Void groove(Heading.Groove heading) {
      text(heading.title());
      return word(Role.SECTION_NAME, heading.name());
    }

    @Override
    public @Nullable Void step(Heading.Step heading) {
      word(Role.SECTION_NAME, heading.name());
      text(heading.title());
      return word(Role.SECTION, heading.from());
    }

    @Override
    public @Nullable Void chart(Heading.Chart heading) {
      text(heading.title());
      return word(Role.SECTION_NAME, heading.name());
    }

    @Override
    public @Nullable Void broken(Heading.Faulty heading) {
      Role role =
          switch (heading.keyword().text()) {
            case "pattern" -> Role.PATTERN_NAME;
            case "kit" -> Role.KIT_NAME;
            default -> Role.SECTION_NAME;
          };
      return word(role, heading.name());
    }
  }

  private final class Settings implements SettingStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void title(SettingStatement.Title setting) {
      return text(setting.text());
    }

    @Override
    public @Nullable Void by(SettingStatement.By setting) {
      return text(setting.text());
    }

    @Override
    public @Nullable Void use(SettingStatement.Use setting) {
      found.add(Leaf.of(Role.FILE, setting.file().value(), setting.file().span()));
      return null;
    }

    @Override
    public @Nullable Void meter(SettingStatement.MeterSetting setting) {
      number(setting.count());
      number(setting.unit());
      setting.in().forEach(Leaves.this::number);
      return null;
    }

    @Override
    public @Nullable Void tempo(SettingStatement.TempoSetting setting) {
      return counted(setting.tempo());
    }

    @Override
    public @Nullable Void feel(SettingStatement.FeelSetting setting) {
      word(Role.VALUE, setting.unit());
      return number(setting.percent());
    }

    @Override
    public @Nullable Void on(SettingStatement.On setting) {
      return word(Role.KIT, setting.kit());
    }

    @Override
    public @Nullable Void levels(SettingStatement.LevelsSetting setting) {
      setting.levels().forEach(level -> number(level.value()));
      return null;
    }

    @Override
    public @Nullable Void show(SettingStatement.Show setting) {
      return null;
    }

    @Override
    public @Nullable Void limits(SettingStatement.LimitsSetting setting) {
      for (SettingStatement.Limit limit : setting.limits()) {
        number(limit.comfortable());
        number(limit.extreme());
      }
      return null;
    }
  }

  private @Nullable Void counted(SettingStatement.@Nullable Tempo tempo) {
    if (tempo != null) {
      word(Role.VALUE, tempo.value());
      number(tempo.perMinute());
    }
    return null;
  }

  private final class Kits implements KitStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void surface(KitStatement.NewSurface line) {
      word(Role.SURFACE_NAME, line.name());
      word(Role.LETTER_NAME, line.letter());
      word(Role.VALUE, line.staff());
      word(Role.VALUE, line.head());
      return number(line.key());
    }

    @Override
    public @Nullable Void letter(KitStatement.Letter line) {
      word(Role.LETTER_NAME, line.letter());
      return word(Role.SURFACE, line.surface());
    }

    @Override
    public @Nullable Void without(KitStatement.Without line) {
      word(Role.SURFACE, line.surface());
      return word(Role.SURFACE, line.plays());
    }

    @Override
    public @Nullable Void leftHanded(KitStatement.LeftHanded line) {
      return null;
    }

    @Override
    public @Nullable Void place(KitStatement.Place line) {
      word(Role.SURFACE, line.surface());
      number(line.distance());
      number(line.degrees());
      return number(line.height());
    }
  }

  private final class Parts implements PartStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void lane(PartStatement.Lane line) {
      target(line.subject());
      for (tabor.syntax.Bar bar : line.bars()) {
        for (Beat beat : bar.beats()) {
          beat.elements().forEach(Leaves.this::element);
          number(beat.beats());
        }
      }
      return null;
    }

    @Override
    public @Nullable Void played(PartStatement.Played line) {
      target(line.subject());
      word(Role.PATTERN, line.pattern());
      number(line.strokes());
      number(line.places());
      return word(Role.VALUE, line.value());
    }

    @Override
    public @Nullable Void next(PartStatement.Next line) {
      return null;
    }

    @Override
    public @Nullable Void pickup(PartStatement.Pickup line) {
      return number(line.beats());
    }

    @Override
    public @Nullable Void bars(PartStatement.Bars line) {
      return number(line.bars());
    }
  }

  private final class Edits implements Edit.Cases<@Nullable Void> {
    @Override
    public @Nullable Void plays(Edit.Plays edit) {
      word(Role.LIMB, edit.limb());
      word(Role.SURFACE, edit.surface());
      word(Role.LEVEL, edit.level());
      return at(edit.at());
    }

    @Override
    public @Nullable Void split(Edit.Split edit) {
      word(Role.LIMB, edit.limb());
      word(Role.LEVEL, edit.level());
      targets(edit.surfaces());
      return at(edit.at());
    }

    @Override
    public @Nullable Void add(Edit.Add edit) {
      target(edit.what());
      word(Role.LIMB, edit.with());
      word(Role.LEVEL, edit.level());
      return at(edit.at());
    }

    @Override
    public @Nullable Void drop(Edit.Drop edit) {
      targets(edit.targets());
      return at(edit.at());
    }

    @Override
    public @Nullable Void level(Edit.SetLevel edit) {
      targets(edit.targets());
      return at(edit.at());
    }

    @Override
    public @Nullable Void multiply(Edit.Multiply edit) {
      targets(edit.targets());
      return at(edit.at());
    }

    @Override
    public @Nullable Void adorn(Edit.Adorn edit) {
      targets(edit.targets());
      return at(edit.at());
    }

    @Override
    public @Nullable Void follows(Edit.Follows edit) {
      word(Role.SURFACE, edit.surface());
      word(Role.LIMB, edit.limb());
      return at(edit.at());
    }

    @Override
    public @Nullable Void move(Edit.Move edit) {
      targets(edit.targets());
      count(edit.from());
      count(edit.to());
      return bars(edit.bars());
    }

    @Override
    public @Nullable Void shift(Edit.Shift edit) {
      targets(edit.targets());
      number(edit.by());
      return word(Role.VALUE, edit.value());
    }

    @Override
    public @Nullable Void swapHands(Edit.SwapHands edit) {
      return null;
    }

    @Override
    public @Nullable Void only(Edit.Only edit) {
      return targets(edit.targets());
    }

    @Override
    public @Nullable Void take(Edit.Take edit) {
      targets(edit.targets());
      word(Role.SECTION, edit.section());
      return at(edit.at());
    }

    @Override
    public @Nullable Void fill(Edit.Fill edit) {
      word(Role.SECTION, edit.section());
      bars(edit.bars());
      return count(edit.from());
    }

    @Override
    public @Nullable Void dynamic(Edit.Dynamic edit) {
      word(Role.LEVEL, edit.loudness());
      count(edit.at());
      return number(edit.bar());
    }

    @Override
    public @Nullable Void hairpin(Edit.Hairpin edit) {
      word(Role.LEVEL, edit.loudness());
      count(edit.from());
      number(edit.fromBar());
      count(edit.to());
      return number(edit.toBar());
    }
  }

  private final class Charts implements ChartStatement.Cases<@Nullable Void> {
    @Override
    public @Nullable Void countIn(ChartStatement.CountIn line) {
      return number(line.bars());
    }

    @Override
    public @Nullable Void click(ChartStatement.Click line) {
      return null;
    }

    @Override
    public @Nullable Void play(ChartStatement.Play line) {
      line.sections().forEach(word -> word(Role.SECTION, word));
      number(line.times());
      return counted(line.tempo());
    }

    @Override
    public @Nullable Void rest(ChartStatement.Rest line) {
      return number(line.bars());
    }

    @Override
    public @Nullable Void climb(ChartStatement.Climb line) {
      word(Role.SECTION, line.section());
      number(line.from());
      number(line.to());
      number(line.by());
      number(line.every());
      return word(Role.KEYWORD, line.unit());
    }
  }
}
