package rule

import (
	"regexp"
	"strings"
)

// What an SVG drawing may hold (SVG 1.1, W3C). Nothing on these lists can run,
// fetch or be styled from outside.

// Namespaces of SVG and of its links.
const (
	svgSpace  = "http://www.w3.org/2000/svg"
	linkSpace = "http://www.w3.org/1999/xlink"
)

// svgElements are the elements that a drawing may have.
var svgElements = set("svg g defs title desc path rect circle ellipse line polyline polygon text tspan " +
	"pattern marker clipPath mask linearGradient radialGradient stop symbol use")

// svgRepeated are elements whose content is drawn as often as they are
// referred to.
var svgRepeated = set("pattern marker clipPath mask symbol")

// svgAttributes are the attributes that a drawing may have, and what each may
// hold.
var svgAttributes = attributes(map[string]func(string) bool{
	"d points": matches(`[MmZzLlHhVvCcSsQqTtAa0-9eE.,\s+-]*`),
	"x y x1 y1 x2 y2 cx cy r rx ry fx fy dx dy width height offset viewBox rotate textLength " +
		"stroke-width stroke-dasharray stroke-dashoffset stroke-miterlimit stroke-opacity fill-opacity opacity stop-opacity " +
		"font-size letter-spacing word-spacing baseline-shift refX refY markerWidth markerHeight": matches(`([-+]?[0-9]*\.?[0-9]+([eE][-+]?[0-9]+)?(px|pt|mm|cm|in|em|ex|%)?[\s,]*)+|none|auto|inherit|normal|sub|super`),
	"fill stroke stop-color color clip-path mask marker-start marker-mid marker-end": svgPaint,
	"transform patternTransform gradientTransform":                                   matches(`\s*((translate|rotate|scale|skewX|skewY|matrix)\([-+0-9.eE,\s]*\)[\s,]*)*`),
	"id":                                     matches(svgName),
	"aria-labelledby aria-describedby class": matches(`[\w .:-]*`),
	"aria-label":                             func(string) bool { return true },
	"font-family":                            matches(`[\w ,'"-]*`),
	"aria-hidden role focusable version":     matches(`[a-z0-9.]*`),
	"preserveAspectRatio":                    matches(`[A-Za-z ]*`),
	"fill-rule clip-rule stroke-linecap stroke-linejoin text-anchor dominant-baseline alignment-baseline text-decoration":                  matches(`[a-z-]*`),
	"font-style font-weight font-variant font-stretch display visibility overflow shape-rendering text-rendering vector-effect":            matches(`[A-Za-z0-9-]*`),
	"patternUnits patternContentUnits gradientUnits clipPathUnits maskUnits maskContentUnits markerUnits spreadMethod orient lengthAdjust": matches(`[A-Za-z0-9.-]*`),
})

// svgName is a name that a part of a drawing goes by.
const svgName = `[A-Za-z_][\w.:-]*`

// svgReference matches a reference to a part of the drawing itself.
var svgReference = matches(`#` + svgName)

// svgPaint matches a color, or a reference to a pattern of the drawing.
var svgPaint = matches(`none|currentColor|inherit|transparent|[a-z]{3,20}|#[0-9a-fA-F]{3,8}|rgba?\([0-9.,%\s]*\)|url\(#` + svgName + `\)`)

// matches makes a test of a whole value.
func matches(pattern string) func(string) bool {
	return regexp.MustCompile(`^(?:` + pattern + `)$`).MatchString
}

// set makes a set of words.
func set(words string) map[string]bool {
	m := make(map[string]bool)
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

// attributes gives each of the names in a key its test.
func attributes(groups map[string]func(string) bool) map[string]func(string) bool {
	m := make(map[string]func(string) bool)
	for names, holds := range groups {
		for name := range strings.FieldsSeq(names) {
			m[name] = holds
		}
	}
	return m
}
