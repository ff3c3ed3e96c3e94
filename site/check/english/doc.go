// Package english finds phrases in running text by the stems of their words.
//
// It knows as much English as a workshop needs: that drilling and drilled are
// drill, that "drill the hole" does it, "do not drill" does not, and "never
// drill without a stop" does all the same. It knows nothing of sheets.
//
// The grammar of a phrase:
//
//	ground lug          words in a row, any case and ending; the, a, its and
//	                    their like may stand between them in the text
//	pillar trim/cover   either word
//	to drill            the doing of it: an order, an infinitive, a gerund or
//	                    a passive, not the tool and not what a drill does
//	to drill + floor    both parts in one sentence, in any order
//	=CAN                exactly these letters
//	<A/mA>              a number, in digits or words, with one of these units
package english
