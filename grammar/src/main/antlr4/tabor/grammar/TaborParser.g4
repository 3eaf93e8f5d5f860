// The statements of the notation, word for word. A statement is a line; which section takes which is said in the
// table of statements beside this grammar, which has a row for every labelled alternative.
parser grammar TaborParser;

options { tokenVocab = TaborLexer; }

// A whole file at once.
file : lines+=line (ends+=NEWLINE lines+=line)* end=EOF ;
line : content=statement? ;

// One line on its own.
single : content=statement end=EOF ;

statement
  : headingPart=heading
  | settingPart=setting
  | kitPart=kitLine
  | chartPart=chartLine
  | lanePart=partLine
  | editPart=edit
  | prosePart=prose
  ;

// ---- headings

heading
  : keyword=PATTERN id=name LANE_START (spaces+=GAP | spaces+=BAR_LINE | places+=element)+ # patternHeading
  | keyword=KIT id=name (LIKE like=name)?                                     # kitHeading
  | keyword=GROOVE id=name title=text?                                        # grooveHeading
  | keyword=STEP (id=name title=text? | title=text) (FROM from=name)?         # stepHeading
  | keyword=CHART id=name title=text?                                         # chartHeading
  ;

// ---- settings

setting
  : keyword=TITLE words=text                                                  # title
  | keyword=BY words=text                                                     # by
  | keyword=USE words=text                                                    # use
  | keyword=TIME meters+=meter+                                               # time
  | keyword=TEMPO speed=tempo                                                 # tempoSetting
  | keyword=FEEL (STRAIGHT | SWING unit=swung (share=PERCENT | AS TRIPLETS))  # feel
  | keyword=ON kit=name                                                       # on
  | keyword=LEVELS items+=velocity+                                           # levels
  | keyword=SHOW (none=NONE | items+=shown+)                                  # show
  | keyword=LIMITS who=name? items+=limit+                                    # limits
  ;

meter : signature=RATIO (IN (equal=WHOLE | sum=SUM) | GROUPED groups=SUM)? ;
velocity : what=(GHOST | PLAIN | ACCENT) value=WHOLE ;
shown : what=(COUNTS | STICKING | CHANGES | NO_CHANGES) ;
limit : what=(HANDS | FEET | DOUBLES | REACH) low=WHOLE TO high=WHOLE ;
swung : what=(EIGHTHS | SIXTEENTHS) ;
tempo : (unit=beatUnit EQUALS)? speed=number ;
beatUnit : word=(HALF | QUARTER | EIGHTH | SIXTEENTH
  | DOTTED_HALF | DOTTED_QUARTER | DOTTED_EIGHTH | DOTTED_SIXTEENTH) ;
number : digits=(WHOLE | DECIMAL) ;

// ---- kits

kitLine
  : keyword=SURFACE id=surface clauses+=clause*                               # newSurface
  | keyword=LETTER sign=letter EQUALS of=surface                              # newLetter
  | keyword=WITHOUT lacking=surface ((PLAYS | PLAY) instead=surface)?         # without
  | keyword=LEFT_HANDED                                                       # leftHanded
  | keyword=PLACE what=surface away=WHOLE CM turned=WHOLE DEGREES
      side=(LEFT | RIGHT)? (height=WHOLE CM HIGH)?                            # placed
  ;

clause
  : keyword=LETTER sign=letter                                                # letterClause
  | keyword=KEY value=WHOLE                                                   # keyClause
  | keyword=STAFF word=NAME                                                   # staffClause
  | keyword=HEAD shape=head                                                   # headClause
  ;

letter : word=(NAME | LETTER_A | LETTER_E | LETTER_X | PIANO | FORTE) ;
head : word=(NORMAL | LETTER_X | DIAMOND | TRIANGLE | CIRCLE_X) ;

// ---- charts

chartLine
  : keyword=COUNT_IN value=WHOLE (BAR | BARS)                                 # countIn
  | keyword=CLICK how=(ON | OFF | QUARTERS | EIGHTHS)                         # click
  | keyword=PLAY sections+=name+ (value=WHOLE (TIMES | TIME))? (AT TEMPO speed=tempo)? # playSections
  | keyword=REST value=WHOLE (BAR | BARS)                                     # restBars
  | keyword=CLIMB section=name FROM from=number TO to=number BY by=number
      EVERY value=WHOLE (unit=(TIMES | TIME) | unit=(BARS | BAR))             # climb
  ;

// ---- lanes

