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
  | sheetPart=sheetLine
  | playerPart=playerLine
  | lanePart=partLine
  | editPart=edit
  | prosePart=prose
  ;

// ---- headings

heading
  : patternHeading | kitHeading | playerHeading | grooveHeading | stepHeading | sheetHeading | chartHeading ;

patternHeading : keyword=PATTERN id=newName LANE_START (spaces+=GAP | spaces+=BAR_LINE | places+=element)+ ;
kitHeading : keyword=KIT id=newName (LIKE like=kitName)? ;
playerHeading : keyword=PLAYER id=newName words=text? ;
grooveHeading : keyword=GROOVE id=newName words=text? ;
stepHeading : keyword=STEP (id=newName words=text? | words=text) (FROM from=sectionName)? ;
sheetHeading : keyword=SHEET id=newName words=text? (FROM from=sectionName)? ;
chartHeading : keyword=CHART id=newName words=text? ;

// ---- settings

setting
  : title | by | use | time | tempoSetting | feel | on | levels | show | limits | page | goal | teacher | log
  | saySyllables | sayThrough | saySet | language
  ;

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
page : keyword=PAGE (
    paper=(A4 | LETTER)
  | large=LARGE
  | value=WHOLE (bars_=BARS | bars_=BAR) LETTER_A LINE
  | value=WHOLE (COLUMNS | COLUMN)
  | new=NEW
  ) ;
goal : keyword=GOAL words=text ;
teacher : keyword=TEACHER words=text ;
log : keyword=LOG value=WHOLE (unit=DAYS | unit=DAY | unit=WEEKS | unit=WEEK) ;
saySyllables : keyword=SAY division=(TWOS | THREES | FOURS) syllables+=syllable+ ;
sayThrough : keyword=SAY EIGHTHS THROUGH ;
saySet : keyword=SAY set=(ONE_E_AND_A | ONE_LA_LI | ONE_TRIP_LET | TA_KA_DI_MI) ;
language : keyword=LANGUAGE word=(DE | EN | ES | FR) ;

meter : signature=RATIO (IN (equal=WHOLE | sum=SUM) | GROUPED groups=SUM)? ;
velocity : what=(GHOST | PLAIN | ACCENT) value=WHOLE ;
shown : what=(COUNTS | STICKING | CHANGES | NO_CHANGES) ;
limit : what=limitKind (value=limitValue AT)? low=WHOLE TO high=WHOLE ;
limitValue : word=(EIGHTHS | TRIPLETS | SIXTEENTHS) ;
// What is counted aloud is any word, in any language.
syllable : id=name | word=(MISSPELT | AMPERSAND) ;
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
  | keyword=STAFF word=(NAME | A4)                                                   # staffClause
  | keyword=HEAD shape=head                                                   # headClause
  ;

letter : word=(NAME | LETTER_A | LETTER_E | LETTER_X | PIANO | FORTE) ;
head : word=(NORMAL | LETTER_X | DIAMOND | TRIANGLE | CIRCLE_X) ;

// ---- charts

chartLine
  : countIn | click | clickAt | clickBars | playSections | trade | climb | restBars | restTime | tempoRamp | holdBeats
  | cue | markLine
  ;

countIn : keyword=COUNT_IN value=WHOLE (BAR | BARS) ;
click : keyword=CLICK how=(ON | OFF | QUARTERS | EIGHTHS) ;
clickAt : keyword=CLICK AT beats+=WHOLE+ ;
clickBars : keyword=CLICK sounding=WHOLE (BARS | BAR) ON silent=WHOLE (BARS | BAR)? OFF ;
playSections : keyword=PLAY first=sectionName more+=furtherName* clauses+=playClause* ;
trade : keyword=TRADE section=sectionName value=WHOLE (BARS | BAR) clauses+=playClause* ;
climb : keyword=CLIMB section=sectionName FROM from=number TO to=number BY stage=number
  (EVERY value=WHOLE (unit=(TIMES | TIME) | unit=(BARS | BAR)))? clauses+=playClause* ;
