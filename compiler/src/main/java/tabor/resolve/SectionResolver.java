package tabor.resolve;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Meters;
import tabor.source.Spot;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/**
 * Works out one groove or step, in a chain of results: settings and length ({@link SectionFrame},
 * {@link SectionLength}), then its lines from top to bottom, parts and edits ({@link
 * SectionDraft}), then the limbs of open strokes ({@link Dealing}), then the finished section with
 * what it has to be checked for ({@link SectionFinish}).
 */
public final class SectionResolver {
  private final SectionSyntax syntax;
  private final Line heading;
  private final String name;
  private final Scope scope;
  private final Problems problems;
  private final SectionSettings settings;

  private SectionResolver(SectionSyntax syntax, String name, Scope scope) {
    this.syntax = syntax;
    this.heading = Objects.requireNonNull(syntax.heading());
    this.name = name;
    this.scope = scope;
    this.problems = new Problems(name);
    this.settings = new SectionSettings(syntax, scope, problems);
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
    resolver.problems.incomplete(Gaps.of(syntax, scope.defaults().kit()));
    return resolver.isStep() ? resolver.step(false) : resolver.groove();
  }

  /**
   * Works out a variation of a sheet.
   *
   * @param syntax the step that is left of the sheet
   */
  static Resolved variation(SectionSyntax syntax, String name, Scope scope) {
    SectionResolver resolver = new SectionResolver(syntax, name, scope);
    resolver.problems.incomplete(Gaps.of(syntax, scope.defaults().kit()));
    return resolver.step(true);
  }

  /** A section before it is finished. */
  record Draft(SectionFrame frame, SectionDraft draft) {}

  /** A step as its lines leave it; null where what it starts from is not there. */
  static @Nullable Draft draft(SectionSyntax syntax, String name, Scope scope) {
    SectionResolver resolver = new SectionResolver(syntax, name, scope);
    Resolved from = resolver.base();
    return from != null && from.section() instanceof Groove base
        ? resolver.edited(base, true)
        : null;
  }

  private boolean isStep() {
    return ((Heading) heading.statement()).kind() == SectionKind.STEP;
  }

  private @Nullable String title() {
    Text title = ((Heading) heading.statement()).title();
    return title == null ? null : title.value();
  }

  private Resolved failed() {
    return new Resolved(null, Gaps.ALL, problems.found(), 0);
  }

  // ---- grooves

  /** The lines of a groove that settle it before its strokes are looked at. */
  private final class Preamble {
    @Nullable Meters meters = scope.defaults().meters();
    @Nullable Spot meterIn = scope.defaults().meterIn();
    @Nullable Line pickupLine;
    SectionLength.@Nullable Said said;

    Preamble() {
      for (Line line : syntax.lines()) {
        Statement statement = line.statement();
        if (statement instanceof SettingStatement.Time setting) {
          meters = new SettingReader(problems).meters(line, setting);
          meterIn = SettingReader.meterIn(line, setting);
        } else if (statement instanceof PartStatement.Pickup) {
          pickupLine = line;
        } else if (statement instanceof PartStatement.Bars written) {
          int bars = bars(line, written);
          said = bars == 0 ? said : new SectionLength.Said(line, bars);
        } else if (statement instanceof PartStatement.BlankBars blank) {
          said = new SectionLength.Said(line, blank.bars().whole());
        } else if (statement instanceof Statement.Broken broken
            && (broken.keyword().equals("time") || broken.keyword().equals("pickup"))) {
          meters = null;
        }
      }
    }

    /** The beats of bar 0; −1, and said so, if they do not fit. */
    int pickup(Meters known) {
      if (pickupLine == null || !(pickupLine.statement() instanceof PartStatement.Pickup written)) {
        return 0;
      }
      int beats = known.first().beatCount();
      if (written.beats().whole() < beats) {
        return written.beats().whole();
      }
      problems.tell(
          Code.SYNTAX,
          pickupLine,
          written.beats().span(),
          "a pickup is shorter than a bar of " + known.first(),
          beats == 1
              ? "a bar of one beat has no room for a pickup"
              : "a pickup has 1 to " + (beats - 1) + " beats here");
      return -1;
    }
  }

