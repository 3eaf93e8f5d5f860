package tabor.compile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.resolve.ChartResolver;
import tabor.resolve.GhostChecks;
import tabor.resolve.KitBuilder;
import tabor.resolve.Options;
import tabor.resolve.Resolved;
import tabor.resolve.Scope;
import tabor.resolve.SectionResolver;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SettingStatement;
import tabor.syntax.Word;

/** One compilation of one file. */
final class FileCompiler {
  /** Most strokes that the sections of a file may hold together. */
  private static final long MOST_STROKES = 5_000_000;

  private final Document document;
  private final Options options;
  private final List<Compiler.Used> used;
  private final boolean tooLong;
  private final boolean checked;
  private final FileScope scope;
  private final List<Diagnostic> headerProblems = new ArrayList<>();
  private final Map<Node, Diagnostic> nameProblems = new IdentityHashMap<>();
  private final Map<Node, Resolved> resolved;
  private final Map<String, Node> patternNodes = new LinkedHashMap<>();
  private final Map<String, Node> sectionNodes;
  private long strokes;

  FileCompiler(
      Document document,
      Options options,
      List<Compiler.Used> used,
      boolean tooLong,
      boolean checked) {
    this.document = document;
    this.options = options;
    this.used = used;
    this.tooLong = tooLong;
    this.checked = checked;
    this.scope = new FileScope(document.header(), options, document.nodes.size());
    this.resolved = new IdentityHashMap<>(document.nodes.size() + 1);
    this.sectionNodes = new HashMap<>(document.nodes.size() * 2);
  }

