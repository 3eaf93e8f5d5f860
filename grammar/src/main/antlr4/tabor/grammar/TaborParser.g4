// The statements of the notation. A statement is a line; which section takes which is not said here.
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

heading
  : keyword=PATTERN id=name LANE_START (spaces+=GAP | spaces+=BAR_LINE | places+=element)+ # patternHeading
  | keyword=KIT id=name (LIKE like=name)?                                     # kitHeading
  | keyword=GROOVE id=name title=text?                                        # grooveHeading
  | keyword=STEP (id=name title=text? | title=text) (FROM from=name)?         # stepHeading
  | keyword=CHART id=name title=text?                                         # chartHeading
  ;

setting
  : keyword=TITLE words=text                                                  # title
  | keyword=BY words=text                                                     # by
  | keyword=USE words=text                                                    # use
  | keyword=TIME meter=RATIO (IN (equal=WHOLE | sum=SUM))?                    # time
  | keyword=TEMPO speed=tempo                                                 # tempoSetting
  | keyword=FEEL style=NAME (unit=NAME (share=PERCENT | AS as=NAME))?         # feel
  | keyword=ON kit=name                                                       # on
  | keyword=LEVELS items+=levelItem+                                          # levels
  | keyword=SHOW items+=NAME+                                                 # show
  | keyword=LIMITS who=name? items+=limitItem+                                # limits
  ;

levelItem : what=(GHOST | PLAIN | ACCENT | NAME) value=WHOLE ;
limitItem : what=(HANDS | FEET | NAME) low=WHOLE TO high=WHOLE ;
tempo : (value=NAME EQUALS)? speed=number ;
number : digits=(WHOLE | DECIMAL) ;

kitLine
  : keyword=SURFACE id=surface clauses+=clause*                               # newSurface
  | keyword=LETTER sign=NAME EQUALS of=surface                                # letter
  | keyword=WITHOUT lacking=surface ((PLAYS | PLAY) instead=surface)?         # without
  | keyword=LEFT_HANDED                                                       # leftHanded
  | keyword=PLACE what=surface distance=WHOLE CM degrees=WHOLE DEGREES
      side=(LEFT | RIGHT)? (height=WHOLE CM HIGH)?                            # place
  ;

clause
  : keyword=LETTER word=NAME
  | keyword=KEY value=WHOLE
  | keyword=STAFF word=NAME
  | keyword=HEAD word=NAME
  ;

chartLine
  : keyword=COUNT_IN value=WHOLE unit=(BAR | BARS)                            # countIn
  | keyword=CLICK how=name                                                    # click
  | keyword=PLAY sections+=name+ (value=WHOLE (TIMES | TIME))? (AT TEMPO speed=tempo)? # play
  | keyword=REST value=WHOLE unit=(BAR | BARS)                                # rest
  | keyword=CLIMB section=name FROM from=number TO to=number BY by=number
      EVERY value=WHOLE unit=(TIMES | TIME | BARS | BAR | NAME)               # climb
  ;

partLine
  : goesRound=OSTINATO? who=subject LANE_START body=bars                      # lane
  | who=subject (PLAY | PLAYS) (EUCLID strokes=WHOLE places=WHOLE | id=name)
      lead=LEFT_LEAD? IN value=NAME                                           # played
  | keyword=NEXT                                                              # next
  | keyword=PICKUP value=WHOLE unit=(BEAT | BEATS)                            # pickup
  | keyword=BARS value=WHOLE                                                  # barsLine
  ;

bars : BAR_LINE? items+=bar (BAR_LINE items+=bar)* BAR_LINE? GAP? ;
bar : repeat=REPEAT | beats+=beat (GAP beats+=beat)* ;
beat : elements+=element+ over=SPREAD? ;

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

