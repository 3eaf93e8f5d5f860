package tabor.merge;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import tabor.syntax.At;
import tabor.syntax.ChartStatement;
import tabor.syntax.CountRef;
import tabor.syntax.LimbRef;
import tabor.syntax.Name;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.PageKind;
import tabor.syntax.Statement;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;
import tabor.syntax.Verb;

/**
 * What a statement says about whom. It is read off the parts of the tree, whatever the statement
 * is: the first limb, surface, target or name is whom it is about, counts and bars are where.
 *
 * @param family what kind of thing is said: two statements of other families are never the same
 * @param whom about whom or what
 * @param where at which counts and in which bars
 * @param several true if a section may say this of the same again and again, each time meaning one
 *     thing more
 */
record StatementKey(String family, String whom, String where, boolean several) {
  private static final Pattern SPAN = Pattern.compile("span=Span\\[start=\\d+, end=\\d+]");

  /** How the parts of each kind of statement are read, in order. */
  private static final ClassValue<List<Method>> ACCESSORS =
      new ClassValue<>() {
        @Override
        protected List<Method> computeValue(Class<?> type) {
          return Arrays.stream(type.getRecordComponents())
              .map(RecordComponent::getAccessor)
              .toList();
        }
      };

  /** Statements that add to each other wherever they stand. */
  private static final Set<String> ADDING = Set.of("Prose", "Use", "Next", "Goal", "Teacher");

  static StatementKey of(Statement statement) {
    String family = statement.getClass().getSimpleName();
    String whom = "";
    List<String> where = new ArrayList<>();
    boolean several = statement instanceof ChartStatement || ADDING.contains(family);
    if (statement instanceof Statement.Broken broken) {
      return new StatementKey(family + " " + broken.keyword(), "", "", true);
    }
    boolean named = !(statement instanceof SettingStatement) || family.equals("LimitsSetting");
    for (Method accessor : ACCESSORS.get(statement.getClass())) {
      Object part = part(statement, accessor);
      if (part instanceof Statement inner) {
        StatementKey key = of(inner);
        family += " " + key.family();
        whom = whom.isEmpty() ? key.whom() : whom;
        where.add(key.where());
        several |= key.several();
      } else if (part instanceof Verb verb) {
        family += " " + verb.decides();
      } else if (named && whom.isEmpty() && isWhom(part)) {
        whom = said(part);
      } else if (part instanceof Ref<?> ref && ref.value() instanceof PageKind kind) {
        whom = kind(kind);
      } else if (part instanceof Ref<?> ref && ref.value() instanceof Integer division) {
        whom = division.toString();
      } else if (isWhere(part)) {
        where.add(said(part));
      }
    }
    return new StatementKey(family, whom, String.join(" ", where), several);
  }

  private static Object part(Statement statement, Method accessor) {
    try {
      Object part = accessor.invoke(statement);
      return part == null ? "" : part;
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a part of " + statement + " cannot be read", e);
    }
  }

  /** Of each kind of wish for the page a section has one. */
  private static String kind(PageKind kind) {
    return switch (kind) {
      case A4, LETTER, LARGE -> "paper";
      case BARS, COLUMNS, NEW -> kind.name();
    };
  }

  private static boolean isWhom(Object part) {
    if (part instanceof List<?> list) {
      return !list.isEmpty() && isWhom(list.get(0));
    }
    return part instanceof TargetRef
        || part instanceof LimbRef
        || part instanceof SurfaceRef
        || part instanceof Subject
        || part instanceof Name
        || (part instanceof Ref<?> ref && ref.value() instanceof Character);
  }

  private static boolean isWhere(Object part) {
    return part instanceof At
        || part instanceof At.Places
        || part instanceof At.Bars
        || part instanceof CountRef;
  }

  /** A part without the places where it is written. */
  private static String said(Object part) {
    return SPAN.matcher(part.toString()).replaceAll("");
  }

  /** True if both say something of the same, though maybe not the same of it. */
  boolean isAbout(StatementKey other) {
    return family.equals(other.family) && whom.equals(other.whom);
  }
}