  Result compile() {
    if (tooLong) {
      headerProblems.add(
          Diagnostic.of(
                  Code.TOO_LONG,
                  headerSpot(),
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
    grooves();
    charts();
    return result();
  }

  private Spot headerSpot() {
    return new Spot(document.headerSyntax().passage(), new Span(0, 0));
  }

  private void declareKitsAndPatterns() {
    for (Node node : document.nodes) {
      Word word = node.ownName;
      if (word == null) {
        continue;
      }
      String name = word.text();
      if (node.kind == Node.Kind.KIT) {
        if (scope.hasKit(name)) {
          duplicate(node, word, "kit");
        } else {
          scope.declareKit(name, node);
        }
      } else if (node.kind == Node.Kind.PATTERN) {
        if (scope.hasPattern(name)) {
          duplicate(node, word, "pattern");
        } else {
          scope.declarePattern(name, node);
          patternNodes.put(name, node);
        }
      }
    }
  }

  private void circularKits() {
    for (Node node : scope.circularKits()) {
      Word like = node.headingLine().statement() instanceof Heading.Kit kit ? kit.like() : null;
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

  private void duplicate(Node node, Word word, String kind) {
    Diagnostic made =
        Diagnostic.of(
                Code.DUPLICATE_NAME,
                node.headingLine().spot(word.span()),
                "there is a " + kind + " “" + word.text() + "” already")
            .help("give this one another name; the first keeps its own");
    for (Node other : document.nodes) {
      if (other == node) {
        break;
      }
      Word otherName = other.ownName;
      boolean sameKind =
          kind.equals("section")
              ? other.kind != Node.Kind.KIT && other.kind != Node.Kind.PATTERN
              : other.kind == node.kind;
      if (sameKind && otherName != null && otherName.text().equals(word.text())) {
        made = made.label(other.headingLine().spot(otherName.span()), "the first one");
        break;
      }
    }
    nameProblems.put(node, made);
  }

  private void headerKit() {
    String name = document.header().kit();
    if (scope.kit(name) != null) {
      return;
    }
    Line last = null;
    for (Line line : document.headerSyntax().lines()) {
      if (line.statement() instanceof SettingStatement.On) {
        last = line;
      }
    }
    if (last != null && last.statement() instanceof SettingStatement.On on) {
      Spot spot = last.spot(on.kit().span());
      Diagnostic plain = Diagnostic.of(Code.UNKNOWN_NAME, spot, "there is no kit “" + name + "”");
      headerProblems.add(
          scope
              .near(Scope.Kind.KIT, name)
              .map(
                  near ->
                      plain
                          .help("did you mean “" + near + "”?")
                          .fix(Diagnostic.Fix.of("write “" + near + "”", spot, near)))
              .orElse(plain));
    }
  }

  private void grooves() {
    int number = 0;
    for (Node node : document.nodes) {
      if (!node.kind.playable()) {
        if (node.kind == Node.Kind.CHART) {
          declareName(node, node.ownName == null ? "chart" : node.ownName.text());
        }
        continue;
      }
      number++;
      Word word = node.ownName;
      String name =
          word == null ? (node.kind == Node.Kind.STEP ? "step-" : "groove-") + number : word.text();
      boolean free = declareName(node, name);
      Resolved found = resolve(node, name, () -> SectionResolver.resolve(node.syntax, name, scope));
      found = withinBounds(node, found);
      resolved.put(node, found);
      scope.previous(found);
      if (free) {
        scope.declareSection(name, found);
      }
    }
  }

  /** Takes a name for a section; false, and said so, if it is taken. */
  private boolean declareName(Node node, String name) {
    Word word = node.ownName;
    if (scope.hasSection(name) || sectionNodes.putIfAbsent(name, node) != null) {
      if (word != null) {
        duplicate(node, word, "section");
      }
      return false;
    }
    return true;
  }

  private interface Work {
    Resolved run();
  }

  private Resolved resolve(Node node, String name, Work work) {
    if (node.result instanceof Resolved before && node.name.equals(name) && scope.stillTrue(node)) {
      return before;
    }
    scope.asking(node);
    Resolved result = work.run();
    scope.asking(null);
    node.name = name;
    node.result = result;
    return result;
  }

  private Resolved withinBounds(Node node, Resolved found) {
    if (!(found.section() instanceof Groove groove)) {
      return found;
    }
    Groove base = groove.base();
    boolean shared = base != null && base.written() == groove.written();
    strokes += shared ? 0 : groove.written().size();
    if (strokes <= MOST_STROKES) {
      return found;
    }
    node.result = null;
    List<Diagnostic> problems = new ArrayList<>(found.diagnostics());
    problems.add(
        Diagnostic.of(
                Code.TOO_LONG,
                node.headingLine().spot(),
                "the sections so far have more than " + MOST_STROKES + " strokes together")
            .help("make several files of this one"));
    return new Resolved(null, true, problems);
  }

  private void charts() {
    for (Node node : document.nodes) {
      if (node.kind != Node.Kind.CHART) {
        continue;
      }
      String name = node.ownName == null ? "chart" : node.ownName.text();
      Resolved found = resolve(node, name, () -> ChartResolver.resolve(node.syntax, name, scope));
      resolved.put(node, found);
    }
    for (Node node : document.nodes) {
      Resolved found = resolved.get(node);
      Word word = node.ownName;
      if (node.kind == Node.Kind.CHART
          && found != null
          && word != null
          && sectionNodes.get(word.text()) == node) {
        scope.declareSection(word.text(), found);
      }
    }
  }

  private Result result() {
    List<Diagnostic> all = new ArrayList<>();
    List<Section> sections = new ArrayList<>(document.nodes.size());
    List<Diagnostic> header = new ArrayList<>(document.headerSyntax().problems());
    header.addAll(document.header().diagnostics());
    header.addAll(headerProblems);
    addSorted(all, header);
    Map<String, KitBuilder.Built> kits = new LinkedHashMap<>();
    for (String name : scope.kitNodes().keySet()) {
      KitBuilder.Built built = scope.build(name);
      if (built != null) {
        kits.put(name, built);
      }
    }
    for (Node node : document.nodes) {
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
        definition(node, nameProblem != null, own);
      }
      addSorted(all, own);
    }
    Map<String, Resolved> grooves = new LinkedHashMap<>(document.nodes.size() * 2);
    scope
        .sections()
        .forEach(
            (name, one) -> {
              if (sectionNodes.containsKey(name)) {
                grooves.put(name, one);
              }
            });
    Map<String, List<Beat.Element>> patterns = new LinkedHashMap<>();
    patternNodes.forEach((name, node) -> patterns.put(name, node.places()));
    return new Result(sections, grooves, kits, patterns, all);
  }

  /** What is wrong with a kit or a pattern. */
  private void definition(Node node, boolean duplicate, List<Diagnostic> own) {
    if (node.kind == Node.Kind.KIT && node.result instanceof KitBuilder.Built built) {
      own.addAll(built.diagnostics());
    } else if (node.kind == Node.Kind.PATTERN) {
      own.addAll(GhostChecks.pattern(node.headingLine(), node.places()));
    }
    Word word = node.ownName;
    if (word == null || duplicate || !checked || resolved.isEmpty() || options.on() != null) {
      return;
    }
    boolean kit = node.kind == Node.Kind.KIT;
    if (!(kit ? usedKit(word.text()) : usedPattern(word.text()))) {
      own.add(
          Diagnostic.of(
                  Code.UNUSED_NAME,
                  node.headingLine().spot(word.span()),
                  "nothing uses the " + (kit ? "kit" : "pattern") + " “" + word.text() + "”")
              .help(
                  kit
                      ? "play a section on it with “on " + word.text() + "”, or take it out"
                      : "play it with “hands play " + word.text() + " in …”, or take it out"));
    }
  }

  private boolean usedKit(String name) {
    return asked(Node.Question.KIT, name) || document.header().kit().equals(name);
  }

  private boolean usedPattern(String name) {
    return asked(Node.Question.PATTERN, name);
  }

  private boolean asked(Node.Question question, String name) {
    for (Node node : document.nodes) {
      for (Node.Dep dep : node.deps) {
        if (dep.question() == question && dep.name().equals(name)) {
          return true;
        }
      }
    }
    return false;
  }

  private static void addSorted(List<Diagnostic> all, List<Diagnostic> own) {
    if (own.size() > 1) {
      own.sort(
          Comparator.comparingInt((Diagnostic d) -> d.spot().span().start())
              .thenComparing(Diagnostic::code));
    }
    all.addAll(own);
  }
}