restBars : keyword=REST value=WHOLE (BAR | BARS) ;
restTime : keyword=REST length=duration ;
tempoRamp : keyword=TEMPO speed=tempo TO to=number OVER value=WHOLE (BARS | BAR) ;
holdBeats : keyword=HOLD_WORD value=WHOLE (BEATS | BEAT) ;
cue : keyword=CUE words=text (IN BAR value=WHOLE)? ;
markLine : keyword=MARK words=text ;

// Each at most once, in any order; which line takes which is said where they are built.
playClause
  : EACH                                                                      # eachClause
  | value=WHOLE (TIMES | TIME)                                                # timesClause
  | value=WHOLE (BARS | BAR)                                                  # barsClause
  | FOR length=duration                                                       # forClause
  | AT TEMPO speed=tempo                                                      # tempoClause
  | WITHOUT whom=targets                                                      # withoutClause
  | FILL section=sectionName                                                  # fillClause
  ;

duration : value=number (unit=MINUTES | unit=MINUTE | unit=SECONDS | unit=SECOND) ;

// ---- sheets

sheetLine : eachLine | andLine ;

// Before a lane or an edit: a variation for each of its choices.
eachLine : keyword=EACH (value=WHOLE (BARS | BAR))? varied caption=text? ;
andLine : keyword=AND (value=WHOLE (BARS | BAR))? varied caption=text? ;
varied : lanePart=lane | playedPart=played | editPart=edit ;

// ---- players

playerLine : openHanded | tempoShare | playerSections ;

openHanded : keyword=OPEN_HANDED ;
tempoShare : keyword=TEMPO share=PERCENT ;
playerSections : keyword=SECTIONS items+=sectionRange+ ;
sectionRange : FIRST number_=WHOLE | from=sectionName (TO to=sectionName)? ;

// ---- lanes

partLine : lane | played | next | pickup | barsLine | blankBars | blankPart ;

lane : ostinato=OSTINATO? who=subject LANE_START body=bars ;
// Several patterns are choices of an `each` line.
played : who=subject (PLAY | PLAYS) items+=patternItem (COMMA items+=patternItem)* IN value=noteValue ;
next : keyword=NEXT ;
pickup : keyword=PICKUP value=WHOLE (BEAT | BEATS) ;
barsLine : keyword=BARS value=WHOLE ;
blankBars : keyword=BLANK_WORD value=WHOLE (BARS | BAR) ;
blankPart : keyword=BLANK_WORD (hands=STICKING | whom=targets) ;

patternItem : source=playedPattern lead=LEFT_LEAD? ;

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

// `N of` and the groups between bar signs are choices of an `each` line.
atPlaces : AT (pick=WHOLE OF)? groups+=placeGroup (BAR_LINE groups+=placeGroup)* ;
addedPlaces : AT (pick=WHOLE OF)? groups+=addedGroup (BAR_LINE groups+=addedGroup)* ;
placeGroup : items+=place+ ;
addedGroup : items+=addedPlace+ ;
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
  | EVERY saidWord                                                            # everySaid
  ;

// A word that the header says is counted with.
saidWord : word=(NAME | MISSPELT | LETTER_X | CM | DE | EN | ES | FF | FR | MF | MP | PIANO | FORTE | PP) ;

inBar : IN BAR value=WHOLE ;
inBars : IN items=barList ;
barList
  : (BAR | BARS) items+=WHOLE+                                                # listed
  | (BAR | BARS) from=WHOLE TO to=WHOLE                                       # through
  | LAST BAR                                                                  # lastBar
  | EVERY nth=ORDINAL BAR                                                     # everyNth
  ;

count : digits=(WHOLE | DECIMAL | RATIO | COUNT) | said=(SAID | ORDINAL) ;

// ---- who and what

targets : items+=target (COMMA items+=target)* ;
target : who=limb | group_=(HANDS | FEET | ALL) | what=surface ;
subject : who=limb | group_=(HANDS | FEET | LINE) | what=surface ;
player : who=limb | group_=(HANDS | FEET) ;
limb : side=(RIGHT | LEFT) part=(HAND | FOOT)? ;

