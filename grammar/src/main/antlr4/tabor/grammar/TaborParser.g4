// The statements of the notation, word for word. A statement is a line and has a rule of its own; which section
// takes which is said in the table of statements beside this grammar, by the name of the rule.
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

heading : patternHeading | kitHeading | grooveHeading | stepHeading | chartHeading ;

patternHeading : keyword=PATTERN id=newName LANE_START (spaces+=GAP | spaces+=BAR_LINE | places+=element)+ ;
kitHeading : keyword=KIT id=newName (LIKE like=kitName)? ;
grooveHeading : keyword=GROOVE id=newName words=text? ;
stepHeading : keyword=STEP (id=newName words=text? | words=text) (FROM from=sectionName)? ;
chartHeading : keyword=CHART id=newName words=text? ;

// ---- settings

setting : title | by | use | time | tempoSetting | feel | on | levels | show | limits ;

title : keyword=TITLE words=text ;
by : keyword=BY words=text ;
use : keyword=USE words=text ;
time : keyword=TIME meters+=meter+ ;
tempoSetting : keyword=TEMPO speed=tempo ;
feel : keyword=FEEL (STRAIGHT | SWING unit=swung (share=PERCENT | AS TRIPLETS)) ;
on : keyword=ON kit=kitName ;
levels : keyword=LEVELS items+=velocity+ ;
show : keyword=SHOW (none=NONE | items+=shown+) ;
limits : keyword=LIMITS who=newName? items+=limit+ ;

meter : signature=RATIO (IN (equal=WHOLE | sum=SUM) | GROUPED groups=SUM)? ;
velocity : what=(GHOST | PLAIN | ACCENT) value=WHOLE ;
shown : what=(COUNTS | STICKING | CHANGES | NO_CHANGES) ;
limit : what=limitKind low=WHOLE TO high=WHOLE ;
limitKind : word=(HANDS | FEET | DOUBLES | REACH) ;
swung : what=(EIGHTHS | SIXTEENTHS) ;
tempo : (unit=beatUnit EQUALS)? speed=number ;
beatUnit : word=(HALF | QUARTER | EIGHTH | SIXTEENTH
  | DOTTED_HALF | DOTTED_QUARTER | DOTTED_EIGHTH | DOTTED_SIXTEENTH) ;
number : digits=(WHOLE | DECIMAL) ;

// ---- kits

kitLine : newSurface | newLetter | without | leftHanded | placed ;

newSurface : keyword=SURFACE id=surface clauses+=clause* ;
newLetter : keyword=LETTER sign=letter EQUALS of=surface ;
without : keyword=WITHOUT lacking=surface ((PLAYS | PLAY) instead=surface)? ;
leftHanded : keyword=LEFT_HANDED ;
placed : keyword=PLACE what=surface away=WHOLE CM turned=WHOLE DEGREES side=(LEFT | RIGHT)? (height=WHOLE CM HIGH)? ;

clause
  : keyword=LETTER sign=letter                                                # letterClause
  | keyword=KEY value=WHOLE                                                   # keyClause
  | keyword=STAFF word=NAME                                                   # staffClause
  | keyword=HEAD shape=head                                                   # headClause
  ;

letter : word=(NAME | LETTER_A | LETTER_E | LETTER_X | PIANO | FORTE) ;
head : word=(NORMAL | LETTER_X | DIAMOND | TRIANGLE | CIRCLE_X) ;

// ---- charts

chartLine : countIn | click | playSections | restBars | climb ;

countIn : keyword=COUNT_IN value=WHOLE (BAR | BARS) ;
click : keyword=CLICK how=(ON | OFF | QUARTERS | EIGHTHS) ;
playSections : keyword=PLAY sections+=sectionName+ (value=WHOLE (TIMES | TIME))? (AT TEMPO speed=tempo)? ;
restBars : keyword=REST value=WHOLE (BAR | BARS) ;
climb : keyword=CLIMB section=sectionName FROM from=number TO to=number BY stage=number
  EVERY value=WHOLE (unit=(TIMES | TIME) | unit=(BARS | BAR)) ;

// ---- lanes

partLine : lane | played | next | pickup | barsLine ;

lane : ostinato=OSTINATO? who=subject LANE_START body=bars ;
played : who=subject (PLAY | PLAYS) source=playedPattern lead=LEFT_LEAD? IN value=noteValue ;
next : keyword=NEXT ;
pickup : keyword=PICKUP value=WHOLE (BEAT | BEATS) ;
barsLine : keyword=BARS value=WHOLE ;

