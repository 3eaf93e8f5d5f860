package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.resolve.TargetFilter;
import tabor.syntax.Edit;
import tabor.syntax.LimbRef;
import tabor.syntax.Statement;
import tabor.syntax.TargetRef;

/** Whose strokes a line is about. */
final class EditTargets {
  private EditTargets() {}

  /** True for the strokes that the line acts on; for none where it makes strokes of its own. */
  static Predicate<Stroke> of(Statement statement, Kit kit) {
    List<TargetRef> targets = new ArrayList<>();
    if (statement instanceof Edit.Split || statement instanceof Edit.Follows) {
      SyntaxNodes.all(statement, LimbRef.class)
          .forEach(limb -> targets.add(new TargetRef.OfLimb(limb)));
    } else if (statement instanceof Edit && !(statement instanceof Edit.Add)) {
      targets.addAll(SyntaxNodes.all(statement, TargetRef.class));
    }
    return TargetFilter.any(targets, kit);
  }
}