edit
  : who=limb (PLAYS | PLAY) what=surface degree=level? range=at               # plays
  | keyword=SPLIT who=limb degree=level? BETWEEN surfaces+=surface (AND surfaces+=surface)+ range=at # split
  | keyword=ADD (who=limb | what=surface (WITH with=limb)?) degree=level? range=at # add
  | keyword=DROP whom=targets range=at                                        # drop
  | keyword=(ACCENT | GHOST | PLAIN) whom=targets range=at                    # setLevel
  | keyword=(DOUBLE | TRIPLE) whom=targets range=at                           # multiply
  | keyword=(FLAM | DRAG | RUFF | BUZZ | DIDDLE | CHOKE | OPEN | RIMSHOT) whom=targets range=at # adorn
  | what=surface FOLLOWS who=limb range=at                                    # follows
  | keyword=MOVE whom=targets FROM from=count TO to=count (IN in=barList)?    # move
  | keyword=SHIFT whom=targets way=NAME BY value=WHOLE unit=(NAME | BEAT | BEATS | BAR | BARS) # shift
  | keyword=SWAP HANDS                                                        # swapHands
  | keyword=ONLY whom=targets                                                 # only
  | keyword=TAKE whom=targets FROM section=name range=at                      # take
  | keyword=FILL section=name IN in=barList (FROM from=count)?                # fill
  | keyword=DYNAMIC loudness=NAME (AT place=count inOne=inBar? | inOne=inBar (AT place=count)?)? # dynamic
  | keyword=(CRESCENDO | DIMINUENDO) TO loudness=NAME
      FROM from=count fromBar=inBar? TO to=count toBar=inBar?                 # hairpin
  ;

level : word=(NAME | PLAIN) ;
inBar : IN BAR value=WHOLE ;
at : parts+=atPart* ;
atPart
  : AT places+=placeItem+                                                     # atPlaces
  | IN in=barList                                                             # inBars
  | WHERE degree=level                                                        # whereLevel
  ;
placeItem
  : from=count (TO to=count)?                                                 # counted
  | EVERY what=(AMPERSAND | NAME | BEAT)                                      # every
  ;
barList
  : keyword=(BAR | BARS) items+=WHOLE+                                        # listed
  | keyword=(BAR | BARS) from=WHOLE TO to=WHOLE                               # through
  | keyword=LAST BAR                                                          # lastBar
  | keyword=EVERY nth=ORDINAL BAR                                             # everyNth
  ;
count : digits=(WHOLE | DECIMAL | RATIO | COUNT) ;

targets : items+=target (COMMA items+=target)* ;
target : who=limb | word=(HANDS | FEET | ALL) | what=surface ;
subject : who=limb | word=(HANDS | FEET | LINE) | what=surface ;
limb : side=(RIGHT | LEFT) part=(HAND | FOOT)? ;
surface : word=(NAME | ZONED) ;

prose : keyword=TEXT words=text ;
text : quoted=(QUOTED | TRIPLE_QUOTED) ;

name : word=(NAME | ACCENT | ADD | ALL | AND | AS | AT | BAR | BARS | BEAT | BEATS | BETWEEN | BUZZ | BY
  | CHART | CHOKE | CLICK | CLIMB | CM | COUNT_IN | CRESCENDO | DEGREES | DIDDLE | DIMINUENDO | DOUBLE
  | DRAG | DROP | DYNAMIC | EUCLID | EVERY | FEEL | FEET | FILL | FLAM | FOLLOWS | FOOT | FROM | GHOST
  | GROOVE | HAND | HANDS | HEAD | HIGH | IN | KEY | KIT | LAST | LEFT | LEFT_HANDED | LEFT_LEAD | LETTER
  | LEVELS | LIKE | LIMITS | LINE | MOVE | NEXT | ON | ONLY | OPEN | OSTINATO | PATTERN | PICKUP | PLACE
  | PLAIN | PLAY | PLAYS | REST | RIGHT | RIMSHOT | RUFF | SHIFT | SHOW | SPLIT | STAFF | STEP | SURFACE
  | SWAP | TAKE | TEMPO | TEXT | TIME | TIMES | TITLE | TO | TRIPLE | USE | WHERE | WITH | WITHOUT) ;
