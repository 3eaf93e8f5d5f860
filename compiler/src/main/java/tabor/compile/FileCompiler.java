package tabor.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.compile.Edition.Memo;
import tabor.compile.UseGraph.Source;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Player;
import tabor.groove.Section;
import tabor.kit.Kits;
import tabor.resolve.ChartResolver;
import tabor.resolve.Gaps;
import tabor.resolve.Header;
import tabor.resolve.Options;
import tabor.resolve.PatternChecks;
import tabor.resolve.PlayerResolver;
import tabor.resolve.Resolved;
import tabor.resolve.SectionResolver;
import tabor.resolve.SheetResolver;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;

/** One compilation of one file. */
final class FileCompiler {
  private final Source source;
  private final SourceDocument document;
  private final Edition edition;
  private final Options options;
  private final List<Compiler.Used> used;
  private final FileKits kits;
  private final FileScope scope;
  private final List<Diagnostic> headerProblems = new ArrayList<>();
  private final Map<SectionNode, Diagnostic> nameProblems = new IdentityHashMap<>();
  private final Map<SectionNode, Resolved> resolved = new IdentityHashMap<>();
  private final Map<String, SectionNode> patternNodes = new LinkedHashMap<>();
  private final Map<String, SectionNode> sectionNodes = new HashMap<>();
  private final Map<SectionNode, PlayerResolver.Built> builtPlayers = new IdentityHashMap<>();
  private final Map<String, Player> players = new LinkedHashMap<>();
  private final List<Memo> memos = new ArrayList<>();
  private final FileBounds bounds;

  FileCompiler(Source source, Edition edition, Options options, List<Compiler.Used> used) {
    this.source = source;
    this.document = source.document;
    this.edition = edition;
    this.options = options;
    this.used = used;
    this.kits = source.kits();
    this.scope = new FileScope(edition.defaults(kits), options, kits);
    this.bounds = new FileBounds(edition, document.length());
  }

  Result compile() {
    if (source.tooLong) {
      headerProblems.add(
          Diagnostic.of(
                  Code.TOO_LONG,
                  new Spot(document.headerSyntax().passage(), new Span(0, 0)),
                  "this text is longer than "
                      + Compiler.MOST_CHARACTERS / 1024 / 1024
                      + " million characters")
              .help("make several files of it, and join them with “use”"));
    }
    headerProblems.addAll(UsedFiles.problems(used));
    for (Compiler.Used file : used) {
      Result result = file.result();
      if (result != null) {
        scope.use(result);
      }
    }
    declareKitsAndPatterns();
    circularKits();
    headerKit();
    players();
    grooves();
    charts();
    return result();
  }

  private void declareKitsAndPatterns() {
    for (SectionNode node : document.nodes()) {
      Name name = node.ownName;
      if (name == null) {
        continue;
      }
      if (node.kind == SectionKind.KIT
          && (kits.isTaken(name.text()) || kits.node(name.text()) != node)) {
        duplicate(node, name, kits.node(name.text()));
      } else if (node.kind == SectionKind.PATTERN) {
        if (scope.hasPattern(name.text())) {
          duplicate(node, name, patternNodes.get(name.text()));
        } else {
          scope.declarePattern(name.text(), node);
          patternNodes.put(name.text(), node);
        }
      }
    }
  }

  /** Makes the players; of one that a file in use has too, what is said here wins. */
  private void players() {
    for (Compiler.Used file : used) {
      Result result = file.result();
      if (result != null) {
        result.players().forEach((name, player) -> players.merge(name, player, Player::over));
      }
    }
    Map<String, SectionNode> own = new HashMap<>();
    for (SectionNode node : document.nodes()) {
      if (node.kind != SectionKind.PLAYER) {
        continue;
      }
      Name name = node.ownName;
      if (builtPlayers.size() == FileBounds.MOST_PLAYERS) {
        nameProblems.put(node, FileBounds.manyPlayers(node));
        return;
      }
      PlayerResolver.Built built =
          PlayerResolver.resolve(node.syntax, node.name(), kits, edition.defaults(kits).limits());
      builtPlayers.put(node, built);
      if (name == null) {
        continue;
      }
      SectionNode first = own.putIfAbsent(name.text(), node);
      if (first != null) {
        duplicate(node, name, first);
      } else {
        players.merge(name.text(), built.player(), (before, now) -> now.over(before));
      }
    }
  }