playedPattern
  : id=patternName                                                            # namedPattern
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

suffix : sign=(ONE_SLASH | TWO_SLASHES | THREE_SLASHES | TILDE | OPEN_SIGN | CHOKE_SIGN | RIM_SIGN) ;

// ---- edits

edit
  : plays | split | add | change | follows | move | shift | swapHands | only | take | fill | dynamic | hairpin ;

plays : who=player (PLAYS | PLAY) what=surface degree=level? where=at? ;
split : keyword=SPLIT who=limb degree=level? BETWEEN surfaces+=surface (AND surfaces+=surface)+ where=at? ;
add : keyword=ADD (who=limb | what=surface (WITH with=limb)?) degree=addedLevel? where=addedAt ;
change : keyword=verb whom=targets where=at? ;
follows : what=surface FOLLOWS who=limb where=at? ;
move : keyword=MOVE whom=targets FROM from=count TO to=count in=inBars? ;
shift : keyword=SHIFT whom=targets way=(LATER | EARLIER) BY value=WHOLE unit=distance ;
swapHands : keyword=SWAP HANDS ;
only : keyword=ONLY whom=targets ;
take : keyword=TAKE whom=targets FROM section=sectionName where=at? ;
fill : keyword=FILL section=sectionName in=inBars (FROM from=count)? ;
dynamic : keyword=DYNAMIC mark=loudness (AT from=count inOne=inBar? | inOne=inBar (AT from=count)?)? ;
hairpin : keyword=(CRESCENDO | DIMINUENDO) TO mark=loudness
  FROM from=count fromBar=inBar? TO to=count toBar=inBar? ;

// What is done to strokes that are there.
verb
  : word=(DROP | ACCENT | GHOST | PLAIN | DOUBLE | TRIPLE
  | FLAM | DRAG | RUFF | BUZZ | DIDDLE | ROLL | CHOKE | OPEN | RIMSHOT)
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

// What a name is the name of.
newName : id=name ;
sectionName : id=name ;
patternName : id=name ;
kitName : id=name ;

// No word is reserved.
name : word=(NAME | LETTER_A | ACCENT | ACCENTED | ADD | ALL | AND | AS | AT | BAR | BARS | BEAT | BEATS | BETWEEN
  | BUZZ | BY | CHANGES | CHART | CHOKE | CIRCLE_X | CLICK | CLIMB | CM | COUNT_IN | COUNTS | CRESCENDO | DEGREES
  | DIAMOND | DIDDLE | DIMINUENDO | DOTTED_EIGHTH | DOTTED_HALF | DOTTED_QUARTER | DOTTED_SIXTEENTH | DOUBLE
  | DOUBLES | DRAG | DROP | DYNAMIC | LETTER_E | EARLIER | EIGHTH | EIGHTHS | EVERY | FORTE | FEEL | FEET | FF
  | FILL | FLAM | FOLLOWS | FOOT | FROM | GHOST | GHOSTED | GROOVE | GROUPED | HALF | HALVES | HAND | HANDS | HEAD
  | HIGH | IN | KEY | KIT | LAST | LATER | LEFT | LEFT_HANDED | LEFT_LEAD | LETTER | LEVELS | LIKE | LIMITS | LINE
  | MF | MOVE | MP | NEXT | NO_CHANGES | NONE | NORMAL | OFF | ON | ONLY | OPEN | OSTINATO | OVER | PIANO | PATTERN
  | PICKUP | PLACE | PLAIN | PLAY | PLAYS | PP | QUARTER | QUARTER_TRIPLET | QUARTER_TRIPLETS | QUARTERS
  | QUINTUPLET | QUINTUPLETS | REACH | REST | RIGHT | RIMSHOT | ROLL | RUFF | SEPTUPLET | SEPTUPLETS | SHIFT | SHOW
  | SIXTEENTH | SIXTEENTH_TRIPLET | SIXTEENTH_TRIPLETS | SIXTEENTHS | SPLIT | SPREAD | STAFF | STEP | STICKING
  | STRAIGHT | SURFACE | SWAP | SWING | TAKE | TEMPO | TEXT | THIRTY_SECOND | THIRTY_SECONDS | TIME | TIMES | TITLE
  | TO | TRIANGLE | TRIPLE | TRIPLET | TRIPLETS | USE | WHERE | WITH | WITHOUT | LETTER_X) ;
