package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Mark;
import tabor.groove.Lesson;
import tabor.groove.PracticeLog;
import tabor.groove.Section;
import tabor.lists.Lists;
import tabor.words.Words;

/** What a page has to be ticked and filled in, and what it says to the teacher. */
record WrittenOn(TextSetter type, Words words, double size) {
  /** So many goals have columns of their own in a log; more are numbered. */
  private static final int NAMED = 3;

  /** The most columns of goals. */
  private static final int MOST = 8;

  /** Goals, each with a box to tick. */
  List<Block> goals(List<String> goals, double room) {
    List<Block> blocks = new ArrayList<>();
    double indent = size * 1.5;
    for (String goal : goals) {
      if (goal.isBlank()) {
        continue;
      }
      Block text = type.text(goal, size, room - indent, size * 0.35, true, Face.BOLD);
      List<Mark> marks = new ArrayList<>();
      marks.add(Mark.Group.of("goal", List.of(box(size * 0.1, size * 0.08, size * 0.95))));
      marks.addAll(Mark.moved(text.marks(), indent, 0, 1));
      blocks.add(new Block(marks, Math.max(text.height(), size * 1.2), text.after(), true));
    }
    return blocks;
  }

  private Mark box(double x, double y, double side) {
    Box box = new Box(x, y, x + side, y + side);
    return new Mark.Ink(Contour.rounded(box, size * 0.1, Math.max(0.6, size * 0.06)));
  }

  /** Texts for the teacher, with a bar at their side. */
  List<Block> teacher(List<String> texts, double room) {
    List<Block> blocks = new ArrayList<>();
    double indent = size * 1.0;
    for (String text : texts) {
      if (text.isBlank()) {
        continue;
      }
      String said = words.text("page.for-teacher", text);
      Block set = type.text(said, size * 0.9, room - indent, size * 0.5, true, Face.ITALIC);
      List<Mark> marks = new ArrayList<>();
      marks.add(Mark.Line.rule(size * 0.3, 0, size * 0.3, set.height(), size * 0.18));
      marks.addAll(Mark.moved(set.marks(), indent, 0, 1));
      blocks.add(new Block(marks, set.height(), set.after(), true));
    }
    return blocks;
  }

  /** All goals of a lesson, its own first. */
  static List<String> goals(Lesson lesson) {
    List<String> goals = new ArrayList<>(lesson.extras().goals());
    lesson.sections().forEach(section -> goals.addAll(section.page().goals()));
    return List.copyOf(new LinkedHashSet<>(Lists.filter(goals, goal -> !goal.isBlank())));
  }

  /** The table at the end in which the student writes down what was practised. */
  List<Block> log(PracticeLog log, List<String> goals, double width) {
    boolean weeks = log.unit() == PracticeLog.Unit.WEEKS;
    boolean numbered = goals.size() > NAMED;
    int columns = Math.min(goals.size(), MOST);
    double first = size * 4.2;
    double minutes = size * 5.2;
    double share = numbered ? Math.min(size * 4.6, width * 0.5 / columns) : width * 0.19;
    double how = width - first - minutes - share * columns;
    List<Double> lefts = new ArrayList<>();
    List<String> heads = new ArrayList<>();
    double x = 0;
    x = column(lefts, heads, x, words.text(weeks ? "log.week" : "log.day"), first);
    x = column(lefts, heads, x, words.text("log.minutes"), minutes);
    for (int i = 0; i < columns; i++) {
      String goal =
          numbered ? words.text("log.tempo-of-goal", i + 1) : words.text("log.tempo", goals.get(i));
      x = column(lefts, heads, x, goal, share);
    }
    column(lefts, heads, x, words.text("log.how"), how);
    lefts.add(width);
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block(List.of(), 0.1, size * 0.6, true));
    String title = words.text(weeks ? "log.by-week" : "log.title");
    blocks.add(type.text(title, size * 1.25, width, size * 0.5, true, Face.BOLD));
    if (numbered) {
      for (int i = 0; i < goals.size(); i++) {
        String line = words.text("log.goal", i + 1, goals.get(i));
        blocks.add(type.text(line, size * 0.92, width, size * 0.2, true));
      }
    }
    blocks.add(heads(heads, lefts, width));
    for (int row = 1; row <= log.rows(); row++) {
      blocks.add(row(Integer.toString(row), lefts, width));
    }
    return blocks;
  }

  private static double column(
      List<Double> lefts, List<String> heads, double x, String head, double width) {
    lefts.add(x);
    heads.add(head);
    return x + width;
  }

  private Block heads(List<String> heads, List<Double> lefts, double width) {
    List<Mark> marks = new ArrayList<>();
    double small = size * 0.85;
    double pad = size * 0.35;
    double height = 0;
    for (int i = 0; i < heads.size(); i++) {
      double room = lefts.get(i + 1) - lefts.get(i) - 2 * pad;
      Block text = type.text(heads.get(i), small, room, 0, true, Face.BOLD);
      marks.addAll(Mark.moved(text.marks(), lefts.get(i) + pad, pad, 1));
      height = Math.max(height, text.height() + 2 * pad);
    }
    grid(marks, lefts, width, height, true);
    return new Block(marks, height, 0, true);
  }

  private Block row(String number, List<Double> lefts, double width) {
    double height = size * 2.3;
    List<Mark> marks = new ArrayList<>();
    marks.add(type.line(number, size * 0.35, height * 0.65, size, Mark.Align.LEFT));
    grid(marks, lefts, width, height, false);
    return new Block(marks, height, 0, false);
  }

  private static void grid(
      List<Mark> marks, List<Double> lefts, double width, double height, boolean top) {
    List<Mark> lines = new ArrayList<>();
    if (top) {
      lines.add(Mark.Line.rule(0, 0, width, 0, 0.6));
    }
    lines.add(Mark.Line.rule(0, height, width, height, 0.6));
    for (double x : lefts) {
      lines.add(Mark.Line.rule(x, 0, x, height, 0.6));
    }
    marks.add(Mark.Group.of("log", lines));
  }

  /** Goals of a section, and what it says to the teacher where that is asked for. */
  List<Block> of(Section section, boolean forTeacher, double room) {
    List<Block> blocks = new ArrayList<>(goals(section.page().goals(), room));
    if (forTeacher) {
      blocks.addAll(teacher(section.page().teacher(), room));
    }
    return blocks;
  }
}