  private void circularKits() {
    for (SectionNode node : kits.circular()) {
      Name like = node.like();
      if (like != null) {
        nameProblems.put(
            node,
            Diagnostic.of(
                    Code.UNKNOWN_NAME,
                    node.headingLine().spot(like.span()),
                    "this kit would be like itself in the end: “"
                        + like.text()
                        + "” comes back to it")
                .help("make one of these kits like a built-in one"));
      }
    }
  }

  private void duplicate(SectionNode node, Name name, @Nullable SectionNode first) {
    String kind =
        switch (node.kind) {
          case KIT, PATTERN, PLAYER -> node.kind.word();
          case HEADER, GROOVE, STEP, SHEET, CHART -> "section";
        };
    Diagnostic made =
        Diagnostic.of(
                Code.DUPLICATE_NAME,
                node.headingLine().spot(name.span()),
                "there is a " + kind + " “" + name.text() + "” already")
            .help(
                first == null && node.kind == SectionKind.KIT
                    ? "to play on it write on " + name.text() + "; one of your own has another name"
                    : "give this one another name; the first keeps its own");
    Name other = first == null ? null : first.ownName;
    nameProblems.put(
        node,
        first == null || other == null
            ? made
            : made.label(first.headingLine().spot(other.span()), "the first one"));
  }

  private void headerKit() {
    Header.Named kit = document.header().kit();
    if (kit != null && kits.kit(kit.name()) == null) {
      Diagnostic plain =
          Diagnostic.of(Code.UNKNOWN_NAME, kit.spot(), "there is no kit “" + kit.name() + "”")
              .help(Kits.BUILT_IN);
      headerProblems.add(
          kits.near(kit.name())
              .map(
                  near ->
                      plain
                          .help("did you mean “" + near + "”?")
                          .fix("write “" + near + "”", kit.spot(), near))
              .orElse(plain));
    }
  }

  private void grooves() {
    int number = 0;
    for (SectionNode node : document.nodes()) {
      String name = node.name();
      if (node.kind == SectionKind.CHART) {
        declareName(node, name);
      } else if (node.kind == SectionKind.SHEET) {
        section(node, name, () -> SheetResolver.resolve(node.syntax, name, scope));
      } else if (node.isPlayable()) {
        number++;
        String numbered = node.ownName == null ? name + "-" + number : name;
        scope.previous(
            section(node, numbered, () -> SectionResolver.resolve(node.syntax, numbered, scope)));
      }
    }
  }

  private Resolved section(SectionNode node, String name, Supplier<Resolved> work) {
    boolean free = declareName(node, name);
    Resolved found =
        bounds.isExceeded()
            ? new Resolved(null, Gaps.ALL, List.of(), 0)
            : bounds.section(node, resolve(node, name, work));
    resolved.put(node, found);
    if (free) {
      scope.declareSection(name, found);
    }
    return found;
  }

  /** Takes a name for a section; false, and said so, if it is taken. */
  private boolean declareName(SectionNode node, String name) {
    Name own = node.ownName;
    if (scope.hasSection(name) || sectionNodes.putIfAbsent(name, node) != null) {
      if (own != null) {
        duplicate(node, own, sectionNodes.get(name));
      }
      return false;
    }
    return true;
  }

  private Resolved resolve(SectionNode node, String name, Supplier<Resolved> work) {
    Memo memo = edition.memo(node);
    memos.add(memo);
    Resolved before = memo.resolved;
    if (before != null && memo.name.equals(name) && scope.stillTrue(memo)) {
      return before;
    }
    scope.asking(memo);
    Resolved result = work.get();
    scope.asking(null);
    memo.name = name;
    memo.resolved = result;
    return result;
  }

