package tabor.compile;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.compile.Edition.Memo;
import tabor.compile.Edition.Question;
import tabor.compile.UseGraph.Source;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.resolve.Header;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;

/**
 * The kits and patterns that a file asks for.
 *
 * @param kits their names
 * @param patterns their names
 */
record UsedNames(Set<String> kits, Set<String> patterns) {
  /** What the header, the kits and the sections of a file ask for. */
  static UsedNames of(SourceDocument document, List<Memo> memos) {
    Set<String> kits = FileScope.asked(memos, Question.KIT);
    for (SectionNode node : document.nodes()) {
      Name like = node.like();
      if (like != null) {
        kits.add(like.text());
      }
    }
    Header.Named named = document.header().kit();
    if (named != null) {
      kits.add(named.name());
    }
    return new UsedNames(kits, FileScope.asked(memos, Question.PATTERN));
  }

  /** True if a kit or pattern of this name is asked for. */
  boolean has(SectionKind kind, String name) {
    return (kind == SectionKind.KIT ? kits : patterns).contains(name);
  }

  /** Those that belong to other files, and what these use in turn. */
  Set<Compiled.Definition> ofOthers(List<Compiler.Used> used) {
    Set<Compiled.Definition> uses = new HashSet<>();
    for (Compiler.Used file : used) {
      Result result = file.result();
      Source target = file.link().target();
      if (result != null && target != null) {
        add(uses, target, SectionKind.KIT, result.kits());
        add(uses, target, SectionKind.PATTERN, result.patterns().keySet());
        uses.addAll(result.uses());
      }
    }
    return uses;
  }

  private void add(
      Set<Compiled.Definition> uses, Source target, SectionKind kind, Set<String> names) {
    for (String name : names) {
      if (has(kind, name)) {
        uses.add(new Compiled.Definition(target.document.path, kind, name));
      }
    }
  }

  /** Says that nothing uses a kit or pattern. */
  static Diagnostic unused(SectionNode node, Name name) {
    boolean kit = node.kind == SectionKind.KIT;
    return Diagnostic.of(
            Code.UNUSED_NAME,
            node.headingLine().spot(name.span()),
            "nothing uses the " + node.kind.word() + " “" + name.text() + "”")
        .help(
            kit
                ? "play a section on it with “on " + name.text() + "”, or take it out"
                : "play it with “hands play " + name.text() + " in …”, or take it out");
  }
}
