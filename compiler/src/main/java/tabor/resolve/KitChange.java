package tabor.resolve;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.diagnostic.Code;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;

/** A step on another kit than the section that it comes from: the same names, looked up anew. */
record KitChange(SectionFrame frame, Problems problems, SectionSyntax syntax) {
  SectionDraft change(SectionDraft draft) {
    List<Stroke> all = new ArrayList<>(draft.strokes().size());
    Set<String> said = new HashSet<>();
    for (Stroke stroke : draft.strokes()) {
      Surface own = frame.kit().surface(stroke.surface().name());
      if (own != null) {
        all.add(own.equals(stroke.surface()) ? stroke : SignRules.on(stroke, own));
      } else if (said.add(stroke.surface().name())) {
        problems.incomplete();
        problems.tell(
            Code.MISSING_SURFACE,
            on().spot(),
            stroke.bar(),
            null,
            "the kit “"
                + frame.kit().name()
                + "” does not know the "
                + stroke.surface().words()
                + " that the step before plays",
            "drop it before, or give the kit one");
      }
    }
    SectionDraft done = draft.with(all);
    Map<Limb, Surface> plays = new EnumMap<>(Limb.class);
    draft
        .plays()
        .forEach(
            (limb, surface) -> {
              Surface own = frame.kit().surface(surface.name());
              plays.put(limb, own == null ? surface : own);
            });
    return new SectionDraft(
        done.view(), plays, draft.marks(), draft.hairpins(), draft.repeats(), false, 0);
  }

  /** The line that chooses the kit; the heading where none does. */
  private Line on() {
    Line on = frame.heading();
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof SettingStatement.On) {
        on = line;
      }
    }
    return on;
  }
}