  private void charts() {
    for (SectionNode node : document.nodes()) {
      if (node.kind == SectionKind.CHART && node.ownName != null) {
        scope.declareChart(node.ownName.text());
      }
    }
    for (SectionNode node : document.nodes()) {
      if (node.kind == SectionKind.CHART) {
        String name = node.name();
        Resolved found =
            bounds.isExceededByCharts()
                ? new Resolved(null, Gaps.ALL, List.of(), 0)
                : resolve(node, name, () -> ChartResolver.resolve(node.syntax, name, scope));
        if (found.section() instanceof Chart chart) {
          found = bounds.chart(node, chart, found);
        }
        resolved.put(node, found);
      }
    }
    for (SectionNode node : document.nodes()) {
      Resolved found = resolved.get(node);
      Name own = node.ownName;
      if (node.kind == SectionKind.CHART
          && found != null
          && own != null
          && sectionNodes.get(own.text()) == node) {
        scope.declareSection(own.text(), found);
      }
    }
  }

  private Result result() {
    List<Diagnostic> all = new ArrayList<>();
    List<Section> sections = new ArrayList<>(document.nodes().size());
    List<Diagnostic> header = new ArrayList<>(document.headerSyntax().problems());
    header.addAll(document.header().diagnostics());
    header.addAll(headerProblems);
    addSorted(all, header);
    UsedNames names = UsedNames.of(document, memos);
    Map<Compiled.Definition, Diagnostic> unused = new LinkedHashMap<>();
    for (SectionNode node : document.nodes()) {
      if (bounds.isEnough(all)) {
        all.add(FileBounds.enough(node));
        break;
      }
      List<Diagnostic> own = new ArrayList<>(node.syntax.problems());
      Diagnostic nameProblem = nameProblems.get(node);
      if (nameProblem != null) {
        own.add(nameProblem);
      }
      Resolved found = resolved.get(node);
      if (found != null) {
        own.addAll(found.diagnostics());
        Section section = found.section();
        if (section != null) {
          sections.add(section);
        }
      } else {
        own.addAll(definition(node));
        Name name = node.ownName;
        if (name != null
            && nameProblem == null
            && node.kind != SectionKind.PLAYER
            && isChecked()
            && !bounds.isExceeded()
            && !names.has(node.kind, name.text())) {
          Diagnostic told = UsedNames.unused(node, name);
          own.add(told);
          unused.put(new Compiled.Definition(document.path, node.kind, name.text()), told);
        }
      }
      addSorted(all, own);
    }
    Map<String, List<Beat.Element>> patterns = new LinkedHashMap<>();
    patternNodes.forEach((name, node) -> patterns.put(name, node.places()));
    return new Result(
        edition.defaults(kits).setting(),
        sections,
        ownSections(),
        kits.own().keySet(),
        players,
        patterns,
        all,
        unused,
        names.ofOthers(used));
  }

  /** True if names that nobody uses are worth a word: the file plays something itself. */
  private boolean isChecked() {
    return edition.checked() && !resolved.isEmpty() && options.on() == null;
  }

  private Map<String, Resolved> ownSections() {
    Map<String, Resolved> own = new LinkedHashMap<>();
    scope
        .sections()
        .forEach(
            (name, one) -> {
              if (sectionNodes.containsKey(name)) {
                own.put(name, one);
              }
            });
    return own;
  }

  /** What is wrong with a kit or a pattern. */
  private List<Diagnostic> definition(SectionNode node) {
    PlayerResolver.Built player = builtPlayers.get(node);
    if (player != null) {
      return player.diagnostics();
    }
    if (node.kind == SectionKind.PATTERN) {
      return PatternChecks.check(node.headingLine(), node.places());
    }
    return node.kit == null ? List.of() : node.kit.built().diagnostics();
  }

  private static void addSorted(List<Diagnostic> all, List<Diagnostic> own) {
    if (own.size() > 1) {
      own.sort(
          (a, b) -> {
            int byPlace = Integer.compare(a.spot().span().start(), b.spot().span().start());
            return byPlace != 0 ? byPlace : a.code().compareTo(b.code());
          });
    }
    all.addAll(own);
  }
}