  private Resolved groove() {
    Preamble preamble = new Preamble();
    Meters meters = preamble.meters;
    int pickup = meters == null ? -1 : preamble.pickup(meters);
    if (meters == null || pickup < 0) {
      lookAtNames();
      return failed();
    }
    SectionDefaults defaults = scope.defaults();
    Groove.Setting setting =
        settings.after(
            new Groove.Setting(
                meters,
                settings.ofFile(),
                scope.options().view().tempo(defaults.tempo().in(meters.first())),
                defaults.feel(),
                defaults.levels(),
                defaults.shows().counts(),
                defaults.shows().sticking(),
                defaults.shows().changes(),
                scope.options().view().wording(defaults.wording())));
    SectionFrame frame =
        new SectionFrame(
            name, title(), heading, scope, null, setting, pickup, preamble.meterIn, false);
    SectionLength length =
        within(new LengthReader(frame, problems, syntax.lines()).ofGroove(preamble.said));
    if (!length.fits()) {
      problems.incomplete();
    }
    Map<Limb, Surface> plays = new EnumMap<>(Limb.class);
    for (Limb limb : Limb.values()) {
      plays.put(limb, setting.kit().home(limb));
    }
    SectionDraft draft = SectionDraft.empty(frame, length.bars(), plays);
    PageReader.checkBlank(syntax, problems);
    SectionDraft edited = lines(frame, draft, new LaneRun(frame, problems), length);
    List<Integer> breaks = new ArrayList<>(length.systems());
    breaks.removeIf(bar -> bar <= 1);
    return finished(frame, edited, breaks);
  }

  private SectionLength within(SectionLength length) {
    if (length.bars() <= SectionDraft.MOST_BARS) {
      return length;
    }
    tooManyBars(heading, length.bars());
    return new SectionLength(SectionDraft.MOST_BARS, length.systems(), length.fits());
  }

  /** How many bars a line says; 0, and said so, if they are too many. */
  private int bars(Line line, PartStatement.Bars statement) {
    int bars = statement.bars().whole();
    if (bars <= SectionDraft.MOST_BARS) {
      return bars;
    }
    problems.incomplete();
    tooManyBars(line, bars);
    return 0;
  }

  private void tooManyBars(Line line, int bars) {
    problems.tell(
        Code.TOO_LONG,
        line,
        line.statement().span(),
        "a section has at most " + SectionDraft.MOST_BARS + " bars, this one has " + bars,
        "make sections of it, and play them one after another in a chart");
  }