partLine
  : ostinato=OSTINATO? who=subject LANE_START body=bars                       # lane
  | who=subject (PLAY | PLAYS) source=playedPattern lead=LEFT_LEAD? IN value=noteValue # played
  | keyword=NEXT                                                              # next
  | keyword=PICKUP value=WHOLE (BEAT | BEATS)                                 # pickup
  | keyword=BARS value=WHOLE                                                  # barsLine
  ;

playedPattern
  : id=name                                                                   # namedPattern
  | SPREAD strokes=WHOLE OVER places=WHOLE                                    # spreadPattern
  ;

bars : BAR_LINE? items+=bar (BAR_LINE items+=bar)* BAR_LINE? GAP? ;
bar : repeat=REPEAT | beats+=beat (GAP beats+=beat)* ;
beat : elements+=element+ over=SPAN? ;

element
  : small=SMALL? sign=STROKE suffixes+=suffix*                                # hit
  | sign=SILENCE                                                              # silence
  | sign=HOLD                                                                 # hold
  | GROUP_OPEN elements+=element+ GROUP_CLOSE                                 # group
  | small=SMALL? GHOST_OPEN elements+=soft+ GHOST_CLOSE suffixes+=suffix*     # ghosts
  ;

// What may stand in parentheses.
soft
  : sign=STROKE                                                               # softHit
  | sign=SILENCE                                                              # softSilence
  | GROUP_OPEN elements+=soft+ GROUP_CLOSE                                    # softGroup
  ;

suffix : sign=(ONE_SLASH | TWO_SLASHES | TILDE | OPEN_SIGN | CHOKE_SIGN | RIM_SIGN) ;

// ---- edits

edit
  : who=player (PLAYS | PLAY) what=surface degree=level? where=at?            # plays
  | keyword=SPLIT who=limb degree=level? BETWEEN surfaces+=surface (AND surfaces+=surface)+ where=at? # split
  | keyword=ADD (who=limb | what=surface (WITH with=limb)?) degree=addedLevel? where=addedAt # add
  | keyword=verb whom=targets where=at?                                       # change
  | what=surface FOLLOWS who=limb where=at?                                   # follows
  | keyword=MOVE whom=targets FROM from=count TO to=count bars_=inBars?       # move
  | keyword=SHIFT whom=targets way=(LATER | EARLIER) BY value=WHOLE unit=distance # shift
  | keyword=SWAP HANDS                                                        # swapHands
  | keyword=ONLY whom=targets                                                 # only
  | keyword=TAKE whom=targets FROM section=name where=at?                     # take
  | keyword=FILL section=name in=inBars (FROM from=count)?                    # fill
  | keyword=DYNAMIC mark=loudness (AT from=count inOne=inBar? | inOne=inBar (AT from=count)?)? # dynamic
  | keyword=(CRESCENDO | DIMINUENDO) TO mark=loudness
      FROM from=count fromBar=inBar? TO to=count toBar=inBar?                 # hairpin
  ;

// What is done to strokes that are there.
verb
  : word=(DROP | ACCENT | GHOST | PLAIN | DOUBLE | TRIPLE
  | FLAM | DRAG | RUFF | BUZZ | DIDDLE | CHOKE | OPEN | RIMSHOT)
  ;

level : word=(GHOSTED | PLAIN | ACCENTED) ;
addedLevel : word=(GHOSTED | ACCENTED) ;
loudness : word=(PP | PIANO | MP | MF | FORTE | FF) ;
distance : value=noteValue | beats=(BEAT | BEATS) | bars_=(BAR | BARS) ;
noteValue : word=(HALF | HALVES | QUARTER | QUARTERS | EIGHTH | EIGHTHS | SIXTEENTH | SIXTEENTHS
  | THIRTY_SECOND | THIRTY_SECONDS | QUARTER_TRIPLET | QUARTER_TRIPLETS | TRIPLET | TRIPLETS
  | SIXTEENTH_TRIPLET | SIXTEENTH_TRIPLETS | QUINTUPLET | QUINTUPLETS | SEPTUPLET | SEPTUPLETS) ;

// ---- places: each part at most once, in any order

at
  : places_=atPlaces (in=inBars level_=whereLevel? | level_=whereLevel in=inBars?)?
  | in=inBars (places_=atPlaces level_=whereLevel? | level_=whereLevel places_=atPlaces?)?
  | level_=whereLevel (places_=atPlaces in=inBars? | in=inBars places_=atPlaces?)?
  ;

// Strokes are added at single places.
addedAt
  : places_=addedPlaces in=inBars?
  | in=inBars places_=addedPlaces
  ;

