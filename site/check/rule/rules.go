// Package rule holds the rules by which a book is checked: values in two lists,
// one file a rule, each with an example in testdata that a test runs and the
// site shows.
package rule

import (
	"slices"

	"baybook/site/check"
)

// Safety are the rules that keep people from harm. No waiver sets one aside.
var Safety = []*check.Rule{
	neverOrder, stepOrder, workUnresolved, workLink, undeclaredHazard,
	hazardUnguarded, hazardLate, weakWord, noticeForInjury, injuryWordForProperty, injuryAndPropertyMixed,
	messageContent, mustNotSay, titleUnknown, hazardUnknown, stepsInMessage, messageOrder, overWarning, toolsNamed,
}

// Checks are all rules that look at a book once it is read, in the order in
// which a reader should meet them.
var Checks = slices.Concat(Safety, []*check.Rule{
	// Numbers.
	computedNumber, limitValue, stopVerdict, readingWords, repeatedNumber, numbersDisagree, partSize, readingStop, readingTwice, typedSum, typedInput, typedNumber, conversion, unbackedNumber,
}, circuitRules(), []*check.Rule{
	// Structure.
	sectionMissing, sectionOrder, jobWork, jobMinutes, dateFuture, approvalOld, ownApproval, notSettled, courseNeeds, revisionDate, waiver,
	// Links, figures and what cannot be seen.
	hiddenCharacter, link, linkForm, anchor, externalLink, sheetNumber, stepNumber, stepReference, numberedStep, draftLink, figure, figureSafe, fileKind, fileName, unusedFigure, orphanSheet,
	// Wording.
	imperativeFirst, oneAction, conditionFirst, longSentence, noShould, vagueWord, andOr, bareNumber, termPreferred,
	// The shop's data.
	registerRows, glossaryTerms, wordList, workLists,
})

// Loader are the rules that the loader keeps while it reads the files. They
// stand here for their explanations.
var Loader = []*check.Rule{
	fileRule, photoRule, fileSize, utf8Rule, nestingRule, tableSize, frontMatter, rawHTML, headingRule, stepsRule, signalWord,
	calcLink, readingLink, stepLink, aboutLink, questionRule, workRule, circuitRead, hazardRegister, glossaryFile, wordsFile, shopFile, areasFile, interfaceFile, limitRegister, limitLink,
}

// All lists every rule, the loader's own first.
func All() []*check.Rule { return slices.Concat(Loader, Checks) }
