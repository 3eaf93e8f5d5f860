package tabor.ide;

import org.jspecify.annotations.Nullable;
import tabor.ide.Leaf.Role;
import tabor.syntax.Edit;

/** The leaves of the lines that change a section. */
final class EditLeaves implements Edit.Cases<@Nullable Void> {
  private final LeafCollector to;

  EditLeaves(LeafCollector to) {
    this.to = to;
  }

  @Override
  public @Nullable Void plays(Edit.Plays edit) {
    to.word(Role.LIMB, edit.limb());
    to.word(Role.SURFACE, edit.surface());
    to.word(Role.LEVEL, edit.level());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void split(Edit.Split edit) {
    to.word(Role.LIMB, edit.limb());
    to.word(Role.LEVEL, edit.level());
    to.targets(edit.surfaces());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void add(Edit.Add edit) {
    to.target(edit.what());
    to.word(Role.LIMB, edit.with());
    to.word(Role.LEVEL, edit.level());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void drop(Edit.Drop edit) {
    to.targets(edit.targets());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void level(Edit.SetLevel edit) {
    to.targets(edit.targets());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void multiply(Edit.Multiply edit) {
    to.targets(edit.targets());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void adorn(Edit.Adorn edit) {
    to.targets(edit.targets());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void follows(Edit.Follows edit) {
    to.word(Role.SURFACE, edit.surface());
    to.word(Role.LIMB, edit.limb());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void move(Edit.Move edit) {
    to.targets(edit.targets());
    to.count(edit.from());
    to.count(edit.to());
    return to.bars(edit.bars());
  }

  @Override
  public @Nullable Void shift(Edit.Shift edit) {
    to.targets(edit.targets());
    to.number(edit.by());
    return to.word(Role.VALUE, edit.value());
  }

  @Override
  public @Nullable Void swapHands(Edit.SwapHands edit) {
    return null;
  }

  @Override
  public @Nullable Void only(Edit.Only edit) {
    return to.targets(edit.targets());
  }

  @Override
  public @Nullable Void take(Edit.Take edit) {
    to.targets(edit.targets());
    to.word(Role.SECTION, edit.section());
    return to.at(edit.at());
  }

  @Override
  public @Nullable Void fill(Edit.Fill edit) {
    to.word(Role.SECTION, edit.section());
    to.bars(edit.bars());
    return to.count(edit.from());
  }

  @Override
  public @Nullable Void dynamic(Edit.Dynamic edit) {
    to.word(Role.LEVEL, edit.loudness());
    to.count(edit.at());
    return to.number(edit.bar());
  }

  @Override
  public @Nullable Void hairpin(Edit.Hairpin edit) {
    to.word(Role.LEVEL, edit.loudness());
    to.count(edit.from());
    to.number(edit.fromBar());
    to.count(edit.to());
    return to.number(edit.toBar());
  }
}
