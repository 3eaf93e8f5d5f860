package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;
import tabor.syntax.Word;

/**
 * Works out one groove or step: first kit, meter and length, then its lines from top to bottom,
 * then what the finished section has to be checked for.
 */
public final class SectionResolver {
  private final SectionSyntax syntax;
  private final Line heading;
  private final String name;
  private final Scope scope;
  private final Problems problems;
  private final SettingReader settings;
  private final Patterns patterns;
  private final OwnSetting own;

  private SectionResolver(SectionSyntax syntax, String name, Scope scope) {
    this.syntax = syntax;
    this.heading = Objects.requireNonNull(syntax.heading());
    this.name = name;
    this.scope = scope;
    this.problems = new Problems(name);
    this.settings = new SettingReader(problems);
    this.patterns = new Patterns(scope);
    this.own = new OwnSetting(syntax, scope, problems);
  }

  /**
   * Works out a groove or step.
   *
   * @param syntax its tree; its heading is a groove's or a step's, whole or faulty
   * @param name what it is called
   * @param scope what it may see
   */
  public static Resolved resolve(SectionSyntax syntax, String name, Scope scope) {
    SectionResolver resolver = new SectionResolver(syntax, name, scope);
    return resolver.isStep() ? resolver.step() : resolver.groove();
  }

  private boolean isStep() {
    return heading.statement() instanceof Heading.Step
        || (heading.statement() instanceof Heading.Faulty faulty
            && faulty.keyword().text().equals("step"));
  }

  private @Nullable String title() {
    Text title =
        heading.statement() instanceof Heading.Groove groove
            ? groove.title()
            : heading.statement() instanceof Heading.Step step ? step.title() : null;
    return title == null ? null : title.value();
  }