// A surface is named by any word that begins no line of a groove and joins no parts of a statement.
surface : word=(NAME | ZONED
  | A4 | CHANGES | CIRCLE_X | CLICK | CLIMB | CM | COLUMN | COLUMNS | COUNTS | COUNT_IN | CUE | DAY | DAYS | DE
  | DEGREES | DIAMOND | DOUBLES | EN | ES | FF | FIRST | FORTE | FOURS | FR | HEAD | HIGH | HOLD_WORD | KEY | LANGUAGE
  | LARGE | LETTER | LETTER_A | LETTER_E | LETTER_X | LOG | MARK | MF | MINUTE | MINUTES | MP | NEW | NONE | NORMAL
  | NO_CHANGES | OFF | OVER | PIANO | PP | REACH | REST | SAY | SECOND | SECONDS | SECTIONS | SPREAD | STAFF | STICKING
  | STRAIGHT | SWING | TA_KA_DI_MI | THREES | THROUGH | TIMES | TRADE | TRIANGLE | TWOS | WEEK | WEEKS) ;

// ---- texts and names

prose : keyword=TEXT words=text ;
text : quoted=(QUOTED | TRIPLE_QUOTED) ;

// What a name is the name of.
newName : id=name ;
sectionName : id=name ;
furtherName : id=plainName ;
patternName : id=name ;
kitName : id=name ;

// No word is reserved; but behind the first section of a `play` line these begin a clause.
name : word=(EACH | WITHOUT | FILL | FOR | AT) | plain=plainName ;
plainName : word=(NAME | LETTER_A | A4 | ACCENT | ACCENTED | ADD | ALL | AND | AS | BAR | BARS | BEAT | BEATS
  | BETWEEN | BLANK_WORD | BUZZ | BY | CHANGES | CHART | CHOKE | CIRCLE_X | CLICK | CLIMB | CM | COLUMN | COLUMNS
  | COUNT_IN | COUNTS | CRESCENDO | CUE | DAY | DAYS | DE | DEGREES | DIAMOND | DIDDLE | DIMINUENDO | DOTTED_EIGHTH
  | DOTTED_HALF | DOTTED_QUARTER | DOTTED_SIXTEENTH | DOUBLE | DOUBLES | DRAG | DROP | DYNAMIC | LETTER_E | EARLIER
  | EIGHTH | EIGHTHS | EN | ES | EVERY | FORTE | FEEL | FEET | FF | FIRST | FLAM | FOLLOWS | FOOT | FOURS | FR
  | FROM | GHOST | GHOSTED | GOAL | GROOVE | GROUPED | HALF | HALVES | HAND | HANDS | HEAD | HIGH | HOLD_WORD | IN
  | KEY | KIT | LANGUAGE | LARGE | LAST | LATER | LEFT | LEFT_HANDED | LEFT_LEAD | LETTER | LEVELS | LIKE | LIMITS
  | LINE | LOG | MARK | MF | MINUTE | MINUTES | MOVE | MP | NEW | NEXT | NO_CHANGES | NONE | NORMAL | OF | OFF | ON
  | ONLY | OPEN | OPEN_HANDED | OSTINATO | OVER | PIANO | PAGE | PATTERN | PICKUP | PLACE | PLAIN | PLAY | PLAYER
  | PLAYS | PP | QUARTER | QUARTER_TRIPLET | QUARTER_TRIPLETS | QUARTERS | QUINTUPLET | QUINTUPLETS | REACH | REST
  | RIGHT | RIMSHOT | ROLL | RUFF | SAY | SECOND | SECONDS | SECTIONS | SEPTUPLET | SEPTUPLETS | SHEET | SHIFT
  | SHOW | SIXTEENTH | SIXTEENTH_TRIPLET | SIXTEENTH_TRIPLETS | SIXTEENTHS | SPLIT | SPREAD | STAFF | STEP
  | STICKING | STRAIGHT | SURFACE | SWAP | SWING | TA_KA_DI_MI | TAKE | TEACHER | TEMPO | TEXT | THIRTY_SECOND | THIRTY_SECONDS
  | THREES | THROUGH | TIME | TIMES | TITLE | TO | TRADE | TRIANGLE | TRIPLE | TRIPLET | TRIPLETS | TWOS | USE
  | WEEK | WEEKS | WHERE | WITH | LETTER_X) ;
