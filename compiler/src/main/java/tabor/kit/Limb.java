package tabor.kit;

/** Who strikes. The order is the order of every list. */
public enum Limb {
  RIGHT_HAND("right hand"),
  LEFT_HAND("left hand"),
  RIGHT_FOOT("right foot"),
  LEFT_FOOT("left foot");

  private final String words;
  private final String id;

  Limb(String words) {
    this.words = words;
    this.id = words.replace(' ', '-');
  }

  /** {@code right hand}. */
  public String words() {
    return words;
  }

  /** The words with a hyphen, fit for a class or file name: {@code right-hand}. */
  public String id() {
    return id;
  }

  /** True for the two hands. */
  public boolean isHand() {
    return this == RIGHT_HAND || this == LEFT_HAND;
  }

  /** True for the right hand and the right foot. */
  public boolean isRight() {
    return this == RIGHT_HAND || this == RIGHT_FOOT;
  }

  /** The other limb of the pair. */
  public Limb other() {
    return switch (this) {
      case RIGHT_HAND -> LEFT_HAND;
      case LEFT_HAND -> RIGHT_HAND;
      case RIGHT_FOOT -> LEFT_FOOT;
      case LEFT_FOOT -> RIGHT_FOOT;
    };
  }

  /** The letter of the sticking printed under a stroke: R or L, of hands and feet alike. */
  public String letter() {
    return isRight() ? "R" : "L";
  }
}
