// The words of the notation. One statement is one line; a lane's beats are read in a mode of their own.
lexer grammar TaborLexer;

// Words with a place in the grammar. None is reserved: each may also name a section, a pattern or a kit.
ACCENT : 'accent' ;
ADD : 'add' ;
ALL : 'all' ;
AND : 'and' ;
AS : 'as' ;
AT : 'at' ;
BAR : 'bar' ;
BARS : 'bars' ;
BEAT : 'beat' ;
BEATS : 'beats' ;
BETWEEN : 'between' ;
BUZZ : 'buzz' ;
BY : 'by' ;
CHART : 'chart' ;
CHOKE : 'choke' ;
CLICK : 'click' ;
CLIMB : 'climb' ;
CM : 'cm' ;
COUNT_IN : 'count-in' ;
CRESCENDO : 'crescendo' ;
DEGREES : 'degrees' ;
DIDDLE : 'diddle' ;
DIMINUENDO : 'diminuendo' ;
DOUBLE : 'double' ;
DRAG : 'drag' ;
DROP : 'drop' ;
DYNAMIC : 'dynamic' ;
EUCLID : 'euclid' ;
EVERY : 'every' ;
FEEL : 'feel' ;
FEET : 'feet' ;
FILL : 'fill' ;
FLAM : 'flam' ;
FOLLOWS : 'follows' ;
FOOT : 'foot' ;
FROM : 'from' ;
GHOST : 'ghost' ;
GROOVE : 'groove' ;
HAND : 'hand' ;
HANDS : 'hands' ;
HEAD : 'head' ;
HIGH : 'high' ;
IN : 'in' ;
KEY : 'key' ;
KIT : 'kit' ;
LAST : 'last' ;
LEFT : 'left' ;
LEFT_HANDED : 'left-handed' ;
LEFT_LEAD : 'left-lead' ;
LETTER : 'letter' ;
LEVELS : 'levels' ;
LIKE : 'like' ;
LIMITS : 'limits' ;
LINE : 'line' ;
MOVE : 'move' ;
NEXT : 'next' ;
ON : 'on' ;
ONLY : 'only' ;
OPEN : 'open' ;
OSTINATO : 'ostinato' ;
PATTERN : 'pattern' ;
PICKUP : 'pickup' ;
PLACE : 'place' ;
PLAIN : 'plain' ;
PLAY : 'play' ;
PLAYS : 'plays' ;
REST : 'rest' ;
RIGHT : 'right' ;
RIMSHOT : 'rimshot' ;
RUFF : 'ruff' ;
SHIFT : 'shift' ;
SHOW : 'show' ;
SPLIT : 'split' ;
STAFF : 'staff' ;
STEP : 'step' ;
SURFACE : 'surface' ;
SWAP : 'swap' ;
TAKE : 'take' ;
TEMPO : 'tempo' ;
TEXT : 'text' ;
TIME : 'time' ;
TIMES : 'times' ;
TITLE : 'title' ;
TO : 'to' ;
TRIPLE : 'triple' ;
USE : 'use' ;
WHERE : 'where' ;
WITH : 'with' ;
WITHOUT : 'without' ;

// Names and numbers.
NAME : PlainName ;
ZONED : PlainName '.' PlainName ;
WHOLE : Digits ;
DECIMAL : Digits '.' Digits ;
RATIO : Digits '/' Digits ;
SUM : Digits ('+' Digits)+ ;
PERCENT : Digits ('.' Digits)? '%' ;
ORDINAL : Digits ('st' | 'nd' | 'rd' | 'th') ;
COUNT : Digits [ea&+]? ('.' Digits)* ('/' Digits)? ;
AMPERSAND : [&+] ;
COMMA : ',' ;
EQUALS : '=' ;

// Texts. Curly quotes are read as straight ones. An open text ends with its line, an open triple
// text is known by its quotes.
QUOTED : Quote Prose* Quote ;
TRIPLE_QUOTED : Quote Quote Quote .*? Quote Quote Quote ;
OPEN_QUOTED : Quote Prose* ;
OPEN_TRIPLE : Quote Quote Quote ;

// A run of letters and digits that is none of the above, such as a name with a capital. Letters beyond ASCII are
// taken by whole blocks of Unicode: the exact classes are thousands of ranges, which every start would have to read.
MISSPELT : [a-zA-Z0-9_\u00AA\u00B5\u00BA\u00C0-\u1FFF\u2C00-\u2DFF\u3005-\uD7FF\uF900-\uFDFF\uFE70-\uFEFC\uFF10-\uFFDC\u{10000}-\u{1EFFF}\u{20000}-\u{3FFFF}] [a-zA-Z0-9_&+./%'’\u00AA\u00B5\u00BA\u00C0-\u1FFF\u2C00-\u2DFF\u3005-\uD7FF\uF900-\uFDFF\uFE70-\uFEFC\uFF10-\uFFDC\u{10000}-\u{1EFFF}\u{20000}-\u{3FFFF}-]* ;

LANE_START : ':' [ \t]* -> mode(LANE) ;
NEWLINE : '\r' '\n'? | '\n' ;
BLANK : [ \t\uFEFF]+ -> skip ;
COMMENT : '#' ~[\r\n]* -> skip ;
STRANGE : ~[ \t\uFEFF\r\n"“”„#,=:&+_a-zA-Z0-9\u00AA\u00B5\u00BA\u00C0-\u1FFF\u2C00-\u2DFF\u3005-\uD7FF\uF900-\uFDFF\uFE70-\uFEFC\uFF10-\uFFDC\u{10000}-\u{1EFFF}\u{20000}-\u{3FFFF}]+ ;
STRAY : . -> type(STRANGE) ;

fragment PlainName : [a-z] [a-z0-9]* ('-' [a-z0-9]+)* ;
fragment Digits : [0-9]+ ;
fragment Quote : ["“”„] ;
fragment Prose : ~["“”„\r\n] ;

// Beats: a space ends a word, a letter is a stroke.
mode LANE;

BAR_LINE : [ \t]* '|' [ \t]* ;
GAP : [ \t]+ ;
STROKE : [a-zA-Z] ;
SILENCE : '.' ;
HOLD : '-' ;
REPEAT : '%' ;
GROUP_OPEN : '{' ;
GROUP_CLOSE : '}' ;
GHOST_OPEN : '(' ;
GHOST_CLOSE : ')' ;
SMALL : SmallSign (SmallSign SmallSign?)? ;
ONE_SLASH : '/' ;
TWO_SLASHES : '//' ;
TILDE : '~' ;
OPEN_SIGN : '=' ;
CHOKE_SIGN : '!' ;
RIM_SIGN : '^' ;
SPREAD : ':' Digits ;

LANE_QUOTED : Quote Prose* Quote -> type(QUOTED) ;
LANE_TRIPLE : Quote Quote Quote .*? Quote Quote Quote -> type(TRIPLE_QUOTED) ;
LANE_OPEN_QUOTED : Quote Prose* -> type(OPEN_QUOTED) ;
LANE_OPEN_TRIPLE : Quote Quote Quote -> type(OPEN_TRIPLE) ;
LANE_END : [ \t]* ('\r' '\n'? | '\n') -> type(NEWLINE), mode(DEFAULT_MODE) ;
LANE_COMMENT : [ \t]* '#' ~[\r\n]* -> skip ;
LANE_STRANGE : . -> type(STRANGE) ;

fragment SmallSign : ['‘’] ;
