package tabor.format;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.rhythm.NoteValue;
import tabor.syntax.At;
import tabor.syntax.Distance;
import tabor.syntax.Edit;
import tabor.syntax.Num;
import tabor.syntax.Numerals;
import tabor.syntax.Ref;
import tabor.syntax.SurfaceRef;

/** Edits to text. */
final class EditPrinter implements Edit.Cases<String> {
  @Override
  public String plays(Edit.Plays edit) {
    return Printer.target(edit.who())
        + (Printer.isPair(edit.who()) ? " play " : " plays ")
        + edit.surface().name()
        + level(edit.level())
        + at(edit.at());
  }

  @Override
  public String split(Edit.Split edit) {
    return "split "
        + Printer.limb(edit.limb())
        + level(edit.level())
        + " between "
        + edit.surfaces().stream().map(SurfaceRef::name).collect(Collectors.joining(" and "))
        + at(edit.at());
  }

  @Override
  public String add(Edit.Add edit) {
    return "add "
        + Printer.target(edit.what())
        // As it is written: a bare side may be a foot here.
        + (edit.with() == null ? "" : " with " + edit.with().words())
        + level(edit.level())
        + at(new At(edit.places(), edit.bars(), null));
  }

  @Override
  public String change(Edit.Change edit) {
    return edit.verb().word() + " " + Printer.targets(edit.targets()) + at(edit.at());
  }

  @Override
  public String follows(Edit.Follows edit) {
    return edit.surface().name() + " follows " + Printer.limb(edit.limb()) + at(edit.at());
  }

  @Override
  public String move(Edit.Move edit) {
    return "move "
        + Printer.targets(edit.targets())
        + " from "
        + edit.from().words()
        + " to "
        + edit.to().words()
        + (edit.bars() == null ? "" : " in " + bars(edit.bars()));
  }

  @Override
  public String shift(Edit.Shift edit) {
    return "shift "
        + Printer.targets(edit.targets())
        + (edit.later() ? " later by " : " earlier by ")
        + distance(edit.by(), edit.unit());
  }

  /** {@code 1 sixteenth}, {@code 2 sixteenths}, {@code 1 bar}. */
  private static String distance(Num num, Distance unit) {
    if (unit instanceof Distance.OfValue of) {
      NoteValue value = of.value();
      return Printer.number(num) + " " + (num.whole() == 1 ? value.singular() : value.word());
    }
    return Printer.counted(num, unit instanceof Distance.Beats ? "beat" : "bar");
  }

  @Override
  public String swapHands(Edit.SwapHands edit) {
    return "swap hands";
  }

  @Override
  public String only(Edit.Only edit) {
    return "only " + Printer.targets(edit.targets());
  }

  @Override
  public String take(Edit.Take edit) {
    return "take "
        + Printer.targets(edit.targets())
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
        + (edit.from() == null ? "" : " from " + edit.from().words());
  }

  @Override
  public String dynamic(Edit.Dynamic edit) {
    return "dynamic "
        + loudness(edit.loudness())
        + (edit.at() == null ? "" : " at " + edit.at().words())
        + bar(edit.bar());
  }

  @Override
  public String hairpin(Edit.Hairpin edit) {
    return (edit.grows() ? "crescendo to " : "diminuendo to ")
        + loudness(edit.loudness())
        + " from "
        + edit.from().words()
        + bar(edit.fromBar())
        + " to "
        + edit.to().words()
        + bar(edit.toBar());
  }

  private static String loudness(Ref<Loudness> loudness) {
    return loudness.value().word();
  }

  private static String bar(@Nullable Num bar) {
    return bar == null ? "" : " in bar " + Printer.number(bar);
  }

  private static String level(@Nullable Ref<Level> level) {
    return level == null ? "" : " " + word(level.value());
  }

  private static String word(Level level) {
    return switch (level) {
      case GHOST -> "ghosted";
      case PLAIN -> "plain";
      case ACCENT -> "accented";
    };
  }

  private static String at(At at) {
    StringBuilder text = new StringBuilder();
    if (at.places() != null) {
      text.append(" at ");
      if (at.places().choose() != null) {
        text.append(Printer.number(at.places().choose())).append(" of ");
      }
      String before = "";
      for (List<At.Place> group : at.places().groups()) {
        for (At.Place place : group) {
          text.append(before).append(place.match(new PlacePrinter()));
          before = " ";
        }
        before = " | ";
      }
    }
    if (at.bars() != null) {
      text.append(" in ").append(bars(at.bars()));
    }
    if (at.where() != null) {
      text.append(" where ").append(word(at.where().value()));
    }
    return text.toString();
  }

  private static String bars(At.Bars bars) {
    return bars.match(new BarsPrinter());
  }

  private static final class PlacePrinter implements At.PlaceCases<String> {
    @Override
    public String one(At.One place) {
      return place.count().words();
    }

    @Override
    public String range(At.Range place) {
      return place.from().words() + " to " + place.to().words();
    }

    @Override
    public String every(At.EverySyllable place) {
      return "every "
          + switch (place.syllable()) {
            case NONE -> "beat";
            case E, AND, A -> place.syllable().sign();
          };
    }

    @Override
    public String everySlot(At.EverySlot place) {
      return "every ." + Printer.number(place.slot());
    }

    @Override
    public String everyValue(At.EveryValue place) {
      return "every " + place.value().singular();
    }

    @Override
    public String everySaid(At.EverySaid place) {
      return "every " + place.word();
    }
  }

  private static final class BarsPrinter implements At.BarsCases<String> {
    @Override
    public String listed(At.Listed bars) {
      return (bars.bars().size() == 1 ? "bar " : "bars ")
          + bars.bars().stream().map(Printer::number).collect(Collectors.joining(" "));
    }

    @Override
    public String through(At.Through bars) {
      return "bars " + Printer.number(bars.from()) + " to " + Printer.number(bars.to());
    }

    @Override
    public String last(At.Last bars) {
      return "last bar";
    }

    @Override
    public String everyNth(At.EveryNth bars) {
      return "every " + Numerals.ordinal(Integer.toString(bars.n().whole())) + " bar";
    }
  }
}
