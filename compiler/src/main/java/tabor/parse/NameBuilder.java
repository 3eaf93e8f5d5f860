package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.kit.Limb;
import tabor.rhythm.NoteValue;
import tabor.source.Span;
import tabor.syntax.LimbRef;
import tabor.syntax.Name;
import tabor.syntax.Ref;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;
import tabor.syntax.TargetRef.Group;

/** Trees of names, limbs, surfaces and the words of closed lists to what they mean. */
final class NameBuilder {
  private NameBuilder() {}

  /** What one of the rules for names has read: which of them it was makes no difference here. */
  static Name name(ParserRuleContext name) {
    return new Name(name.getText(), Spans.of(name));
  }

  static @Nullable Name nameOrNull(@Nullable ParserRuleContext name) {
    return name == null ? null : name(name);
  }

  static SurfaceRef surface(TaborParser.SurfaceContext surface) {
    return new SurfaceRef(surface.word.getText(), Spans.of(surface));
  }

  static LimbRef limb(TaborParser.LimbContext limb) {
    boolean right = limb.side.getType() == TaborLexer.RIGHT;
    boolean foot = limb.part != null && limb.part.getType() == TaborLexer.FOOT;
    Limb side =
        foot ? right ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT : right ? Limb.RIGHT_HAND : Limb.LEFT_HAND;
    return new LimbRef(side, limb.part != null, Spans.of(limb));
  }

  static @Nullable LimbRef limbOrNull(TaborParser.@Nullable LimbContext limb) {
    return limb == null ? null : limb(limb);
  }

  static Subject subject(TaborParser.SubjectContext subject) {
    if (subject.who != null) {
      return new Subject.OfLimb(limb(subject.who));
    }
    if (subject.what != null) {
      return new Subject.OfSurface(surface(subject.what));
    }
    Span span = Spans.of(subject);
    return switch (subject.group_.getType()) {
      case TaborLexer.HANDS -> new Subject.Hands(span);
      case TaborLexer.FEET -> new Subject.Feet(span);
      default -> new Subject.Line(span);
    };
  }

  static TargetRef player(TaborParser.PlayerContext player) {
    return player.who != null ? new TargetRef.OfLimb(limb(player.who)) : group(player.group_);
  }

  static List<TargetRef> targets(TaborParser.TargetsContext targets) {
    List<TargetRef> found = new ArrayList<>(targets.items.size());
    for (TaborParser.TargetContext target : targets.items) {
      found.add(
          target.who != null
              ? new TargetRef.OfLimb(limb(target.who))
              : target.what != null
                  ? new TargetRef.OfSurface(surface(target.what))
                  : group(target.group_));
    }
    return found;
  }

  private static TargetRef group(Token token) {
    Group group =
        switch (token.getType()) {
          case TaborLexer.HANDS -> Group.HANDS;
          case TaborLexer.FEET -> Group.FEET;
          default -> Group.ALL;
        };
    return new TargetRef.OfGroup(group, Spans.of(token));
  }

  static Ref<Level> level(Token token) {
    Level level =
        switch (token.getType()) {
          case TaborLexer.GHOST, TaborLexer.GHOSTED -> Level.GHOST;
          case TaborLexer.ACCENT, TaborLexer.ACCENTED -> Level.ACCENT;
          default -> Level.PLAIN;
        };
    return new Ref<>(level, Spans.of(token));
  }

  static @Nullable Ref<Level> levelOrNull(TaborParser.@Nullable LevelContext level) {
    return level == null ? null : level(level.word);
  }

  static Ref<Loudness> loudness(TaborParser.LoudnessContext mark) {
    return new Ref<>(Loudness.of(mark.getText()).orElseThrow(), Spans.of(mark));
  }

  static Ref<NoteValue> noteValue(TaborParser.NoteValueContext value) {
    return new Ref<>(NoteValue.of(value.getText()).orElseThrow(), Spans.of(value));
  }
}
