package publish

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image/color"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// iconPaths reads the paths of the theme's icon.
func iconPaths(svg []byte) ([]iconPath, error) {
	var list []iconPath
	for decoder := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return list, nil
		}
		if err != nil {
			return nil, err
		}
		switch element, ok := token.(xml.StartElement); {
		case !ok, element.Name.Local == "svg":
		case element.Name.Local != "path":
			return nil, fmt.Errorf("an icon holds paths, and this one has a %s", element.Name.Local)
		default:
			path, err := iconPathOf(element.Attr)
			if err != nil {
				return nil, err
			}
			list = append(list, path)
		}
	}
}

// iconPathOf reads the attributes of one path. Corners are always drawn square,
// so stroke-linejoin is passed over.
func iconPathOf(attributes []xml.Attr) (p iconPath, err error) {
	p.fill, p.width = color.Black, 1 // where SVG says nothing else
	for _, a := range attributes {
		switch a.Name.Local {
		case "d":
			p.lines, err = iconLines(a.Value)
		case "fill":
			p.fill, err = iconColor(a.Value)
		case "stroke":
			p.stroke, err = iconColor(a.Value)
		case "stroke-width":
			var width float64
			width, err = strconv.ParseFloat(a.Value, 32)
			p.width = float32(width)
		case "stroke-linejoin":
		default:
			err = fmt.Errorf("the attribute %s is not read here", a.Name.Local)
		}
		if err != nil {
			return p, err
		}
	}
	return p, nil
}

// iconColor reads none or three hexadecimal digits; none is nil.
func iconColor(text string) (color.Color, error) {
	if text == "none" {
		return nil, nil
	}
	v, err := strconv.ParseUint(strings.TrimPrefix(text, "#"), 16, 16)
	if err != nil || len(text) != 4 {
		return nil, fmt.Errorf("%q is no color of three digits, such as #111", text)
	}
	return color.RGBA{uint8(v>>8) * 0x11, uint8(v>>4&0xF) * 0x11, uint8(v&0xF) * 0x11, 0xFF}, nil
}

// pathToken is a command of path data or a number.
var pathToken = regexp.MustCompile(`[A-Za-z]|-?\d*\.?\d+`)

// iconLines reads path data of straight lines: M, L, H, V and Z of SVG 1.1,
// section 8.3, absolute or relative. Numbers behind the point of a move draw on
// from there.
func iconLines(data string) (lines [][][2]float32, err error) {
	tokens := pathToken.FindAllString(data, -1)
	next := func() float32 {
		if len(tokens) == 0 {
			err = errors.New("path data ends in the middle of a point")
			return 0
		}
		v, wrong := strconv.ParseFloat(tokens[0], 32)
		if wrong != nil {
			err = fmt.Errorf("path data has %q where a number belongs", tokens[0])
		}
		tokens = tokens[1:]
		return float32(v)
	}
	var at [2]float32
	command := ""
	for len(tokens) > 0 && err == nil {
		if c := tokens[0][0]; c >= 'A' {
			command, tokens = tokens[0], tokens[1:]
		} else if strings.ToUpper(command) == "Z" {
			command = "" // nothing follows it but another command
		}
		if command == "" || !strings.Contains("MLHVZ", strings.ToUpper(command)) || len(lines) == 0 && strings.ToUpper(command) != "M" {
			return nil, fmt.Errorf("path data %q: begin with M, and use M, L, H, V and Z", data)
		}
		from := at
		if command != strings.ToLower(command) {
			from = [2]float32{}
		}
		switch strings.ToUpper(command) {
		case "Z":
			at = lines[len(lines)-1][0]
		case "H":
			at[0] = from[0] + next()
		case "V":
			at[1] = from[1] + next()
		default:
			at = [2]float32{from[0] + next(), from[1] + next()}
		}
		if strings.ToUpper(command) == "M" {
			lines = append(lines, nil)
			command = string(command[0] - 1) // L after M, l after m
		}
		last := &lines[len(lines)-1]
		*last = append(*last, at)
	}
	return lines, err
}
