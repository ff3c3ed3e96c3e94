package check

// Rules are all rules that look at a book once it is read, in the order in
// which a reader should meet them.
var Rules = []*Rule{
	// What can hurt.
	hazardUnguarded, hazardLate, weakWord, noticeForInjury, injuryWordForProperty, injuryAndPropertyMixed,
	messageContent, mustSay, mustNotSay, titleUnknown, hazardUnknown, stepsInMessage, messageOrder, overWarning, toolsNamed,
	// Numbers.
	computedNumber, stopVerdict, readingWords, repeatedNumber, numbersDisagree, conversion, unbackedNumber,
	// Wiring drawings, the most dangerous first.
	circuitShort, circuitUnfused, circuitFuseOverWire, circuitWireBurns, circuitWireOverloaded, circuitFuseUnderLoad, circuitFuseMade,
	circuitDrop, circuitNoReturn, circuitReversed, circuitTwoSources, circuitLiveBehind, circuitTap, circuitTapTurned,
	circuitCoilBare, circuitCoilTurned, circuitContactOver, circuitSharedGround, circuitGroundStack, circuitColourTwice,
	circuitSpeakerLoad, circuitSpeakerGround, circuitNoSolution, circuitStandby, circuitWrong,
	// Structure.
	sectionMissing, sectionOrder, jobWork, dateFuture, approvalOld, revisionDate, waiver,
	// Links, figures and what cannot be seen.
	hiddenCharacter, link, linkForm, anchor, externalLink, sheetNumber, stepNumber, figure, figureSafe, fileKind, unusedFigure, orphanSheet,
	// Wording.
	imperativeFirst, oneAction, conditionFirst, longSentence, noShould, vagueWord, andOr, bareNumber, termPreferred,
	// The shop's data.
	registerRows, glossaryTerms,
}

// LoaderRules are kept by the loader while it reads the files. They are here
// for their explanations.
var LoaderRules = []*Rule{
	fileRule, fileSize, utf8Rule, nestingRule, frontMatter, rawHTML, headingRule, stepsRule, signalWord,
	calcLink, readingLink, questionRule, workRule, circuitRead, hazardRegister, glossaryFile, shopFile,
}