  /** Names are looked at even where nothing can be measured. */
  private void lookAtNames() {
    Kit kit = settings.ofFile();
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof PartStatement.Lane lane
          && TargetFilter.of(lane.subject().target(), kit) == null) {
        SurfaceMessages.unknownPart(problems, line, lane.subject(), kit);
      }
    }
  }

  // ---- steps

  private Resolved step(boolean lenient) {
    Resolved from = base();
    if (from == null || !(from.section() instanceof Groove base)) {
      return failed();
    }
    problems.incomplete(from.gaps());
    Draft edited = edited(base, lenient);
    return finished(edited.frame(), edited.draft(), base.page().lineStarts());
  }

  private Draft edited(Groove base, boolean lenient) {
    SectionView view = SectionView.of(base);
    Groove.Setting setting = settings.after(base.setting());
    SectionFrame frame =
        new SectionFrame(
            name, title(), heading, scope, base, setting, view.pickupBeats(), null, lenient);
    SectionView own =
        SectionView.of(
            setting.meters(),
            setting.feel(),
            setting.wording().read(),
            view.pickupBeats(),
            base.bars(),
            base.written());
    SectionDraft draft =
        new SectionDraft(
            own,
            base.plays(),
            base.marks(),
            base.hairpins(),
            base.repeats(),
            isDealtAlike(base.setting(), setting),
            0);
    SectionDraft onKit =
        setting.kit().equals(base.setting().kit())
            ? draft
            : new KitChange(frame, problems, syntax).change(draft);
    return new Draft(frame, lines(frame, onKit, null, null));
  }

  /** True if the strokes of one section, unchanged, are dealt alike in the other. */
  private static boolean isDealtAlike(Groove.Setting base, Groove.Setting own) {
    return base.kit().equals(own.kit()) && base.tempo().equals(own.tempo());
  }

  private @Nullable Resolved base() {
    Name from = ((Heading) heading.statement()).from();
    if (from == null) {
      Resolved previous = scope.previous();
      if (previous == null) {
        problems.tell(
            Code.UNKNOWN_NAME,
            heading,
            heading.statement().span(),
            "there is nothing above that this step could start from",
            "write a groove first");
      }
      return previous;
    }
    Resolved found = scope.section(from.text());
    if (found == null) {
      problems.add(SheetNames.unknown(scope, problems, heading, from, true));
      return null;
    }
    Section section = found.section();
    if (section != null && !(section instanceof Groove)) {
      problems.add(
          SheetNames.notOne(problems.make(Code.UNKNOWN_NAME, heading, from.span(), ""), section));
      return null;
    }
    return found;
  }

  // ---- both

  /**
   * Applies the lines from top to bottom; parts in runs, everything else by itself.
   *
   * @param lanes writes the parts of a groove; null in a step, where each run replaces strokes
   * @param length how long a groove is; null in a step
   */
  private SectionDraft lines(
      SectionFrame frame,
      SectionDraft start,
      @Nullable LaneRun lanes,
      @Nullable SectionLength length) {
    SectionDraft draft = start;
    List<Line> run = new ArrayList<>();
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Lane
          || statement instanceof PartStatement.Played
          || statement instanceof PartStatement.Next) {
        run.add(line);
      } else if (statement instanceof Edit edit) {
        draft = run(frame, draft, run, lanes, length).looked();
        LineContext context = new LineContext(frame, problems, line);
        if (context.tooMuch(draft)) {
          break;
        }
        if (TwoReadings.mayBe(draft.view())) {
          new TwoReadings(context, draft.view()).check(edit);
        }
        draft = edit.match(new EditLine(context, draft));
      } else if (statement instanceof PartStatement.Bars written && lanes == null) {
        draft = run(frame, draft, run, null, null);
        int bars = bars(line, written);
        LineContext context = new LineContext(frame, problems, line);
        draft = bars == 0 ? draft : new CopyEdits(context, draft).bars(bars, written.bars().span());
      }
    }
    return run(frame, draft, run, lanes, length);
  }

  /** Writes the parts gathered so far. */
  private SectionDraft run(
      SectionFrame frame,
      SectionDraft draft,
      List<Line> run,
      @Nullable LaneRun lanes,
      @Nullable SectionLength length) {
    List<Line> lines = List.copyOf(run);
    run.clear();
    if (lanes != null && length != null) {
      return lines.isEmpty() ? draft : lanes.write(draft, lines, length);
    }
    if (Lists.all(lines, line -> line.statement() instanceof PartStatement.Next)) {
      return draft;
    }
    SectionLength fixed = new LengthReader(frame, problems, lines).ofStep(draft.bars());
    if (!fixed.fits()) {
      problems.incomplete();
    }
    return new LaneRun(frame, problems).replace(draft, lines, fixed);
  }

  private Resolved finished(SectionFrame frame, SectionDraft edited, List<Integer> lineStarts) {
    SectionDraft dealt = Dealing.dealt(frame, edited);
    Dealing.report(frame, problems, dealt);
    Groove groove = new SectionFinish(frame, problems, syntax, lineStarts).finish(dealt);
    return new Resolved(groove, problems.gaps(), problems.found(), dealt.effort());
  }
}
