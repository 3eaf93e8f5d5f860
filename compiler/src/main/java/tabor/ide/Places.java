package tabor.ide;

import tabor.syntax.At;
import tabor.syntax.Edit;

/** The places that an edit names. */
final class Places implements Edit.Cases<At> {
  @Override
  public At plays(Edit.Plays edit) {
    return edit.at();
  }

  @Override
  public At split(Edit.Split edit) {
    return edit.at();
  }

  @Override
  public At add(Edit.Add edit) {
    return edit.at();
  }

  @Override
  public At drop(Edit.Drop edit) {
    return edit.at();
  }

  @Override
  public At level(Edit.SetLevel edit) {
    return edit.at();
  }

  @Override
  public At multiply(Edit.Multiply edit) {
    return edit.at();
  }

  @Override
  public At adorn(Edit.Adorn edit) {
    return edit.at();
  }

  @Override
  public At follows(Edit.Follows edit) {
    return edit.at();
  }

  @Override
  public At move(Edit.Move edit) {
    return new At(null, edit.bars(), null);
  }

  @Override
  public At shift(Edit.Shift edit) {
    return At.EVERYWHERE;
  }

  @Override
  public At swapHands(Edit.SwapHands edit) {
    return At.EVERYWHERE;
  }

  @Override
  public At only(Edit.Only edit) {
    return At.EVERYWHERE;
  }

  @Override
  public At take(Edit.Take edit) {
    return edit.at();
  }

  @Override
  public At fill(Edit.Fill edit) {
    return new At(null, edit.bars(), null);
  }

  @Override
  public At dynamic(Edit.Dynamic edit) {
    return At.EVERYWHERE;
  }

  @Override
  public At hairpin(Edit.Hairpin edit) {
    return At.EVERYWHERE;
  }
}