  private boolean hasBrokenPart() {
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof Statement.Broken) {
        return true;
      }
    }
    return false;
  }

  private Resolved failed(boolean partial) {
    return new Resolved(null, partial, problems.found());
  }

  // ---- grooves

  private Resolved groove() {
    Header header = scope.header();
    Meter meter = header.meter();
    int pickup = 0;
    Line pickupLine = null;
    Line barsLine = null;
    int bars = 0;
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof SettingStatement.MeterSetting setting) {
        meter = settings.meter(line, setting);
      } else if (statement instanceof PartStatement.Pickup written) {
        pickupLine = line;
        pickup = written.beats().whole();
      } else if (statement instanceof Statement.Broken
          && (line.startsWith("time") || line.startsWith("pickup"))) {
        meter = null;
      } else if (statement instanceof PartStatement.Bars written) {
        int said = settings.whole(line, written.bars(), 1, 1_000_000, "the number of bars");
        if (said > Work.MOST_BARS) {
          tooManyBars(line, said);
        } else if (said > 0) {
          barsLine = line;
          bars = said;
        }
      }
    }
    if (meter == null) {
      lint(header);
      return failed(true);
    }
    if (pickupLine != null && (pickup < 1 || pickup >= meter.beatCount())) {
      PartStatement.Pickup written = (PartStatement.Pickup) pickupLine.statement();
      problems.add(
          problems
              .make(
                  Code.SYNTAX,
                  pickupLine,
                  written.beats().span(),
                  "a pickup is shorter than a bar of " + meter)
              .help("a pickup has 1 to " + (meter.beatCount() - 1) + " beats here"));
      pickup = 0;
    }
    Groove.Setting setting =
        own.setting(
            new Groove.Setting(
                meter,
                own.kit(header.kit(), null),
                header.tempo(meter),
                header.feel(),
                header.levels(),
                header.showCounts(),
                header.showSticking()));
    Plan plan = new Plan(problems, patterns, setting.kit(), pickup);
    Plan.Found found = plan.measure(syntax.lines(), meter, 0, barsLine, bars);
    int whole = found.bars();
    if (whole > Work.MOST_BARS) {
      tooManyBars(heading, whole);
      whole = Work.MOST_BARS;
    }
    Work work = new Work(problems, scope, name, setting, whole, pickup, List.of());
    work.partial = hasBrokenPart() || !found.fits() || isFaulty();
    plays(work, Limb.RIGHT_HAND, "snare");
    plays(work, Limb.LEFT_HAND, "snare");
    plays(work, Limb.RIGHT_FOOT, "kick");
    plays(work, Limb.LEFT_FOOT, "hihat.foot");
    LaneRun lanes = new LaneRun(work, patterns);
    walk(work, lanes, found);
    work.repeats.addAll(lanes.repeatedBars());
    return finish(work, null);
  }

  private boolean isFaulty() {
    return heading.statement() instanceof Heading.Faulty;
  }

  private void tooManyBars(Line line, int bars) {
    problems.add(
        problems
            .make(
                Code.TOO_LONG,
                line,
                line.statement().span(),
                "a section has at most " + Work.MOST_BARS + " bars, this one has " + bars)
            .help("make sections of it, and play them one after another in a chart"));
  }

  private static void plays(Work work, Limb limb, String name) {
    Surface surface = work.kit().surface(name);
    if (surface != null) {
      work.plays.put(limb, surface);
    }
  }

  /** Names are looked at even where nothing can be measured. */
  private void lint(Header header) {
    Kit kit = own.kit(header.kit(), null);
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof PartStatement.Lane lane
          && Subject.of(lane.subject().text(), kit) == null) {
        problems.unknown(
            line,
            lane.subject(),
            "surface or limb",
            tabor.diagnostic.Near.find(lane.subject().text(), kit.surfaceNames()));
      }
    }
  }

  // ---- steps

  private Resolved step() {
    Resolved from = base();
    if (from == null) {
      return failed(true);
    }
    Section section = from.section();
    if (!(section instanceof Groove base)) {
      return failed(true);
    }
    Groove.Setting setting = own.setting(base.setting());
    int pickup = 0;
    for (int beat = base.meter().beatCount() - 1; base.pickup().sign() > 0 && beat > 0; beat--) {
      pickup++;
      if (base.meter().bar().minus(base.meter().beatStart(beat)).equals(base.pickup())) {
        break;
      }
    }
    Work work = new Work(problems, scope, name, setting, base.bars(), pickup, base.written());
    work.base = base;
    work.partial = from.partial() || hasBrokenPart() || isFaulty();
    work.marks.addAll(base.marks());
    work.hairpins.addAll(base.hairpins());
    work.repeats.addAll(base.repeats());
    base.plays()
        .forEach(
            (limb, surface) -> {
              Surface own = work.kit().surface(surface.name());
              work.plays.put(limb, own == null ? surface : own);
            });
    if (!setting.kit().equals(base.setting().kit())) {
      changeKit(work);
    }
    walk(work, new LaneRun(work, patterns), null);
    return finish(work, base);
  }

  private @Nullable Resolved base() {
    Word from = heading.statement() instanceof Heading.Step step ? step.from() : null;
    if (from == null) {
      Resolved previous = scope.previous();
      if (previous == null) {
        problems.add(
            problems
                .make(
                    Code.UNKNOWN_NAME,
                    heading,
                    heading.statement().span(),
                    "there is nothing above that this step could start from")
                .help("write a groove first"));
      }
      return previous;
    }
    Resolved found = scope.section(from.text());
    if (found == null) {
      problems.unknown(heading, from, "section above", scope.near(Scope.Kind.SECTION, from.text()));
      return null;
    }
    if (found.section() != null && !(found.section() instanceof Groove)) {
      problems.add(
          problems
              .make(
                  Code.UNKNOWN_NAME,
                  heading,
                  from.span(),
                  "“" + from.text() + "” is a chart, not a groove or a step")
              .help("name a groove or a step"));
      return null;
    }
    return found;
  }

  /** Another kit: the same names, looked up anew. */
  private void changeKit(Work work) {
    Line on = heading;
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof SettingStatement.On) {
        on = line;
      }
    }
    List<Stroke> all = new ArrayList<>(work.strokes().size());
    Set<String> said = new java.util.HashSet<>();
    for (Stroke stroke : work.strokes()) {
      Surface own = work.kit().surface(stroke.surface().name());
      if (own != null) {
        all.add(own.equals(stroke.surface()) ? stroke : Work.on(stroke, own));
      } else if (said.add(stroke.surface().name())) {
        work.partial = true;
        problems.add(
            problems
                .make(
                    Code.MISSING_SURFACE,
                    on.spot(),
                    stroke.bar(),
                    null,
                    "the kit “"
                        + work.kit().name()
                        + "” does not know the "
                        + stroke.surface().words()
                        + " that the step before plays")
                .help("drop it before, or give the kit one"));
      }
    }
    work.strokes(all);
  }

  // ---- both

  /** Applies the lines from top to bottom; parts in runs, everything else by itself. */
  private void walk(Work work, LaneRun lanes, Plan.@Nullable Found plan) {
    List<Line> run = new ArrayList<>();
    Edits edits = new Edits(work, heading);
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Lane
          || statement instanceof PartStatement.Played
          || statement instanceof PartStatement.Next) {
        run.add(line);
      } else if (statement instanceof Edit edit) {
        flush(work, lanes, plan, run);
        edits.apply(line, edit);
      } else if (statement instanceof PartStatement.Bars bars && plan == null) {
        flush(work, lanes, null, run);
        stepBars(work, line, bars);
      } else if (statement instanceof Statement.Prose prose) {
        work.prose.add(prose.text().value());
      }
    }
    flush(work, lanes, plan, run);
  }

  private void stepBars(Work work, Line line, PartStatement.Bars statement) {
    int bars = settings.whole(line, statement.bars(), 1, 1_000_000, "the number of bars");
    if (bars > Work.MOST_BARS) {
      tooManyBars(line, bars);
    } else if (bars > 0) {
      new CopyEdits(work, line).bars(bars);
    } else {
      work.partial = true;
    }
  }

  private void flush(Work work, LaneRun lanes, Plan.@Nullable Found plan, List<Line> run) {
    boolean parts = run.stream().anyMatch(l -> !(l.statement() instanceof PartStatement.Next));
    if (plan != null) {
      if (!run.isEmpty()) {
        lanes.run(run, plan, false);
      }
    } else if (parts) {
      Plan.Found found =
          new Plan(problems, patterns, work.kit(), work.pickupBeats)
              .measure(run, work.meter(), work.bars, null, 0);
      work.partial |= !found.fits();
      lanes.run(run, found, true);
    }
    run.clear();
  }

  private Resolved finish(Work work, @Nullable Groove base) {
    Groove groove = Finisher.finish(work, title(), heading, base);
    return new Resolved(groove, work.partial, problems.found());
  }
}