atPlaces : AT items+=place+ ;
addedPlaces : AT items+=addedPlace+ ;
place : from=count (TO to=count)? | every_=every ;
addedPlace : from=count | every_=every ;
whereLevel : WHERE degree=level ;

every
  : EVERY AMPERSAND                                                           # everyAnd
  | EVERY LETTER_E                                                            # everyE
  | EVERY LETTER_A                                                            # everyA
  | EVERY BEAT                                                                # everyBeat
  | EVERY slot=SLOT                                                           # everySlot
  | EVERY value=noteValue                                                     # everyValue
  ;

inBar : IN BAR value=WHOLE ;
inBars : IN items=barList ;
barList
  : (BAR | BARS) items+=WHOLE+                                                # listed
  | (BAR | BARS) from=WHOLE TO to=WHOLE                                       # through
  | LAST BAR                                                                  # lastBar
  | EVERY nth=ORDINAL BAR                                                     # everyNth
  ;

count : digits=(WHOLE | DECIMAL | RATIO | COUNT) ;

// ---- who and what

targets : items+=target (COMMA items+=target)* ;
target : who=limb | group_=(HANDS | FEET | ALL) | what=surface ;
subject : who=limb | group_=(HANDS | FEET | LINE) | what=surface ;
player : who=limb | group_=(HANDS | FEET) ;
limb : side=(RIGHT | LEFT) part=(HAND | FOOT)? ;

// A surface is named by any word that begins no line of a groove and joins no parts of a statement.
surface : word=(NAME | ZONED
  | CHANGES | CIRCLE_X | CLICK | CLIMB | CM | COUNTS | COUNT_IN | DEGREES | DIAMOND | DOUBLES | FF | FORTE | HEAD | HIGH
  | KEY | LETTER | LETTER_A | LETTER_E | LETTER_X | MF | MP | NONE | NORMAL | NO_CHANGES | OFF | OVER | PIANO | PP
  | REACH | REST | SPREAD | STAFF | STICKING | STRAIGHT | SWING | TIMES | TRIANGLE) ;

// ---- texts and names

prose : keyword=TEXT words=text ;
text : quoted=(QUOTED | TRIPLE_QUOTED) ;

// No word is reserved.
name : word=(NAME | LETTER_A | ACCENT | ACCENTED | ADD | ALL | AND | AS | AT | BAR | BARS | BEAT | BEATS | BETWEEN
  | BUZZ | BY | CHANGES | CHART | CHOKE | CIRCLE_X | CLICK | CLIMB | CM | COUNT_IN | COUNTS | CRESCENDO | DEGREES
  | DIAMOND | DIDDLE | DIMINUENDO | DOTTED_EIGHTH | DOTTED_HALF | DOTTED_QUARTER | DOTTED_SIXTEENTH | DOUBLE
  | DOUBLES | DRAG | DROP | DYNAMIC | LETTER_E | EARLIER | EIGHTH | EIGHTHS | EVERY | FORTE | FEEL | FEET | FF
  | FILL | FLAM | FOLLOWS | FOOT | FROM | GHOST | GHOSTED | GROOVE | GROUPED | HALF | HALVES | HAND | HANDS | HEAD
  | HIGH | IN | KEY | KIT | LAST | LATER | LEFT | LEFT_HANDED | LEFT_LEAD | LETTER | LEVELS | LIKE | LIMITS | LINE
  | MF | MOVE | MP | NEXT | NO_CHANGES | NONE | NORMAL | OFF | ON | ONLY | OPEN | OSTINATO | OVER | PIANO | PATTERN
  | PICKUP | PLACE | PLAIN | PLAY | PLAYS | PP | QUARTER | QUARTER_TRIPLET | QUARTER_TRIPLETS | QUARTERS
  | QUINTUPLET | QUINTUPLETS | REACH | REST | RIGHT | RIMSHOT | RUFF | SEPTUPLET | SEPTUPLETS | SHIFT | SHOW
  | SIXTEENTH | SIXTEENTH_TRIPLET | SIXTEENTH_TRIPLETS | SIXTEENTHS | SPLIT | SPREAD | STAFF | STEP | STICKING
  | STRAIGHT | SURFACE | SWAP | SWING | TAKE | TEMPO | TEXT | THIRTY_SECOND | THIRTY_SECONDS | TIME | TIMES | TITLE
  | TO | TRIANGLE | TRIPLE | TRIPLET | TRIPLETS | USE | WHERE | WITH | WITHOUT | LETTER_X) ;
