package tabor.compile;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.kit.Kit;
import tabor.resolve.Header;
import tabor.resolve.Options;
import tabor.resolve.Resolved;
import tabor.resolve.SectionDefaults;

/**
 * A file under the settings that it is handed, between two compilations: what each of its sections
 * came to and which answers that rests on, and what it came to as a whole.
 */
final class Edition {
  private final SourceDocument document;
  private final SectionDefaults handed;
  private final boolean checked;
  private SectionDefaults defaults = SectionDefaults.USUAL;
  private Map<SectionNode, Memo> memos = new IdentityHashMap<>();
  private Options options = Options.NONE;
  private @Nullable Result result;
  private int revision = -1;
  private List<Object> basis = List.of();

  Edition(SourceDocument document, SectionDefaults handed, boolean checked) {
    this.document = document;
    this.handed = handed;
    this.checked = checked;
  }

  /** What can be asked. */
  enum Question {
    DEFAULTS,
    KIT,
    PATTERN,
    SECTION,
    PREVIOUS,
    CHART,
    NEAR_PATTERN,
    NEAR_KIT,
    NEAR_SECTION
  }

  /** A question about a name. */
  record Asked(Question question, String name) {}

  /**
   * A section worked out, and what that rests on: it is used again while its text, its name and all
   * the answers are the same.
   */
  static final class Memo {
    final Map<Asked, Object> answers = new LinkedHashMap<>();
    String name = "";
    @Nullable Resolved resolved;

    private Memo copy() {
      Memo copy = new Memo();
      copy.answers.putAll(answers);
      copy.name = name;
      copy.resolved = resolved;
      return copy;
    }
  }

  /**
   * The same as it is now, going its own way from here.
   *
   * @param of the copy of the file
   * @param copies its sections' copies
   */
  Edition copy(SourceDocument of, Map<SectionNode, SectionNode> copies) {
    Edition copy = new Edition(of, handed, checked);
    copy.defaults = defaults;
    copy.options = options;
    copy.result = result;
    copy.revision = revision;
    copy.basis = basis;
    memos.forEach(
        (node, memo) -> {
          SectionNode other = copies.get(node);
          if (other != null) {
            copy.memos.put(other, memo.copy());
          }
        });
    return copy;
  }

  SectionDefaults handed() {
    return handed;
  }

  boolean checked() {
    return checked;
  }

  /** What its sections start from; the same object while it does not change. */
  SectionDefaults defaults(FileKits kits) {
    Header header = document.header();
    Kit named = header.kit() == null ? null : kits.kit(header.kit().name());
    SectionDefaults now = handed.after(header, named);
    if (!now.equals(defaults)) {
      defaults = now;
    }
    return defaults;
  }

  /** What is remembered of a section; nothing where it is new. */
  Memo memo(SectionNode node) {
    return memos.computeIfAbsent(node, n -> new Memo());
  }

  /** The result for the same text, options and files in use; null if something has changed. */
  @Nullable Result known(Options asked, List<Object> now) {
    if (!asked.equals(options)) {
      options = asked;
      memos = new IdentityHashMap<>();
      result = null;
    }
    return revision == document.revision() && same(now, basis) ? result : null;
  }

  /** Remembers a result, and forgets sections that are gone. */
  void keep(Result found, List<Object> now) {
    result = found;
    revision = document.revision();
    basis = new ArrayList<>(now);
    Map<SectionNode, Memo> alive = new IdentityHashMap<>(document.nodes().size() * 2);
    for (SectionNode node : document.nodes()) {
      Memo memo = memos.get(node);
      if (memo != null) {
        alive.put(node, memo);
      }
    }
    memos = alive;
  }

  /** Results are compared as objects: a file in use that did not change has the same one. */
  private static boolean same(List<Object> now, List<Object> before) {
    if (now.size() != before.size()) {
      return false;
    }
    for (int i = 0; i < now.size(); i++) {
      Object a = now.get(i);
      Object b = before.get(i);
      if (a != b && (a instanceof Result || !a.equals(b))) {
        return false;
      }
    }
    return true;
  }
}
