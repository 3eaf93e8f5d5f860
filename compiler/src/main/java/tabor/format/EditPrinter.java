package tabor.format;

import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count.Syllable;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Num;

/** Edits to text. */
final class EditPrinter implements Edit.Cases<String> {
  @Override
  public String plays(Edit.Plays edit) {
    return edit.limb().text()
        + " plays "
        + edit.surface().text()
        + Printer.optional(" ", edit.level())
        + at(edit.at());
  }

  @Override
  public String split(Edit.Split edit) {
    return "split "
        + edit.limb().text()
        + Printer.optional(" ", edit.level())
        + " between "
        + Printer.words(edit.surfaces(), " and ")
        + at(edit.at());
  }

  @Override
  public String add(Edit.Add edit) {
    return "add "
        + edit.what().text()
        + Printer.optional(" with ", edit.with())
        + Printer.optional(" ", edit.level())
        + at(edit.at());
  }

  @Override
  public String drop(Edit.Drop edit) {
    return "drop " + Printer.words(edit.targets(), ", ") + at(edit.at());
  }

  @Override
  public String level(Edit.SetLevel edit) {
    return edit.verb().text() + " " + Printer.words(edit.targets(), ", ") + at(edit.at());
  }

  @Override
  public String multiply(Edit.Multiply edit) {
    return edit.verb().text() + " " + Printer.words(edit.targets(), ", ") + at(edit.at());
  }

  @Override
  public String adorn(Edit.Adorn edit) {
    return edit.verb().text() + " " + Printer.words(edit.targets(), ", ") + at(edit.at());
  }

  @Override
  public String follows(Edit.Follows edit) {
    return edit.surface().text() + " follows " + edit.limb().text() + at(edit.at());
  }

  @Override
  public String move(Edit.Move edit) {
    return "move "
        + Printer.words(edit.targets(), ", ")
        + " from "
        + Printer.count(edit.from())
        + " to "
        + Printer.count(edit.to())
        + (edit.bars() == null ? "" : " in " + bars(edit.bars()));
  }

  @Override
  public String shift(Edit.Shift edit) {
    return "shift "
        + Printer.words(edit.targets(), ", ")
        + (edit.later() ? " later by " : " earlier by ")
        + Values.counted(edit.by(), edit.value().text());
  }

  @Override
  public String swapHands(Edit.SwapHands edit) {
    return "swap hands";
  }

  @Override
  public String only(Edit.Only edit) {
    return "only " + Printer.words(edit.targets(), ", ");
  }

  @Override
  public String take(Edit.Take edit) {
    return "take "
        + Printer.words(edit.targets(), ", ")
        + " from "
        + edit.section().text()
        + at(edit.at());
  }

  @Override
  public String fill(Edit.Fill edit) {
    return "fill "
        + edit.section().text()
        + " in "
        + bars(edit.bars())
        + (edit.from() == null ? "" : " from " + Printer.count(edit.from()));
  }

  @Override
  public String dynamic(Edit.Dynamic edit) {
    return "dynamic "
        + edit.loudness().text()
        + (edit.at() == null ? "" : " at " + Printer.count(edit.at()))
        + bar(edit.bar());
  }

  @Override
  public String hairpin(Edit.Hairpin edit) {
    return edit.verb().text()
        + " to "
        + edit.loudness().text()
        + " from "
        + Printer.count(edit.from())
        + bar(edit.fromBar())
        + " to "
        + Printer.count(edit.to())
        + bar(edit.toBar());
  }

  private static String bar(@Nullable Num bar) {
    return bar == null ? "" : " in bar " + Printer.number(bar);
  }

  private static String at(At at) {
    StringBuilder text = new StringBuilder();
    if (at.places() != null) {
      text.append(" at ");
      text.append(
          at.places().items().stream().map(EditPrinter::place).collect(Collectors.joining(" ")));
    }
    if (at.bars() != null) {
      text.append(" in ").append(bars(at.bars()));
    }
    return text.append(Printer.optional(" where ", at.where())).toString();
  }

  private static String place(At.Place place) {
    if (place instanceof At.One one) {
      return Printer.count(one.count());
    }
    if (place instanceof At.Range range) {
      return Printer.count(range.from()) + " to " + Printer.count(range.to());
    }
    At.Every every = (At.Every) place;
    return "every " + (every.syllable() == Syllable.NONE ? "beat" : every.syllable().sign());
  }

  private static String bars(At.Bars bars) {
    if (bars instanceof At.Listed listed) {
      return (listed.bars().size() == 1 ? "bar " : "bars ")
          + listed.bars().stream().map(Printer::number).collect(Collectors.joining(" "));
    }
    if (bars instanceof At.Through through) {
      return "bars " + Printer.number(through.from()) + " to " + Printer.number(through.to());
    }
    if (bars instanceof At.Last) {
      return "last bar";
    }
    int n = ((At.EveryNth) bars).n().whole();
    return "every " + n + ordinal(n) + " bar";
  }

  private static String ordinal(int n) {
    if (n % 100 >= 11 && n % 100 <= 13) {
      return "th";
    }
    return switch (n % 10) {
      case 1 -> "st";
      case 2 -> "nd";
      case 3 -> "rd";
      default -> "th";
    };
  }
}
