lexer grammar TaborLexer;
WORD : [a-z]+ ;
WS : [ \t]+ -> skip ;
